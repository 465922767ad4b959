"""What is noted about requests: an id for each, a line in the log, and counts for `/metrics`.

A line is one JSON object. Neither queries nor headers nor bodies stand in it, so no secret does.
"""

import json
import re
import sys
from datetime import UTC, datetime
from secrets import token_hex
from time import perf_counter

from flask import Response, g, request

from spreadwright.rest.identity import caller_so_far
from spreadwright.rest.service import service

HEADER = "X-Request-Id"
_SANE = re.compile(r"[A-Za-z0-9-]{8,64}")
_LONGEST_PATH = 200


def begin() -> None:
    """The request gets its id, which a proxy may have given it already, and its time starts."""
    g.began = perf_counter()
    request_id()
    service().metrics.began()


def request_id() -> str:
    """The id of the request at hand."""
    if "request_id" not in g:
        given = request.headers.get(HEADER, "")
        g.request_id = given if _SANE.fullmatch(given) else token_hex(8)
    found: str = g.request_id
    return found


def end(response: Response) -> Response:
    """The response with its id, after it was counted and noted."""
    seconds = perf_counter() - g.get("began", perf_counter())
    response.headers[HEADER] = request_id()
    service().metrics.ended(request.endpoint or "", response.status_code, seconds)
    if service().settings.log == "json":
        _write(response, seconds)
    return response


def _write(response: Response, seconds: float) -> None:
    token = caller_so_far()
    line = {
        "at": datetime.now(UTC).isoformat(timespec="milliseconds"),
        "id": request_id(),
        "method": request.method,
        "path": request.path[:_LONGEST_PATH],
        "status": response.status_code,
        "ms": round(seconds * 1000, 2),
        "bytes": response.content_length or 0,
        "client": request.remote_addr or "",
        **({"owner": token.owner} if token else {}),
    }
    sys.stderr.write(json.dumps(line) + "\n")
    sys.stderr.flush()
