"""What is noted about requests: an id for each, a line in the log, and counts for `/metrics`.

A line is one JSON object. Neither queries nor headers nor bodies stand in it, so no secret does.
"""

import json
import re
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from secrets import token_hex
from time import perf_counter
from typing import Any

from flask import Response, g, request

from spreadwright.rest.identity import caller_so_far
from spreadwright.rest.service import Service, service

HEADER = "X-Request-Id"
_SANE = re.compile(r"[A-Za-z0-9-]{8,64}")
_LONGEST_PATH = 200
_BEGAN, _GIVEN = "spreadwright.began", "HTTP_X_REQUEST_ID"


@dataclass(frozen=True, slots=True)
class Told:
    """What is noted about an answer, however often it is given.

    Attributes:
        endpoint: What was asked for, empty for nothing that is there.
        size: Of the body, bytes.
    """

    endpoint: str
    method: str
    path: str
    status: int
    size: int


def begin(environ: dict[str, Any], service: Service) -> None:
    """A request has arrived: its time starts."""
    environ[_BEGAN] = perf_counter()
    service.metrics.began()


def sane_id(environ: Mapping[str, Any]) -> str:
    """The id that a proxy has given to a request, or a new one."""
    given: str = environ.get(_GIVEN, "")
    return given if _SANE.fullmatch(given) else token_hex(8)


def request_id() -> str:
    """The id of the request at hand."""
    if "request_id" not in g:
        g.request_id = sane_id(request.environ)
    found: str = g.request_id
    return found


def end(response: Response) -> Response:
    """The response with its id, after it was counted and noted."""
    response.headers[HEADER] = request_id()
    token = caller_so_far()
    note(request.environ, service(), told_of(response), request_id(), token.owner if token else "")
    return response


def told_of(response: Response) -> Told:
    """What is noted about the response to the request at hand."""
    size, path = response.content_length or 0, request.path[:_LONGEST_PATH]
    return Told(request.endpoint or "", request.method, path, response.status_code, size)


def note(environ: Mapping[str, Any], service: Service, told: Told, request_id: str, owner: str = "") -> None:
    """A request is answered: it is counted, and has its line in the log."""
    now = perf_counter()
    seconds = now - environ.get(_BEGAN, now)
    service.metrics.ended(told.endpoint, told.status, seconds)
    if service.settings.log == "json":
        _write(told, seconds, request_id, environ.get("REMOTE_ADDR") or "", owner)


def _write(told: Told, seconds: float, request_id: str, client: str, owner: str) -> None:
    line = {
        "at": datetime.now(UTC).isoformat(timespec="milliseconds"),
        "id": request_id,
        "method": told.method,
        "path": told.path,
        "status": told.status,
        "ms": round(seconds * 1000, 2),
        "bytes": told.size,
        "client": client,
        **({"owner": owner} if owner else {}),
    }
    sys.stderr.write(json.dumps(line) + "\n")
    sys.stderr.flush()
