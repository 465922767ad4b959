"""What is new, and what there is, for other programs to show."""

from typing import Any

from spreadwright.rest import feeds
from spreadwright.rest.feed_envelopes import Embedded, JsonFeed
from spreadwright.rest.forms import Arguments, Form, json_form
from spreadwright.rest.queries import EmbedQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection, service
from spreadwright.store.values import Document
from spreadwright.store.wanted import Wanted

MOST_NEW, MOST_LISTED, _AT_ONCE = 30, 10_000, 200

blueprint = Resources("feeds", __name__, description=__doc__)


def _atom(_: Arguments, here: str, *recipes: Document) -> bytes:
    return feeds.atom(here, recipes)


def _json(_: Arguments, here: str, *recipes: Document) -> dict[str, Any]:
    return feeds.json_feed(here, recipes)


def _sitemap(_: Arguments, here: str, *recipes: Document) -> bytes:
    return feeds.sitemap(here, recipes)


def _photo(arguments: Arguments, here: str, recipe: Document) -> dict[str, Any]:
    widest = min(arguments["maxwidth"], service().settings.widest_px)
    return feeds.photo(recipe, here, widest=widest, highest=arguments["maxheight"])


@blueprint.resource(
    "/feed",
    Form("atom", feeds.ATOM, _atom, {"type": "string"}, is_work=False),
    Form("json", feeds.FEED_JSON, json_form(_json, JsonFeed).make, JsonFeed, is_work=False),
)
def feed(_: Arguments) -> Documents:
    """The recipes that changed last, as Atom or JSON Feed."""
    page = service().store.listing.page(Wanted("recipes", sort="-changed", limit=MOST_NEW))
    return feeds.base(), *page.documents


@blueprint.resource("/sitemap.xml", Form("xml", feeds.XML, _sitemap, {"type": "string"}, is_work=False))
def sitemap(_: Arguments) -> Documents:
    """The page of every published recipe, for search engines."""
    found: list[Document] = []
    after = None
    while len(found) < MOST_LISTED:
        page = service().store.listing.page(Wanted("recipes", limit=_AT_ONCE, after=after))
        found += page.documents
        after = page.next
        if after is None:
            break
    return feeds.base(), *found


@blueprint.resource("/oembed", json_form(_photo, Embedded, is_work=False), query=EmbedQuery)
def oembed(arguments: Arguments) -> Documents:
    """A recipe as a picture in a page of somebody else's (oEmbed 1.0)."""
    here = feeds.base()
    return here, collection().document("recipes", feeds.embedded(arguments["url"], here))
