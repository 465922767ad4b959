"""The pieces of a recipe as a table."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Recipe
from spreadwright.rest.forms import Arguments, csv_form, json_form
from spreadwright.rest.print_envelopes import PieceTable
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks.pieces import pieces_answer, pieces_csv, pieces_of

blueprint = Resources("pieces", __name__, description=__doc__)


def _answer(_: Arguments, recipe: Reading[Recipe]) -> dict[str, Any]:
    return pieces_answer(recipe.model, pieces_of(recipe))


def _table(_: Arguments, recipe: Reading[Recipe]) -> bytes:
    return pieces_csv(pieces_of(recipe))


@blueprint.resource("/recipes/<recipe_id>/pieces", json_form(_answer, PieceTable), csv_form(_table))
def pieces(_: Arguments, recipe_id: str) -> Documents:
    """Every piece with its size, its sheet, its page and its photo."""
    return (collection().recipe(recipe_id),)
