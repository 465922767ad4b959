"""Addresses of our own, and the Link header (RFC 8288)."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Any

from flask import request, url_for

from spreadwright.rest.queries import FURTHEST


def address(endpoint: str, **values: Any) -> str:
    """The path of a view, below whatever path the service is mounted at."""
    return _built(request.script_root, endpoint, tuple(sorted(values.items())))


@lru_cache(maxsize=4096)
def _built(_: str, endpoint: str, values: tuple[tuple[str, Any], ...]) -> str:
    """The same for the same mount: building one takes longer than all else about a short answer."""
    return url_for(endpoint, **dict(values))


def link(target: str, relation: str) -> str:
    """One value of the Link header."""
    return f'<{target}>; rel="{relation}"'


def alternate(target: str, media_type: str) -> str:
    """The link from a page to what says the same, or more of it, to programs."""
    return f'<{target}>; rel="alternate"; type="{media_type}"'


def service_description() -> str:
    """The link from everything to the description of the service."""
    return link(address("service.openapi_as", suffix="json"), "service-desc")


def described_by(kind: str) -> str:
    """The link from a document to the schema of its kind."""
    return link(address("schema.schema_version", kind=kind, version=1), "describedby")


def here(name: str, *places: tuple[str, Any]) -> Iterator[str]:
    """Links to the address at hand with another value of one parameter, the rest of the query kept.

    Args:
        name: Of the parameter.
        places: Relation and value; None leaves the parameter out.
    """
    kept = {each: request.args[each] for each in request.args if each != name}
    for relation, value in places:
        asked = {**(request.view_args or {}), **kept, **({} if value is None else {name: value})}
        yield link(address(str(request.endpoint), **asked), relation)


def page_links(start: int, limit: int, count: int) -> Iterator[str]:
    """The links from one page of a list to the others that may be asked for, with the rest of the query kept."""
    places = [("first", 0)]
    if start > 0:
        places.append(("prev", max(0, start - limit)))
    if start + limit < min(count, FURTHEST + 1):
        places.append(("next", start + limit))
    return here("start", *places)
