"""Feeds and the map of a gallery whose address is known: both want absolute addresses.

Documents carry no dates, and the same collection is to give the same bytes. So a feed is made only of a gallery that is
told its date, which stands for the state of all recipes in it; readers know recipes again by their addresses.
"""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.recipe.paths import card_path
from spreadwright.gallery.recipe.sharing import absolute
from spreadwright.gallery.site import Site
from spreadwright.tasks import feeds
from spreadwright.words import gettext as _

MOST_LISTED = 50_000
"""Of one map, by its protocol."""
_UNLISTED = ("404.", "offline.", "steps")
"""How pages begin that are no way in: the steps of a recipe stand on its page as well."""


@dataclass(frozen=True, slots=True)
class FeedLink:
    """One form of the feed, and where it lies in the site."""

    path: str
    media_type: str
    title: str


def feed_links(site: Site, dated: datetime | None) -> tuple[FeedLink, ...]:
    """The forms in which a gallery has its feed; none where it has none."""
    if not (site.address and dated):
        return ()
    return (
        FeedLink("feed.atom", feeds.ATOM, _("Layouts as a feed (Atom)")),
        FeedLink("feed.json", feeds.FEED_JSON, _("Layouts as a feed (JSON)")),
    )


def feed_files(recipes: Sequence[Facts], site: Site, dated: datetime | None, title: str) -> dict[str, bytes]:
    """The feed in every form, by path; nothing where the gallery does not know its address or its date."""
    if not (site.address and dated):
        return {}
    home = absolute(site.address, "")
    feed = feeds.Feed(
        title,
        home,
        home,
        absolute(site.address, "feed.atom"),
        absolute(site.address, "feed.json"),
        dated,
        tuple(_entry(recipe, site, dated) for recipe in recipes),
    )
    told = json.dumps(feeds.json_feed(feed), ensure_ascii=False, indent=1)
    return {"feed.atom": feeds.atom(feed), "feed.json": told.encode() + b"\n"}


def _entry(recipe: Facts, site: Site, dated: datetime) -> feeds.Entry:
    return feeds.Entry(
        absolute(site.address, recipe.path.removesuffix("index.html")),
        recipe.title,
        recipe.summary,
        recipe.authors,
        recipe.tags,
        recipe.language,
        absolute(site.address, card_path(recipe.id)),
        None,
        dated,
    )


def sitemap_files(site: Site, paths: Iterable[str]) -> dict[str, bytes]:
    """The map of all pages, and the maps that it leads to where there are too many; nothing without an address.

    Args:
        paths: Of pages in the site.
    """
    if not site.address:
        return {}
    pages = [
        (absolute(site.address, path.removesuffix("index.html")), None)
        for path in sorted(paths)
        if not path.rsplit("/", 1)[-1].startswith(_UNLISTED)
    ]
    if len(pages) <= MOST_LISTED:
        return {"sitemap.xml": feeds.sitemap(pages)}
    starts = range(0, len(pages), MOST_LISTED)
    maps = {
        f"sitemap-{number}.xml": feeds.sitemap(pages[start : start + MOST_LISTED])
        for number, start in enumerate(starts, start=1)
    }
    return {"sitemap.xml": feeds.sitemap_index([absolute(site.address, path) for path in maps]), **maps}
