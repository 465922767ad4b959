"""What is new, for readers of feeds and for search engines: Atom (RFC 4287), JSON Feed 1.1, sitemap, oEmbed 1.0."""

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import Any
from urllib.parse import unquote, urlsplit
from xml.etree.ElementTree import Element, SubElement, tostring

from flask import request
from werkzeug.exceptions import BadRequest

from spreadwright.drawing import size_on_table
from spreadwright.errors import UnknownName
from spreadwright.geometry import Size
from spreadwright.rest.service import service
from spreadwright.store.values import Document
from spreadwright.tasks.draw import NARROWEST_PX

ATOM, FEED_JSON, XML = "application/atom+xml", "application/feed+json", "application/xml"
TITLE = "Spreadwright: new recipes"
_ATOM, _SITEMAP = "http://www.w3.org/2005/Atom", "http://www.sitemaps.org/schemas/sitemap/0.9"
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
    feed = Element("feed", xmlns=_ATOM)
    SubElement(feed, "title").text = TITLE
    SubElement(feed, "id").text = f"{here}/feed"
    SubElement(feed, "updated").text = _latest(recipes).isoformat()
    SubElement(feed, "link", rel="self", type=ATOM, href=f"{here}/feed.atom")
    SubElement(feed, "link", rel="alternate", type="text/html", href=f"{here}/")
    for each in recipes:
        _entry(feed, each, here)
    return _bytes(feed)


def _entry(feed: Element, recipe: Document, here: str) -> None:
    entry = SubElement(feed, "entry")
    facts, address = recipe.facts, page_address(recipe.id, here)
    SubElement(entry, "title").text = facts.title
    SubElement(entry, "id").text = address
    SubElement(entry, "link", rel="alternate", type="text/html", href=address)
    SubElement(entry, "link", rel="enclosure", type="image/png", href=f"{here}/recipes/{recipe.id}/preview.png")
    SubElement(entry, "published").text = _published(recipe).isoformat()
    SubElement(entry, "updated").text = recipe.head.changed_at.isoformat()
    SubElement(entry, "summary").text = facts.summary
    for name in facts.authors or ("Unknown",):
        SubElement(SubElement(entry, "author"), "name").text = name
    for tag in facts.tags:
        SubElement(entry, "category", term=tag)


def json_feed(here: str, recipes: Sequence[Document]) -> dict[str, Any]:
    """The feed as JSON Feed 1.1."""
    return {
        "version": "https://jsonfeed.org/version/1.1",
        "title": TITLE,
        "home_page_url": f"{here}/",
        "feed_url": f"{here}/feed.json",
        "items": [_item(each, here) for each in recipes],
    }


def _item(recipe: Document, here: str) -> dict[str, Any]:
    facts, address = recipe.facts, page_address(recipe.id, here)
    return {
        "id": address,
        "url": address,
        "title": facts.title,
        "content_text": facts.summary,
        "image": f"{here}/recipes/{recipe.id}/preview.png",
        "date_published": _published(recipe).isoformat(),
        "date_modified": recipe.head.changed_at.isoformat(),
        "authors": [{"name": name} for name in facts.authors],
        "tags": list(facts.tags),
        "language": facts.language,
    }


def sitemap(here: str, recipes: Sequence[Document]) -> bytes:
    """The pages that there are, for search engines."""
    pages = Element("urlset", xmlns=_SITEMAP)
    SubElement(SubElement(pages, "url"), "loc").text = f"{here}/"
    for each in recipes:
        page = SubElement(pages, "url")
        SubElement(page, "loc").text = page_address(each.id, here)
        SubElement(page, "lastmod").text = each.head.changed_at.date().isoformat()
    return _bytes(pages)


def embedded(url: str, here: str) -> str:
    """The id of the recipe at an address of ours.

    Raises:
        UnknownName: It is none.
    """
    is_here = url.startswith(f"{here}/")
    steps = unquote(urlsplit(url).path).rstrip("/").split("/") if is_here else []
    is_ours = len(steps) >= 3 and steps[-2] == "recipes"
    if not is_ours:
        raise UnknownName("page of a recipe", url[:_LONGEST_PATH], ())
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


def _bytes(root: Element) -> bytes:
    found: bytes = tostring(root, encoding="utf-8", xml_declaration=True)
    return found
