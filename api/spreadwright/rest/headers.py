"""The headers that every response carries: what a browser may do with it, and who may read it."""

import re
from base64 import b64encode
from hashlib import sha256

from flask import Response, current_app, request

from spreadwright.rest.forms import SVG
from spreadwright.rest.replies import OWN
from spreadwright.rest.service import service
from spreadwright.rest.shelf import is_own

WORKER_POLICY = "default-src 'self'"
"""A service worker fetches under the policy that it came with, whatever its pages may load."""
PICTURE_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox"
"""Pictures within our pictures are embedded; nothing else is loaded."""
DATA_POLICY = "default-src 'none'; frame-ancestors 'none'"
EXPOSED = (
    "ETag, Link, Location, Content-Location, Content-Language, Accept-Patch, Retry-After, RateLimit, RateLimit-Policy, "
    "X-Request-Id, WWW-Authenticate, Preference-Applied"
)
METHODS = "GET, HEAD, POST, PUT, PATCH, DELETE, OPTIONS"
ASKED_WITH = (
    "Accept, Accept-Language, Authorization, Content-Type, Idempotency-Key, If-Match, If-None-Match, Prefer, "
    "X-Request-Id"
)
WORKER = "/sw.js"
"""Where the gallery keeps its service worker."""
_INLINE_SCRIPT = re.compile(rb"<script(?![^>]*\bsrc\b)[^>]*>(.*?)</script>", re.DOTALL | re.IGNORECASE)


def with_common_headers(response: Response) -> Response:
    """The response as it may leave: read by any site, sniffed and scripted by none."""
    if request.method == "OPTIONS" and response.status_code == 200:
        _answer_preflight(response)
    response.headers["X-Content-Type-Options"] = "nosniff"
    response.headers["Referrer-Policy"] = "same-origin"
    if response.status_code != 304:  # what a browser has keeps the policy that it came with
        response.headers.setdefault("Content-Security-Policy", _policy(response))
    if is_own() and response.headers.get("Cache-Control", "").startswith("public"):
        response.headers["Cache-Control"] = OWN
        response.vary.add("Authorization")
    _allow_origin(response)
    return response


def _allow_origin(response: Response) -> None:
    """Tokens travel in a header of their own, never in cookies, so that any site may be let in."""
    origins = service().settings.origins.split()
    origin = request.headers.get("Origin", "")
    if "*" in origins:
        response.headers["Access-Control-Allow-Origin"] = "*"
    else:
        response.vary.add("Origin")
        if origin not in origins:
            return
        response.headers["Access-Control-Allow-Origin"] = origin
    response.headers["Access-Control-Expose-Headers"] = EXPOSED


def _policy(response: Response) -> str:
    if response.mimetype == "text/html":
        return page_policy(response.get_data())
    if request.path == WORKER:
        return WORKER_POLICY
    return PICTURE_POLICY if response.mimetype == SVG else DATA_POLICY


def page_policy(page: bytes) -> str:
    """What a page of the gallery may load: its own address, its scripts by their hashes, photos from the device."""
    hashes = {b64encode(sha256(script).digest()).decode() for script in _INLINE_SCRIPT.findall(page)}
    scripts = " ".join(("'self'", *(f"'sha256-{each}'" for each in sorted(hashes))))
    return (
        f"default-src 'self'; script-src {scripts}; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
        "worker-src 'self'; manifest-src 'self'; "
        "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'self'"
    )


def _answer_preflight(response: Response) -> None:
    response.status_code = 204
    response.headers.pop("Content-Type", None)
    response.headers["Allow"] = ", ".join(sorted(_methods() or response.allow))
    response.headers["Access-Control-Allow-Methods"] = METHODS
    response.headers["Access-Control-Allow-Headers"] = ASKED_WITH
    response.headers["Access-Control-Max-Age"] = "86400"


def _methods() -> set[str]:
    """The methods of what is read at this path: `/recipes/x.json` is a form of a recipe, not one called so."""
    routes = current_app.create_url_adapter(request)
    if routes is None or not routes.test(method="GET"):
        return set()
    rule, _ = routes.match(method="GET", return_rule=True)
    return {name for each in current_app.url_map.iter_rules() if each.rule == rule.rule for name in each.methods or ()}
