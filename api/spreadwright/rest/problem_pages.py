"""The kinds of problems that there are, each with what it means."""

from http import HTTPStatus
from typing import Any

from spreadwright.errors import UnknownName
from spreadwright.rest.explained import EXPLAINED, Explanation
from spreadwright.rest.problems import KINDS, TYPE_BASE, refusal

OF_HTTP = (
    HTTPStatus.BAD_REQUEST,
    HTTPStatus.REQUEST_URI_TOO_LONG,
    HTTPStatus.EXPECTATION_FAILED,
    HTTPStatus.REQUEST_HEADER_FIELDS_TOO_LARGE,
    HTTPStatus.NOT_IMPLEMENTED,
)
"""What is refused before the service looks at it."""


def kinds() -> dict[str, dict[str, Any]]:
    """Every kind of problem by its name, in the order of the alphabet."""
    ours = {kind.name: (kind.status, kind.title, EXPLAINED[kind.name]) for kind in KINDS.values()}
    theirs = {(kind := refusal(each)).name: (kind.status, kind.title, _refused(each)) for each in OF_HTTP}
    return {name: _told(name, *found) for name, found in sorted((theirs | ours).items())}


def kind_named(code: str) -> dict[str, Any]:
    """One kind.

    Raises:
        UnknownName: There is none of that name.
    """
    known = kinds()
    if code not in known:
        raise UnknownName("problem", code, known)
    return known[code]


def _told(code: str, status: int, title: str, explanation: Explanation) -> dict[str, Any]:
    words = {"means": explanation.means, "remedy": explanation.remedy}
    return {"code": code, "type": TYPE_BASE + code, "status": status, "title": title, **words}


def _refused(status: HTTPStatus) -> Explanation:
    return Explanation(
        f"{status.description or 'The request is not written as HTTP says'}.", "Send it as RFC 9112 says."
    )
