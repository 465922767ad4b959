"""The body of a request, as bytes of a JSON document; where pieces are planned, a list of them in short is one too."""

from typing import Protocol

from flask import request
from werkzeug.exceptions import RequestEntityTooLarge, RequestTimeout, UnsupportedMediaType

from spreadwright.document import MOST_BYTES, canonical, pieces_in_short
from spreadwright.errors import UnreadableDocument
from spreadwright.rest.forms import JPEG, JSON, PNG
from spreadwright.rest.service import service

TEXT = "text/plain"
READ_AT_MOST = MOST_BYTES + 1
"""A body of unknown length is read to here and no further; the one byte more shows that it is too long."""


def document_bytes() -> bytes:
    """The body, which must be JSON by its type or have no type; `READ_AT_MOST` bounds it.

    Raises:
        UnsupportedMediaType: It is of another type, or compressed.
        RequestEntityTooLarge: It is longer than a document may be.
        RequestTimeout: Its end did not arrive.
    """
    is_json = request.mimetype == "application/json" or (
        request.mimetype.startswith("application/") and request.mimetype.endswith("+json")
    )
    if request.mimetype and not is_json:
        raise UnsupportedMediaType(f"The body is {request.mimetype[:80]}; send a document as application/json.")
    return _body(service().settings.document_bytes)


def document_or_pieces() -> bytes:
    """The body as `document_bytes` takes it, or pieces in short as plain text, made a document.

    Raises:
        UnreadableDocument: The text is no list of pieces; also as `document_bytes`.
    """
    if request.mimetype != TEXT:
        return document_bytes()
    try:
        text = _body(service().settings.document_bytes).decode()
    except UnicodeDecodeError:
        raise UnreadableDocument("The text is not UTF-8.", "Send it in UTF-8.") from None
    return canonical(pieces_in_short(text))


class Sent(Protocol):
    """A body that is more than the bytes of a document."""

    def as_body(self) -> tuple[bytes, str]:
        """The same as bytes, and their type, for whoever reads it again."""


def as_sent(data: bytes | Sent) -> tuple[bytes, str]:
    """What was read of a body, as it may be read again: its bytes and their type."""
    return (data, JSON) if isinstance(data, bytes) else data.as_body()


def picture_bytes() -> bytes:
    """The body, which must be a PNG or JPEG by its type.

    Raises:
        UnsupportedMediaType: It is of another type, or compressed.
        RequestEntityTooLarge: It has more bytes than a picture may have.
        RequestTimeout: Its end did not arrive.
    """
    if request.mimetype not in (PNG, JPEG):
        raise UnsupportedMediaType(f"The body is {request.mimetype[:80] or 'of no type'}; send {PNG} or {JPEG}.")
    most = service().settings.picture_bytes
    request.max_content_length = most
    try:
        return _body(most)
    except RequestEntityTooLarge:
        told = f"A picture may have at most {most:,} bytes. Save it with fewer pixels; 2048 a side are plenty."
        raise RequestEntityTooLarge(told) from None


def refuse_compressed() -> None:
    """Nothing, where the body is as it is read.

    Raises:
        UnsupportedMediaType: It is compressed.
    """
    if request.headers.get("Content-Encoding", "identity").strip().lower() != "identity":
        raise UnsupportedMediaType("The body is compressed; send it as it is.")


def _body(most: int) -> bytes:
    refuse_compressed()
    data = request.get_data(cache=False)
    if len(data) < (request.content_length or 0):
        raise RequestTimeout("The rest of the body did not arrive.")
    if len(data) > most:
        raise RequestEntityTooLarge
    return data
