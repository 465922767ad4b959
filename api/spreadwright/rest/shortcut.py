"""The short way to answers that were given lately: past routes, views and the making of headers.

What was answered to a request is answered to the very same request again, as long as the documents that it shows stand
as they stood, which the database is asked each time. So what one process writes is seen by all the others at once, and
what is no longer for everybody takes the long way. Counts, log and the id of the request are made for each of both.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from threading import Lock
from typing import Any, NamedTuple

from flask import Flask, Response, g, request

from spreadwright.rest.service import Service
from spreadwright.rest.telemetry import HEADER, Told, begin, note, sane_id, told_of
from spreadwright.store.errors import Busy
from spreadwright.store.values import Head

MOST, MOST_BYTES = 1000, 64 * 1024
"""How many answers are remembered, and how long the body of one may be; the longest recipe has 20 kB."""
_PLAIN = frozenset(("", "*/*", "application/json"))
"""What programs accept; whoever likes pages may be sent to one, which may be there or not."""
_KEPT_APART = frozenset(("accept", "origin"))


class _Asked(NamedTuple):
    """Everything that an answer for everybody may depend on."""

    root: str
    path: str
    accept: str
    origin: str
    condition: str


@dataclass(frozen=True, slots=True)
class _Answer:
    heads: tuple[Head, ...]
    status: str
    headers: tuple[tuple[str, str], ...]
    body: bytes
    told: Told


class Shortcut:
    """Stands before the application, and is shown what that answers."""

    def __init__(self, app: Flask, service: Service) -> None:
        self._long_way, self._service = app.wsgi_app, service
        self._answers: dict[_Asked, _Answer] = {}
        self._lock = Lock()

    def __call__(self, environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        """The answer to one request."""
        begin(environ, self._service)
        asked = _asked(environ)
        answer = self._answers.get(asked) if asked else None
        if answer is None or not all(map(self._stands, answer.heads)):
            return self._long_way(environ, start_response)
        request_id = sane_id(environ)
        note(environ, self._service, answer.told, request_id)
        start_response(answer.status, [*answer.headers, (HEADER, request_id)])
        return (answer.body,)

    def _stands(self, head: Head) -> bool:
        try:
            return self._service.store.documents.stands(head)
        except Busy:
            return False  # the long way has words for it

    def remember(self, response: Response) -> Response:
        """The response, which is remembered if it is for everybody and rests on nothing but heads."""
        heads: tuple[Head, ...] = g.get("heads", ())
        asked = _asked(request.environ) if heads else None
        if asked and _is_plain(asked, response):
            whole = response.get_wsgi_headers(request.environ)
            headers = tuple((name, value) for name, value in whole if name != HEADER)
            self._keep(asked, _Answer(heads, response.status, headers, response.get_data(), told_of(response)))
        return response

    def _keep(self, asked: _Asked, answer: _Answer) -> None:
        with self._lock:
            self._answers.pop(asked, None)
            if len(self._answers) >= MOST:
                del self._answers[next(iter(self._answers))]
            self._answers[asked] = answer


def rests_on(documents: Iterable[object]) -> None:
    """Tells that the answer to the request at hand is made of these alone; heads can be asked for again."""
    heads = tuple(each for each in documents if isinstance(each, Head))
    g.heads = heads if len(heads) == len(tuple(documents)) else ()


def _asked(environ: Mapping[str, Any]) -> _Asked | None:
    """What is asked for; None where more than that may decide."""
    accept = environ.get("HTTP_ACCEPT", "")
    is_plain = environ["REQUEST_METHOD"] == "GET" and not environ.get("QUERY_STRING") and accept in _PLAIN
    if not is_plain or "HTTP_AUTHORIZATION" in environ:
        return None
    origin, condition = environ.get("HTTP_ORIGIN", ""), environ.get("HTTP_IF_NONE_MATCH", "")
    return _Asked(environ.get("SCRIPT_NAME", ""), environ.get("PATH_INFO", ""), accept, origin, condition)


def _is_plain(asked: _Asked, response: Response) -> bool:
    """Whether every cache might keep it, and the next one to ask is likely to ask in the same words."""
    tag = response.headers.get("ETag", "")
    return (
        response.status_code in (200, 304)
        and response.headers.get("Cache-Control", "").startswith("public")
        and {each.lower() for each in response.vary} <= _KEPT_APART
        and asked.condition in ("", tag, f"W/{tag}")
        and "allowance" not in g
        and len(response.get_data()) <= MOST_BYTES
    )
