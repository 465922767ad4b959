"""The body of a request, as bytes of a JSON document."""

from flask import request
from werkzeug.exceptions import RequestEntityTooLarge, UnsupportedMediaType

from spreadwright.document import MOST_BYTES

READ_AT_MOST = MOST_BYTES + 1
"""A body of unknown length is read to here and no further; the one byte more shows that it is too long."""


def document_bytes() -> bytes:
    """The body, which must be JSON by its type or have no type; `READ_AT_MOST` bounds it.

    Raises:
        UnsupportedMediaType: It is of another type, or compressed.
        RequestEntityTooLarge: It is longer than a document may be.
    """
    is_json = request.mimetype == "application/json" or (
        request.mimetype.startswith("application/") and request.mimetype.endswith("+json")
    )
    if request.mimetype and not is_json:
        raise UnsupportedMediaType(f"The body is {request.mimetype[:80]}; send a document as application/json.")
    if request.headers.get("Content-Encoding", "identity").strip().lower() != "identity":
        raise UnsupportedMediaType("The body is compressed; send it as it is.")
    data = request.get_data(cache=False)
    if len(data) > MOST_BYTES:
        raise RequestEntityTooLarge
    return data
