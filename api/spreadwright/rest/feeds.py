"""What is new, for readers of feeds and for search engines: Atom (RFC 4287), JSON Feed 1.1, sitemap, oEmbed 1.0."""

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Any
from urllib.parse import unquote, urlsplit

from flask import request
from werkzeug.exceptions import BadRequest

from spreadwright.drawing import size_on_table
from spreadwright.errors import UnknownName
from spreadwright.geometry import Size
from spreadwright.rest.service import service
from spreadwright.store.values import Document
from spreadwright.tasks import feeds
from spreadwright.tasks.draw import NARROWEST_PX
from spreadwright.tasks.feeds import ATOM, FEED_JSON

__all__ = ["ATOM", "FEED_JSON", "XML", "atom", "base", "embedded", "json_feed", "page_address", "photo", "sitemap"]

XML = "application/xml"
TITLE = "Spreadwright: new recipes"
_LONGEST_PATH = 120


def base() -> str:
    """The address under which others reach the service, without a slash at its end.

    Raises:
        BadRequest: Neither the settings nor the request name one.
    """
    if service().settings.public_url:
        return service().settings.public_url
    if not request.host:
        raise BadRequest("The Host header names no host.")
    return request.host_url.rstrip("/") + request.script_root


def page_address(recipe_id: str, here: str) -> str:
    """The page of a recipe."""
    return f"{here}/recipes/{recipe_id}/"


def atom(here: str, recipes: Sequence[Document]) -> bytes:
    """The feed as Atom."""
    return feeds.atom(_feed(here, recipes))


def json_feed(here: str, recipes: Sequence[Document]) -> dict[str, Any]:
    """The feed as JSON Feed 1.1."""
    return feeds.json_feed(_feed(here, recipes))


def sitemap(here: str, recipes: Sequence[Document]) -> bytes:
    """The pages that there are, for search engines."""
    pages = [(page_address(each.id, here), each.head.changed_at) for each in recipes]
    return feeds.sitemap([(f"{here}/", None), *pages])


def _feed(here: str, recipes: Sequence[Document]) -> feeds.Feed:
    entries = tuple(_entry(each, here) for each in recipes)
    return feeds.Feed(
        TITLE, f"{here}/feed", f"{here}/", f"{here}/feed.atom", f"{here}/feed.json", _latest(recipes), entries
    )


def _entry(recipe: Document, here: str) -> feeds.Entry:
    facts = recipe.facts
    return feeds.Entry(
        page_address(recipe.id, here),
        facts.title,
        facts.summary,
        tuple(facts.authors),
        tuple(facts.tags),
        facts.language,
        f"{here}/recipes/{recipe.id}/preview.png",
        _published(recipe),
        recipe.head.changed_at,
    )


def embedded(url: str, here: str) -> str:
    """The id of the recipe at an address of ours.

    Raises:
        UnknownName: It is none.
    """
    is_here = url.startswith(f"{here}/")
    steps = unquote(urlsplit(url).path).rstrip("/").split("/") if is_here else []
    is_ours = len(steps) >= 3 and steps[-2] == "recipes"
    if not is_ours:
        raise UnknownName("page of a recipe", url[:_LONGEST_PATH], None)
    return steps[-1]


def photo(recipe: Document, here: str, *, widest: int, highest: int) -> dict[str, Any]:
    """What oEmbed says of a recipe: its preview as a picture, sizes in pixels."""
    facts = recipe.facts
    shown = size_on_table(Size((facts.page_width or 1) * max(1, facts.pages), facts.page_height or 1))
    width = max(NARROWEST_PX, min(widest, highest * shown.width // shown.height))
    return {
        "version": "1.0",
        "type": "photo",
        "title": facts.title,
        "author_name": ", ".join(facts.authors),
        "provider_name": "Spreadwright",
        "provider_url": f"{here}/",
        "url": f"{here}/recipes/{recipe.id}/preview.png?width={width}",
        "width": width,
        "height": max(1, round(width * shown.height / shown.width)),
    }


def _latest(recipes: Sequence[Document]) -> datetime:
    return max((each.head.changed_at for each in recipes), default=datetime(2026, 1, 1, tzinfo=UTC))


def _published(recipe: Document) -> datetime:
    return recipe.published_at or recipe.created_at
