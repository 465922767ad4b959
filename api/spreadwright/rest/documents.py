"""A document as it is kept, byte for byte."""

from collections.abc import Mapping
from typing import Any, TypeVar

from spreadwright.document import Reading
from spreadwright.errors import InvalidDocument, UnknownName
from spreadwright.rest.forms import JSON, Arguments, Form
from spreadwright.rest.openapi import component

Found = TypeVar("Found")

_MARK = b"\xef\xbb\xbf"
"""What some editors put before UTF-8; JSON on the wire has none."""


def document_form(kind: str) -> Form:
    """The JSON of a document of one kind."""
    return Form("json", JSON, _bytes, component(kind))


def named(documents: Mapping[str, Found], kind: str, name: str) -> Found:
    """The document of a name, sound or not.

    Raises:
        UnknownName: There is none.
    """
    if name not in documents:
        raise UnknownName(kind, name, documents)
    return documents[name]


def _bytes(_: Arguments, reading: Reading[Any]) -> bytes:
    if not reading.data:  # a file that is no document has nothing to give but its reason
        raise InvalidDocument(reading.model.id, reading.findings)
    return reading.data.removeprefix(_MARK)
