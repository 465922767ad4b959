"""The sheets of a recipe as paths, for cutting machines and other programs."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import on_bench
from spreadwright.rest.forms import Arguments, json_form, path_forms
from spreadwright.rest.print_envelopes import CutPaths
from spreadwright.rest.queries import CutPathsQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.tasks.cut_paths import cut_paths as paths_of
from spreadwright.tasks.cut_paths import cut_paths_answer, cut_paths_zip

blueprint = Resources("cut-paths", __name__, description=__doc__)


def _answer(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> dict[str, Any]:
    return cut_paths_answer(paths_of(recipe, bench))


def _sheet(form: str, arguments: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    return paths_of(recipe, bench).sheet(arguments.get("sheet")).file(form)


def _archive(_: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    return cut_paths_zip(paths_of(recipe, bench))


@blueprint.resource(
    "/recipes/<recipe_id>/cut-paths",
    json_form(_answer, CutPaths),
    *path_forms(_sheet, _archive),
    query=CutPathsQuery,
)
def cut_paths(arguments: Arguments, recipe_id: str) -> Documents:
    """Each sheet at full size: all of them as JSON or as an archive with the table of the pieces, one as SVG or DXF."""
    return on_bench(arguments, recipe_id)
