"""The recipes of the collection."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Recipe
from spreadwright.rest.documents import document_form
from spreadwright.rest.envelopes import RecipeList
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address, described_by
from spreadwright.rest.lists import Page, links_of, page_of
from spreadwright.rest.queries import PageQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks.answers import recipe_figures

blueprint = Resources("recipes", __name__, description=__doc__)


def _list(_: Arguments, page: Page[Reading[Recipe]]) -> dict[str, Any]:
    items = [{**recipe_figures(each.model), "links": _links(each.model.id)} for each in page.items]
    return {"count": page.count, "start": page.start, "recipes": items}


def _links(recipe_id: str) -> dict[str, str]:
    views = {
        "self": "recipes.recipe",
        "preview": "preview.preview",
        "cuts": "cuts.cuts",
        "placement": "placement.placement",
        "colourways": "colourways.colourways",
    }
    return {relation: address(endpoint, recipe_id=recipe_id) for relation, endpoint in views.items()}


@blueprint.resource("/recipes", json_form(_list, RecipeList), query=PageQuery, links=links_of, page="/")
def recipes(arguments: Arguments) -> Documents:
    """The recipes, with the figures that matter when choosing, by id."""
    return (page_of(collection().recipes, arguments),)


@blueprint.resource(
    "/recipes/<recipe_id>",
    document_form("recipe"),
    links=lambda *_: [described_by("recipe")],
    page="/recipes/{recipe_id}/",
)
def recipe(_: Arguments, recipe_id: str) -> Documents:
    """One recipe: its document, as it is kept."""
    return (collection().recipe(recipe_id),)
