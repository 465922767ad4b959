"""Content by its hash, at addresses under which nothing ever changes."""

from spreadwright.errors import UnknownName
from spreadwright.rest.forms import JSON, Arguments, Form
from spreadwright.rest.replies import IMMUTABLE
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import service

blueprint = Resources("contents", __name__, description=__doc__)


def _data(_: Arguments, data: bytes) -> bytes:
    return data


@blueprint.resource("/contents/<digest>", Form("json", JSON, _data, {"type": "object"}, is_work=False), cache=IMMUTABLE)
def content(_: Arguments, digest: str) -> Documents:
    """What stood in some document at some time, by its SHA-256."""
    data = service().store.history.content(digest.lower())
    if not data.startswith(b"{"):
        raise UnknownName("document content", digest, ())
    return (data,)
