"""Where every piece and photograph of a recipe goes."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import on_bench
from spreadwright.rest.forms import Arguments, json_form, picture_forms
from spreadwright.rest.placement_envelopes import Placement
from spreadwright.rest.queries import PlacementQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.tasks import place
from spreadwright.tasks.draw import placement_pdf, placement_svg
from spreadwright.tasks.placement_answers import placement_answer

blueprint = Resources("placement", __name__, description=__doc__)


def _steps(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> dict[str, Any]:
    return placement_answer(place(recipe, bench))


def _pages(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    return placement_svg(place(recipe, bench))


def _printed(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    return placement_pdf(place(recipe, bench))


@blueprint.resource(
    "/recipes/<recipe_id>/placement",
    json_form(_steps, Placement),
    *picture_forms(_pages, _printed),
    query=PlacementQuery,
)
def placement(arguments: Arguments, recipe_id: str) -> Documents:
    """The steps with the ruler, in gluing order."""
    return on_bench(arguments, recipe_id)
