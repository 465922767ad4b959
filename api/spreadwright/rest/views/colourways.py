"""The colourways of a recipe: those that please most, and all of them."""

from collections.abc import Iterable
from typing import Any

from spreadwright.colour import count
from spreadwright.document import Reading
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.choices import papers_for, sets_for
from spreadwright.rest.colourway_envelopes import ColourwayList, ColourwayRanking
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address, link, page_links
from spreadwright.rest.queries import AllColourwaysQuery, ColourwaysQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import proven
from spreadwright.tasks.answers import colourways_answer
from spreadwright.tasks.ranking import propose
from spreadwright.tasks.ranking_answers import ranking_answer

blueprint = Resources("colourways", __name__, description=__doc__)


def _ranked(arguments: Arguments, reading: Reading[Recipe], *sets: PaperSet) -> dict[str, Any]:
    recipe = proven(reading)
    return _linked(recipe, ranking_answer(propose(recipe, sets, arguments["n"])))


def _list(arguments: Arguments, reading: Reading[Recipe], papers: PaperSet) -> dict[str, Any]:
    recipe = proven(reading)
    return _linked(recipe, colourways_answer(recipe, papers, start=arguments["start"], limit=arguments["limit"]))


def _linked(recipe: Recipe, answer: dict[str, Any]) -> dict[str, Any]:
    items = [{**each, "links": {"preview": _preview(recipe, each["id"])}} for each in answer["colourways"]]
    return {**answer, "colourways": items}


def _preview(recipe: Recipe, colourway_id: str) -> str:
    return address("preview.preview", recipe_id=recipe.id, colourway=colourway_id)


def _to_all(arguments: Arguments, reading: Reading[Recipe], *_: PaperSet) -> Iterable[str]:
    named = {"set": arguments["set"]} if "set" in arguments else {}
    yield link(address("colourways.all_colourways", recipe_id=reading.model.id, **named), "collection")


def _pages(arguments: Arguments, reading: Reading[Recipe], papers: PaperSet) -> Iterable[str]:
    return page_links(arguments["start"], arguments["limit"], count(reading.model, papers))


@blueprint.resource(
    "/recipes/<recipe_id>/colourways", json_form(_ranked, ColourwayRanking), query=ColourwaysQuery, links=_to_all
)
def colourways(arguments: Arguments, recipe_id: str) -> Documents:
    """The colourways that please most, different from one another, each with its score and the reason for it."""
    return collection().recipe(recipe_id), *sets_for(arguments.get("set"))


@blueprint.resource(
    "/recipes/<recipe_id>/colourways/all", json_form(_list, ColourwayList), query=AllColourwaysQuery, links=_pages
)
def all_colourways(arguments: Arguments, recipe_id: str) -> Documents:
    """Every colourway of a recipe in a paper set, in a stable order, a page at a time."""
    recipe = collection().recipe(recipe_id)
    return recipe, papers_for(recipe.model, arguments.get("set"))
