"""Every error as one problem document (RFC 9457): a table of exception classes, and what fills the document.

What the table does not list is a bug: it is logged, and the client learns nothing but that it happened.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from http import HTTPStatus
from typing import Any
from urllib.parse import quote

from flask import Response, current_app, request
from werkzeug import exceptions as http

from spreadwright.document import canonical
from spreadwright.errors import (
    CannotDraw,
    InvalidDocument,
    NoColourway,
    NoPlan,
    PlanTooLong,
    PrintTooLong,
    UnknownName,
    UnreadableDocument,
    UnreadablePicture,
)
from spreadwright.rest.conditions import Exists, Unconditional
from spreadwright.rest.identity import Forbidden, NoToken, challenge
from spreadwright.rest.job_errors import TooManyJobs, Unfinished
from spreadwright.rest.parameters import BadQuery
from spreadwright.rest.rates import TooMany
from spreadwright.rest.readiness import NotReady
from spreadwright.rest.service import service
from spreadwright.rest.telemetry import request_id
from spreadwright.rest.turns import AllBusy
from spreadwright.store.errors import (
    BadCursor,
    BadId,
    Busy,
    Gone,
    IdTaken,
    InvalidToken,
    KeyReused,
    StaleWrite,
    WrongState,
)

PROBLEM_JSON = "application/problem+json"
TYPE_BASE = "https://spreadwright.example/problems/"
_LONGEST, _LONGEST_PATH = 500, 200
_NEAR = 0.8
"""How alike an address must be to be what was meant, from 0 to 1."""


class NotAcceptable(http.NotAcceptable):
    """None of the forms suits the client."""

    def __init__(self, offers: list[str]) -> None:
        super().__init__(f"This is served as {', '.join(offers)}; none of them is accepted.")
        self.offers = offers


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of problem: its status, its permanent name, its title, and how its detail is worded."""

    status: int
    name: str
    title: str
    detail: Callable[[Any], str | None] = str


def _described(reason: http.HTTPException) -> str:
    return reason.description or reason.name


def _too_large(reason: http.RequestEntityTooLarge) -> str:
    is_told = reason.description != http.RequestEntityTooLarge.description
    return (
        reason.description
        if is_told and reason.description
        else f"A body may have at most {service().settings.document_bytes:,} bytes."
    )


def _nowhere(_: http.NotFound) -> str:
    path = request.path[:_LONGEST_PATH]
    near = get_close_matches(path, _addresses(), n=1, cutoff=_NEAR)
    hint = f"Did you mean “{near[0]}”?" if near else "What there is stands in “/openapi.json”."
    return f"There is nothing at “{path}”. {hint}"


def _addresses() -> list[str]:
    """Those that name no document, with and without the suffix of JSON, which all of them come in."""
    rules = {rule.rule for rule in current_app.url_map.iter_rules()}
    fixed = {rule for rule in rules if "<" not in rule}
    return sorted(fixed | {f"{rule}.json" for rule in fixed if f"{rule}.<suffix>" in rules})


def _wrong_method(reason: http.MethodNotAllowed) -> str:
    return f"This address takes {', '.join(sorted(reason.valid_methods or ()))}."


KINDS: dict[type[Exception], Kind] = {
    BadQuery: Kind(400, "bad-query", "The query has parameters that are not understood"),
    UnreadableDocument: Kind(400, "unreadable-document", "The document cannot be read"),
    UnreadablePicture: Kind(422, "unreadable-picture", "The picture cannot be read"),
    UnknownName: Kind(404, "unknown-name", "There is nothing of that name"),
    InvalidDocument: Kind(422, "invalid-document", "The document has errors"),
    NoColourway: Kind(422, "no-colourway", "The papers do not fill the roles"),
    CannotDraw: Kind(422, "cannot-draw", "The picture cannot be drawn"),
    NoPlan: Kind(422, "no-plan", "The pieces cannot be cut from these sheets"),
    PlanTooLong: Kind(422, "plan-too-long", "No plan was found in the time given"),
    PrintTooLong: Kind(422, "print-too-long", "The print is longer than any that is made here"),
    NoToken: Kind(401, "no-token", "This needs a token"),
    InvalidToken: Kind(401, "invalid-token", "The token opens nothing"),
    Forbidden: Kind(403, "forbidden", "The token does not open this"),
    Gone: Kind(410, "gone", "The document has been deleted"),
    IdTaken: Kind(409, "id-taken", "The id is taken"),
    BadId: Kind(422, "bad-id", "The id is none"),
    KeyReused: Kind(422, "key-reused", "The key belongs to another request"),
    WrongState: Kind(409, "wrong-state", "The document is in another state"),
    BadCursor: Kind(400, "bad-cursor", "The place in the list is none"),
    StaleWrite: Kind(412, "stale-write", "Somebody else wrote first"),
    Exists: Kind(412, "exists", "The document is there already"),
    Unconditional: Kind(428, "condition-required", "The write does not say which revision it is meant for"),
    TooMany: Kind(429, "too-many-requests", "That was more than one client may ask for"),
    NotReady: Kind(503, "not-ready", "The service is not ready"),
    Busy: Kind(503, "database-busy", "The database does not answer in time"),
    http.NotFound: Kind(404, "not-found", "There is nothing at this address", _nowhere),
    http.MethodNotAllowed: Kind(405, "method-not-allowed", "This address takes another method", _wrong_method),
    http.NotAcceptable: Kind(406, "not-acceptable", "There is no such representation", _described),
    http.RequestEntityTooLarge: Kind(413, "too-large", "The body is too large", _too_large),
    http.RequestTimeout: Kind(408, "request-timeout", "The request did not arrive in full", _described),
    http.UnsupportedMediaType: Kind(415, "unsupported-media-type", "The body is of another type", _described),
    TooManyJobs: Kind(429, "too-many-jobs", "Too many of your jobs are unfinished"),
    Unfinished: Kind(409, "unfinished", "The job has no result"),
    AllBusy: Kind(503, "busy", "The service is busy"),
    http.InternalServerError: Kind(500, "internal", "The service has a fault", lambda _: None),
}
"""Class to kind; subclasses follow their nearest ancestor."""


