"""Bytes to a response: strong ETag, 304 when the client has them already, links, what caches may do."""

from collections.abc import Iterable
from urllib.parse import quote

from flask import Response, request

from spreadwright.rest.memory import Body

REVALIDATE = "public, no-cache"
"""Keep it, and ask with its ETag before showing it again."""
FIXED = "public, max-age=86400"
"""Versioned, so it will not change; a day lets a mistake be mended."""
OWN = "private, no-cache"
"""For whoever asked, and for no cache that others share."""
IMMUTABLE = "public, max-age=31536000, immutable"
"""At an address that names the bytes themselves."""
UNKEPT = "no-store"


def reply(
    body: Body, media_type: str, *, links: Iterable[str] = (), cache: str = REVALIDATE, tag: str = ""
) -> Response:
    """The response with a body, or 304 without one.

    Args:
        body: What is sent.
        media_type: Of what kind it is.
        links: Values of the Link header.
        cache: What caches may do.
        tag: Names what is sent; the hash of the body when empty.
    """
    is_read = request.method in ("GET", "HEAD")
    tag = (tag or body.digest) if is_read else ""
    if is_read and request.if_none_match.contains_weak(tag):
        response = Response(status=304)
        del response.headers["Content-Type"]
    else:
        response = Response(body.data, content_type=media_type)
    if tag:
        response.set_etag(tag)
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
