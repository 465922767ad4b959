"""What is new, for readers of feeds and for search engines: Atom (RFC 4287), JSON Feed 1.1, sitemaps (protocol 0.9)."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from xml.etree.ElementTree import Element, SubElement, tostring

from spreadwright.drawing.canvas import printable

ATOM, FEED_JSON = "application/atom+xml", "application/feed+json"
_ATOM, _SITEMAP = "http://www.w3.org/2005/Atom", "http://www.sitemaps.org/schemas/sitemap/0.9"
_UNKNOWN = "Unknown"
"""Atom wants an author for each entry."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One recipe of a feed; addresses are absolute, times have their zone.

    Attributes:
        address: Of its page, by which readers know it again.
        picture: Of a picture of it, PNG.
        published: None where that is not known.
    """

    address: str
    title: str
    summary: str
    authors: tuple[str, ...]
    tags: tuple[str, ...]
    language: str
    picture: str
    published: datetime | None
    updated: datetime


@dataclass(frozen=True, slots=True)
class Feed:
    """All that a feed says, in either form; addresses are absolute.

    Attributes:
        id: By which readers know the feed again, wherever it moves.
        home: The page that it tells of.
    """

    title: str
    id: str
    home: str
    atom_address: str
    json_address: str
    updated: datetime
    entries: tuple[Entry, ...]


def atom(feed: Feed) -> bytes:
    """The feed as Atom."""
    root = Element("feed", xmlns=_ATOM)
    SubElement(root, "title").text = feed.title
    SubElement(root, "id").text = feed.id
    SubElement(root, "updated").text = feed.updated.isoformat()
    SubElement(root, "link", rel="self", type=ATOM, href=feed.atom_address)
    SubElement(root, "link", rel="alternate", type="text/html", href=feed.home)
    for each in feed.entries:
        _entry(root, each)
    return _bytes(root)


def _entry(feed: Element, entry: Entry) -> None:
    found = SubElement(feed, "entry")
    SubElement(found, "title").text = printable(entry.title)
    SubElement(found, "id").text = entry.address
    SubElement(found, "link", rel="alternate", type="text/html", href=entry.address)
    if entry.picture:
        SubElement(found, "link", rel="enclosure", type="image/png", href=entry.picture)
    if entry.published:
        SubElement(found, "published").text = entry.published.isoformat()
    SubElement(found, "updated").text = entry.updated.isoformat()
    SubElement(found, "summary").text = printable(entry.summary)
    for name in entry.authors or (_UNKNOWN,):
        SubElement(SubElement(found, "author"), "name").text = printable(name)
    for tag in entry.tags:
        SubElement(found, "category", term=printable(tag))


def json_feed(feed: Feed) -> dict[str, Any]:
    """The feed as JSON Feed."""
    return {
        "version": "https://jsonfeed.org/version/1.1",
        "title": feed.title,
        "home_page_url": feed.home,
        "feed_url": feed.json_address,
        "items": [_item(each) for each in feed.entries],
    }


def _item(entry: Entry) -> dict[str, Any]:
    said = {
        "id": entry.address,
        "url": entry.address,
        "title": entry.title,
        "content_text": entry.summary,
        "image": entry.picture,
        "date_published": entry.published.isoformat() if entry.published else "",
        "date_modified": entry.updated.isoformat(),
        "authors": [{"name": name} for name in entry.authors],
        "tags": list(entry.tags),
        "language": entry.language,
    }
    return {name: value for name, value in said.items() if value or name not in ("image", "date_published")}


def sitemap(pages: Iterable[tuple[str, datetime | None]]) -> bytes:
    """The pages that there are, each by its absolute address and the day of its last change, where that is known."""
    root = Element("urlset", xmlns=_SITEMAP)
    for address, changed in pages:
        page = SubElement(root, "url")
        SubElement(page, "loc").text = address
        if changed:
            SubElement(page, "lastmod").text = changed.date().isoformat()
    return _bytes(root)


def sitemap_index(addresses: Sequence[str]) -> bytes:
    """Where the maps lie of a site that has more pages than one may list."""
    root = Element("sitemapindex", xmlns=_SITEMAP)
    for address in addresses:
        SubElement(SubElement(root, "sitemap"), "loc").text = address
    return _bytes(root)


def _bytes(root: Element) -> bytes:
    found: bytes = tostring(root, encoding="utf-8", xml_declaration=True)
    return found