def problem(reason: Exception) -> Response:
    """The response that tells a client of an error."""
    kind = _kind(reason)
    detail = kind.detail(reason)
    members = {
        "type": TYPE_BASE + kind.name,
        "title": kind.title,
        "status": kind.status,
        **({"detail": _clipped(detail)} if detail else {}),
        "instance": _clipped(quote(request.script_root + request.path)),
        "request_id": request_id(),
        "errors": _errors(reason),
        **({"available": reason.offers} if isinstance(reason, NotAcceptable) else {}),
    }
    response = Response(canonical(members), status=kind.status, content_type=PROBLEM_JSON)
    response.headers["Cache-Control"] = "no-store"
    response.headers.add("Link", f'<{quote(request.script_root)}/problems/{kind.name}>; rel="help"')
    for name, text in _headers(reason):
        response.headers[name] = text
    return response


def badly_sent(_: Exception) -> Response:
    """The response to a body whose chunks are none, which only shows while it is read."""
    return problem(http.BadRequest("The body is not sent as HTTP asks."))


def _headers(reason: Exception) -> Iterator[tuple[str, str]]:
    """What a client needs to know beside the document."""
    if isinstance(reason, http.MethodNotAllowed):
        yield "Allow", ", ".join(sorted(reason.valid_methods or ()))
    if isinstance(reason, AllBusy | TooManyJobs | Unfinished):
        yield "Retry-After", str(reason.seconds)
    if isinstance(reason, Busy | NotReady):
        yield "Retry-After", "1"
    if isinstance(reason, Gone):
        yield "ETag", f'"{reason.etag}"'
    if isinstance(reason, TooMany):
        yield "Retry-After", str(reason.allowance.seconds)
    if challenged := challenge(reason):
        yield "WWW-Authenticate", challenged


def _kind(reason: Exception) -> Kind:
    for each in type(reason).__mro__:
        if each in KINDS:
            return KINDS[each]
    return refusal(HTTPStatus(getattr(reason, "code", None) or 500))


def refusal(status: HTTPStatus) -> Kind:
    """What HTTP itself calls a problem, where there is nothing more to say about it."""
    return Kind(status.value, status.phrase.lower().replace(" ", "-"), status.phrase, _described)


def _errors(reason: Exception) -> list[dict[str, Any]]:
    match reason:
        case InvalidDocument():
            return [_error(f.code, f.severity.value, f.message, f.remedy, pointer=f.where) for f in reason.findings]
        case NoColourway():
            return [_error(f.code, f.severity.value, f.message, f.remedy, pointer=f.where) for f in reason.findings]
        case NoPlan():
            return [_error(f.code, f.severity.value, f.message, f.remedy, pointer=f.where) for f in reason.causes]
        case UnreadableDocument():
            return [_error("unreadable", "error", reason.reason, reason.remedy, pointer=reason.where)]
        case UnreadablePicture():
            named = f"{reason.name}: {reason.reason}" if reason.name else reason.reason
            return [_error(reason.code, "error", named, reason.remedy)]
        case UnknownName():
            message = f"There is no {reason.kind} “{reason.name}”."
            return [_error("unknown-name", "error", message, reason.hint)]
        case BadQuery():
            return [_error(each.code, "error", each.message, each.remedy, parameter=each.name) for each in reason.wrong]
    return []


def _error(code: str, severity: str, detail: str, remedy: str, **place: str) -> dict[str, Any]:
    return {"code": code, "severity": severity, **place, "detail": _clipped(detail), "remedy": _clipped(remedy)}


def _clipped(text: str) -> str:
    """No client needs its own kilobytes back; half a character would not leave as UTF-8."""
    whole = text.encode("utf-8", "replace").decode()
    return whole if len(whole) <= _LONGEST else whole[: _LONGEST - 1] + "…"
