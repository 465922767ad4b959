"""How far the pieces of a recipe may come out off, on any bench."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import on_bench
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.queries import InstructionsQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.tolerance_envelopes import Tolerance
from spreadwright.tasks.tolerance import tolerance as expected
from spreadwright.tasks.tolerance_answers import tolerance_answer

blueprint = Resources("tolerance", __name__, description=__doc__)


def _tolerance(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> dict[str, Any]:
    return tolerance_answer(expected(recipe, bench))


@blueprint.resource("/recipes/<recipe_id>/tolerance", json_form(_tolerance, Tolerance), query=InstructionsQuery)
def tolerance(arguments: Arguments, recipe_id: str) -> Documents:
    """What error to expect in each direction of each piece, and what could come out wrong by it."""
    return on_bench(arguments, recipe_id)
