"""A document as it is kept: canonical JSON, named by its revision."""

from collections.abc import Iterable
from typing import Any

from spreadwright.errors import InvalidDocument
from spreadwright.rest.components import component
from spreadwright.rest.forms import JSON, Arguments, Form
from spreadwright.rest.links import address, described_by, link
from spreadwright.rest.service import service
from spreadwright.store.kinds import kind_named
from spreadwright.store.values import Head

_VARIABLES = {"paper-sets": "set_id"}
"""What the id of a document of a kind is called in paths, if not after its schema."""


def variable(kind: str) -> str:
    """The name of the id of a kind's documents in paths."""
    return _VARIABLES.get(kind) or f"{_word(kind)}_id"


def rule_of(kind: str) -> str:
    """The rule of the addresses of a kind's documents."""
    return f"/{kind}/<{variable(kind)}>"


def document_address(kind: str, name: str) -> str:
    """The address of a document."""
    return address(f"{kind}.{_word(kind)}", **{variable(kind): name})


def address_about(what: str, kind: str, name: str, **more: Any) -> str:
    """The address of something about a document, by its operation: `status_of`."""
    return address(f"{kind}.{operation(what, kind)}", **{variable(kind): name}, **more)


def document_form(kind: str) -> Form:
    """The JSON of a document of one kind."""
    return Form("json", JSON, _bytes, component(kind_named(kind).schema), is_work=False)


def tag_of(_: Arguments, head: Head) -> str:
    """The ETag of a document: it changes with every revision, also where only the state does."""
    return head.etag


def links_of(_: Arguments, head: Head) -> Iterable[str]:
    """From a document to its schema, to its revisions, and to the same content at an address that never changes."""
    yield described_by(kind_named(head.kind).schema)
    yield link(address_about("revisions_of", head.kind, head.id), "version-history")
    yield link(address("contents.content", digest=head.digest), "duplicate")


def operation(what: str, kind: str) -> str:
    """The name of an operation on documents of a kind: `publish_paper_set`."""
    return f"{what}_{_word(kind)}"


def _word(kind: str) -> str:
    return kind_named(kind).schema.replace("-", "_")


def _bytes(_: Arguments, head: Head) -> bytes:
    document = service().store.documents.get(head.kind, head.id)
    return document.data or _unreadable(head)


def _unreadable(head: Head) -> bytes:
    """A file that is no document has nothing to give but its reason."""
    raise InvalidDocument(head.id, service().store.readings.latest(head.kind, head.id).findings)
