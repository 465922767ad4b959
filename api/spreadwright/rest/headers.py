"""The headers that every response carries: what a browser may do with it, and who may read it."""

import re
from base64 import b64encode
from hashlib import sha256

from flask import Response, request

from spreadwright.rest.forms import SVG

PICTURE_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox"
"""Pictures within our pictures are embedded; nothing else is loaded."""
DATA_POLICY = "default-src 'none'; frame-ancestors 'none'"
_INLINE_SCRIPT = re.compile(rb"<script(?![^>]*\bsrc\b)[^>]*>(.*?)</script>", re.DOTALL | re.IGNORECASE)


def with_common_headers(response: Response) -> Response:
    """The response as it may leave: read by any site, sniffed and scripted by none."""
    if request.method == "OPTIONS" and response.status_code == 200:
        _answer_preflight(response)
    response.headers["X-Content-Type-Options"] = "nosniff"
    response.headers["Referrer-Policy"] = "same-origin"
    response.headers.setdefault("Content-Security-Policy", _policy(response))
    response.headers["Access-Control-Allow-Origin"] = "*"
    response.headers["Access-Control-Expose-Headers"] = "ETag, Link, Location"
    return response


def _policy(response: Response) -> str:
    if response.mimetype == "text/html":
        return page_policy(response.get_data())
    return PICTURE_POLICY if response.mimetype == SVG else DATA_POLICY


def page_policy(page: bytes) -> str:
    """What a page of the gallery may load: its own address, and the scripts that stand in it, by their hashes."""
    hashes = {b64encode(sha256(script).digest()).decode() for script in _INLINE_SCRIPT.findall(page)}
    scripts = " ".join(("'self'", *(f"'sha256-{each}'" for each in sorted(hashes))))
    return (
        f"default-src 'self'; script-src {scripts}; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
        "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'self'"
    )


def _answer_preflight(response: Response) -> None:
    response.status_code = 204
    response.headers.pop("Content-Type", None)
    response.headers["Access-Control-Allow-Methods"] = "GET, HEAD, POST, OPTIONS"
    response.headers["Access-Control-Allow-Headers"] = "Accept, Accept-Language, Content-Type, If-None-Match"
    response.headers["Access-Control-Max-Age"] = "86400"
