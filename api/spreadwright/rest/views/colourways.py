"""The colourways of a recipe: every way in which a paper set fills its roles."""

from collections.abc import Iterable
from typing import Any

from spreadwright.colour import count
from spreadwright.document import Reading
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.choices import papers_for
from spreadwright.rest.envelopes import ColourwayList
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address, page_links
from spreadwright.rest.queries import ColourwaysQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import proven
from spreadwright.tasks.answers import colourways_answer

blueprint = Resources("colourways", __name__, description=__doc__)


def _list(arguments: Arguments, reading: Reading[Recipe], papers: PaperSet) -> dict[str, Any]:
    recipe = proven(reading)
    answer = colourways_answer(recipe, papers, start=arguments["start"], limit=arguments["limit"])
    items = [{**each, "links": {"preview": _preview(recipe, each["id"])}} for each in answer["colourways"]]
    return {**answer, "colourways": items}


def _preview(recipe: Recipe, colourway_id: str) -> str:
    return address("preview.preview", recipe_id=recipe.id, colourway=colourway_id)


def _links(arguments: Arguments, reading: Reading[Recipe], papers: PaperSet) -> Iterable[str]:
    return page_links(arguments["start"], arguments["limit"], count(reading.model, papers))


@blueprint.resource(
    "/recipes/<recipe_id>/colourways", json_form(_list, ColourwayList), query=ColourwaysQuery, links=_links
)
def colourways(arguments: Arguments, recipe_id: str) -> Documents:
    """The colourways of a recipe in a paper set, in a stable order, with their previews."""
    recipe = collection().recipe(recipe_id)
    return recipe, papers_for(recipe.model, arguments.get("set"))
