"""A document on its way in: read, held against its schema, and measured, before any transaction begins."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from spreadwright.document import Pictures, Reading, canonical
from spreadwright.errors import InvalidDocument, has_errors
from spreadwright.store.kinds import kind_named
from spreadwright.store.licences import licence_findings
from spreadwright.store.values import Facts


@dataclass(frozen=True, slots=True)
class Prepared:
    """What is needed to keep a document.

    Attributes:
        data: Canonical JSON.
        pictures: Name to digest.
    """

    kind: str
    document: Mapping[str, Any]
    data: bytes
    facts: Facts
    pictures: Mapping[str, str]


def prepared(
    kind: str, data: bytes, name: str, *, pictures: Mapping[str, str], found: Pictures | None, public: bool = False
) -> Prepared:
    """A document that may be kept.

    Args:
        kind: As addresses name it.
        name: Its id.
        pictures: Name to digest, of those that come with it.
        found: What finds them; None where none came along.
        public: It is to be read by everybody, so it has to pass the check.

    Raises:
        UnreadableDocument: It is no JSON object.
        InvalidDocument: It is not what its schema asks for, its licence is none, or the check has errors.
    """
    reading = kind_named(kind).read(data, name, found)
    refuse(kind, reading, public=public)
    return measured(kind, reading, pictures)


def measured(kind: str, reading: Reading[Any], pictures: Mapping[str, str]) -> Prepared:
    """A document as it was read, whatever is wrong with it."""
    return Prepared(
        kind, reading.document, canonical(reading.document), kind_named(kind).facts(reading), dict(pictures)
    )


def refuse(kind: str, reading: Reading[Any], *, public: bool) -> None:
    """Nothing, or InvalidDocument with all that is wrong."""
    licence = reading.document.get("licence")
    known = licence_findings(licence) if isinstance(licence, str) and reading.is_sound else ()
    found = (*reading.findings, *known)
    if public and not has_errors(found):
        found = kind_named(kind).findings(reading)
    if has_errors(found):
        raise InvalidDocument(str(reading.document.get("title") or reading.model.id), found)
