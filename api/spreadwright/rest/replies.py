"""Bytes to a response: strong ETag, 304 when the client has them already, links, what caches may do."""

from collections.abc import Iterable
from urllib.parse import quote

from flask import Response, request

from spreadwright.rest.memory import Body

REVALIDATE = "public, no-cache"
"""Keep it, and ask with its ETag before showing it again."""
FIXED = "public, max-age=86400"
"""Versioned, so it will not change; a day lets a mistake be mended."""
UNKEPT = "no-store"


def reply(body: Body, media_type: str, *, links: Iterable[str] = (), cache: str = REVALIDATE) -> Response:
    """The response with a body, or 304 without one."""
    response = Response(body.data, content_type=media_type)
    if request.method in ("GET", "HEAD") and request.if_none_match.contains_weak(body.digest):
        response = Response(status=304)
        del response.headers["Content-Type"]
    if request.method in ("GET", "HEAD"):
        response.set_etag(body.digest)
    response.headers["Cache-Control"] = cache
    for each in links:
        response.headers.add("Link", each)
    return response


def redirect(path: str, status: int) -> Response:
    """To another path of ours, below whatever path the service is mounted at; two slashes would name another host."""
    response = Response(status=status)
    del response.headers["Content-Type"]
    response.headers["Location"] = quote(request.script_root + "/" + path.lstrip("/"))
    return response
