"""Where the gallery is not what the store is by now: recipes published since it was built, and those taken back."""

import re
from typing import Any
from urllib.parse import quote

from flask import Response, request

from spreadwright.document import Reading
from spreadwright.errors import InvalidDocument, UnknownName
from spreadwright.lengths import size_text
from spreadwright.model import Recipe
from spreadwright.rest import feeds
from spreadwright.rest.documents import address_about, document_address
from spreadwright.rest.forms import JSON
from spreadwright.rest.links import address, alternate
from spreadwright.rest.memory import Body
from spreadwright.rest.reference import page
from spreadwright.rest.replies import reply
from spreadwright.rest.service import collection, service
from spreadwright.rest.site import PAGE
from spreadwright.rest.statuses import relatives_of
from spreadwright.store.errors import Gone
from spreadwright.store.values import Document, State
from spreadwright.tasks import proven

_RECIPE = re.compile(r"(?:/[a-z]{2})?/recipes/([a-z0-9-]+)/")
_OF_RECIPE = re.compile(r"(?:/[a-z]{2})?/(?:recipes|pictures|downloads)/([a-z0-9-]+)/")
"""The page of a recipe in some language, and whatever the gallery has of one."""
_WIDE_PX = 1200
_PRINTS = {
    "booklet": ("pdf", "Booklet: everything that a class needs"),
    "cuts": ("pdf", "Cut sheets"),
    "placement": ("pdf", "Placement, to glue by"),
    "templates": ("pdf", "Templates at full size"),
    "cut_paths": ("zip", "Cut paths, for cutting machines"),
    "pieces": ("csv", "Every piece, for spreadsheets"),
    "contact_sheet": ("svg", "The same in other papers"),
}
"""What is to be had of a recipe, by the name of its operation: as what, and what it is called."""
_MODULES = {"cut_paths": "cut-paths", "contact_sheet": "contact-sheets"}


def stand_in() -> Response | None:
    """The page at the address of the request; None where that is no recipe's, or not for whoever asks."""
    found = re.fullmatch(r"/recipes/([a-z0-9-]+)/", request.path)
    if found is None:
        return None
    try:
        recipe = collection().document("recipes", found[1])
    except (UnknownName, Gone):
        return None
    return reply(Body(_page(recipe)), PAGE, links=discovery(request.path))


def is_taken_back(path: str) -> bool:
    """Whether the gallery still shows, at a path, something of a recipe that was withdrawn, refused or deleted."""
    found = _OF_RECIPE.match(path)
    if found is None:
        return False
    try:
        head = service().store.documents.head("recipes", found[1], gone=True)
    except UnknownName:  # the gallery may be of other recipes
        return False
    return head.state is not State.PUBLISHED


def discovery(path: str) -> list[str]:
    """Links from a page to what is new and, from that of a recipe, to how others embed it."""
    feed = [
        alternate(address("feeds.feed_as", suffix="atom"), feeds.ATOM),
        alternate(address("feeds.feed_as", suffix="json"), feeds.FEED_JSON),
    ]
    found = _RECIPE.fullmatch(path)
    return [*feed, alternate(_embedding(found[1]), "application/json+oembed")] if found else feed


def _embedding(recipe_id: str) -> str:
    return f"{address('feeds.oembed')}?url={quote(feeds.page_address(recipe_id, feeds.base()), safe='')}"


def _page(recipe: Document) -> bytes:
    here, name = feeds.base(), recipe.id
    reading: Reading[Recipe] = collection().reading(recipe)
    parents, children = relatives_of(recipe)
    return page(
        "recipe",
        request.script_root,
        facts=recipe.facts,
        size=_size(reading),
        canonical=feeds.page_address(name, here),
        picture=address("preview.preview_as", recipe_id=name, suffix="svg"),
        shared_picture=f"{here}/recipes/{name}/preview.png?width={_WIDE_PX}",
        prints=_prints(name) if _works(reading) else [],
        document=address("recipes.recipe_as", recipe_id=name, suffix="json"),
        revisions=address_about("revisions_of", "recipes", name),
        feed=address("feeds.feed_as", suffix="atom"),
        embedding=_embedding(name),
        parents=_linked(parents),
        children=_linked(children),
        json=JSON,
    )


def _works(reading: Reading[Recipe]) -> bool:
    try:
        proven(reading)
    except InvalidDocument:
        return False
    return True


def _size(reading: Reading[Recipe]) -> str:
    size = reading.model.spread.size
    return size_text(size.width, size.height, reading.model.unit) if size else ""


def _prints(recipe_id: str) -> list[dict[str, str]]:
    return [
        {
            "address": address(f"{_MODULES.get(name, name)}.{name}_as", recipe_id=recipe_id, suffix=suffix),
            "title": title,
            "kind": suffix.upper(),
        }
        for name, (suffix, title) in _PRINTS.items()
    ]


def _linked(relatives: Any) -> list[dict[str, str]]:
    return [{"id": each.id, "address": f"{document_address(each.kind, each.id)}/"} for each in relatives]
