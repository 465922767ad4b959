"""How the sheets of a recipe are cut, on any bench."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.errors import UnknownName
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import on_bench
from spreadwright.rest.cut_envelopes import Cuts
from spreadwright.rest.forms import Arguments, json_form, picture_forms
from spreadwright.rest.queries import CutsQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.tasks import Cutting, cut
from spreadwright.tasks.answers import cuts_answer
from spreadwright.tasks.draw import cut_sheets_pdf, cut_sheets_svg

blueprint = Resources("cuts", __name__, description=__doc__)


def _steps(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> dict[str, Any]:
    return cuts_answer(cut(recipe, bench))


def _one_sheet(arguments: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    cutting = cut(recipe, bench)
    number = arguments.get("sheet") or _first_cut(cutting)
    if number > len(cutting.sheets):
        raise UnknownName("sheet", str(number), [str(sheet.number) for sheet in cutting.sheets])
    return cut_sheets_svg(cutting)[number - 1]


def _first_cut(cutting: Cutting) -> int:
    """The number of the first sheet that is cut at all, else of the first."""
    return next((step.sheet for step in cutting.steps), 1)


def _every_sheet(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    return cut_sheets_pdf(cut(recipe, bench))


@blueprint.resource(
    "/recipes/<recipe_id>/cuts",
    json_form(_steps, Cuts),
    *picture_forms(_one_sheet, _every_sheet),
    query=CutsQuery,
)
def cuts(arguments: Arguments, recipe_id: str) -> Documents:
    """The cut sheets, the steps at the trimmer and the piles; as a picture one sheet, as PDF all of them."""
    return on_bench(arguments, recipe_id)
