"""The recipes."""

from typing import Any

from spreadwright.rest.document_history import add_history
from spreadwright.rest.document_writes import add_writes
from spreadwright.rest.documents import document_form, tag_of
from spreadwright.rest.documents import links_of as links_of_document
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address
from spreadwright.rest.list_envelopes import RecipeList
from spreadwright.rest.lists import Page, item_of, links_of, page_of
from spreadwright.rest.queries import RecipesQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.store.facts import COUNTED
from spreadwright.store.values import Document

blueprint = Resources("recipes", __name__, description=__doc__)


def _list(arguments: Arguments, page: Page) -> dict[str, Any]:
    return {"count": page.count, "recipes": [_item(each, arguments) for each in page.items]}


def _item(recipe: Document, arguments: Arguments) -> dict[str, Any]:
    facts = recipe.facts
    figures = {name: getattr(facts, name) for name in COUNTED}
    return item_of(recipe, arguments, _links(recipe.id), **figures, roles=list(facts.roles))


def _links(recipe_id: str) -> dict[str, str]:
    views = {
        "self": "recipes.recipe",
        "preview": "preview.preview",
        "cuts": "cuts.cuts",
        "placement": "placement.placement",
        "colourways": "colourways.colourways",
    }
    return {relation: address(endpoint, recipe_id=recipe_id) for relation, endpoint in views.items()}


@blueprint.resource(
    "/recipes", json_form(_list, RecipeList, is_work=False), query=RecipesQuery, links=links_of, page="/"
)
def recipes(arguments: Arguments) -> Documents:
    """The recipes, with the figures that matter when choosing; filtered, searched and sorted as the query says."""
    return (page_of("recipes", arguments),)


@blueprint.resource(
    "/recipes/<recipe_id>",
    document_form("recipes"),
    links=links_of_document,
    page="/recipes/{recipe_id}/",
    has_page=True,
    tag=tag_of,
)
def recipe(_: Arguments, recipe_id: str) -> Documents:
    """One recipe: its document, as it is kept."""
    return (collection().head("recipes", recipe_id),)


add_writes(blueprint, "recipes")
add_history(blueprint, "recipes")
