"""Content by its hash, at addresses under which nothing ever changes."""

from spreadwright.errors import UnknownName
from spreadwright.rest.forms import JSON, Arguments, Form
from spreadwright.rest.identity import may_see_drafts
from spreadwright.rest.replies import IMMUTABLE
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import service
from spreadwright.rest.shelf import tell_own

blueprint = Resources("contents", __name__, description=__doc__)


def _data(_: Arguments, data: bytes) -> bytes:
    return data


@blueprint.resource("/contents/<digest>", Form("json", JSON, _data, {"type": "object"}, is_work=False), cache=IMMUTABLE)
def content(_: Arguments, digest: str) -> Documents:
    """What stood in some document at some time, by its SHA-256.

    Everybody reads what was published, unless it was withdrawn since; owners and reviewers what else they may.
    """
    history, name = service().store.history, digest.lower()
    if not history.is_public(name):
        if not any(map(may_see_drafts, history.documents_with(name))):
            raise UnknownName("document content", digest, None)
        tell_own()
    return (history.content(name),)
