"""The schemas: the format's only definition, found by kind, and what they have to say about a document."""

import json
from functools import cache
from itertools import islice
from typing import Any

from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from spreadwright import shipped
from spreadwright.document.refusals import findings_of
from spreadwright.errors import Finding, UnknownName, note

KINDS = ("recipe", "paper-set", "bench", "pieces")
MOST_FINDINGS = 200
"""A document with more to say than this has said enough."""


@cache
def schema_bytes(kind: str) -> bytes:
    """The schema of one kind of document, as shipped.

    Raises:
        UnknownName: There is no such kind.
    """
    if kind not in KINDS:
        raise UnknownName("kind of document", kind, KINDS)
    return (shipped.folder("schema") / f"{kind}.schema.json").read_bytes()


@cache
def schema(kind: str) -> dict[str, Any]:
    """The schema of one kind of document."""
    loaded: dict[str, Any] = json.loads(schema_bytes(kind))
    return loaded


@cache
def _validator(kind: str) -> Draft202012Validator:
    resources = [Resource.from_contents(schema(each)) for each in KINDS]
    registry: Registry[Any] = Registry().with_resources((r.id() or "", r) for r in resources)
    return Draft202012Validator(schema(kind), registry=registry)


def kind_of(document: Any) -> str | None:
    """The kind that a document says it is, whatever version it names."""
    named = document.get("schema") if isinstance(document, dict) else None
    kind = named.split("/")[0] if isinstance(named, str) else None
    return kind if kind in KINDS else None


def schema_findings(document: Any, kind: str) -> tuple[Finding, ...]:
    """What the schema refuses, at most `MOST_FINDINGS`; a note says when there is more."""
    errors = _validator(kind).iter_errors(document)
    found = tuple(islice((finding for each in errors for finding in findings_of(each)), MOST_FINDINGS + 1))
    return found if len(found) <= MOST_FINDINGS else (*found[:MOST_FINDINGS], _MORE)


_MORE = note(
    "more-findings",
    "",
    f"The form of the document has more than {MOST_FINDINGS} faults; the first are listed.",
    "Mend these and check again.",
)
