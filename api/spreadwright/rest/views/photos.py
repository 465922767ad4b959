"""The photographs of a recipe, for any bench and border."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import on_bench
from spreadwright.rest.forms import Arguments, csv_form, json_form
from spreadwright.rest.print_envelopes import Photos
from spreadwright.rest.queries import PhotosQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.tasks.photo_answers import photos_answer, photos_csv
from spreadwright.tasks.photos import Border, Photographs
from spreadwright.tasks.photos import photos as photographs

blueprint = Resources("photos", __name__, description=__doc__)


def _found(arguments: Arguments, recipe: Reading[Recipe], bench: Bench) -> Photographs:
    return photographs(recipe, bench, Border(arguments["border"]))


def _answer(arguments: Arguments, recipe: Reading[Recipe], bench: Bench) -> dict[str, Any]:
    return photos_answer(_found(arguments, recipe, bench))


def _table(arguments: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    return photos_csv(_found(arguments, recipe, bench))


@blueprint.resource("/recipes/<recipe_id>/photos", json_form(_answer, Photos), csv_form(_table), query=PhotosQuery)
def photos(arguments: Arguments, recipe_id: str) -> Documents:
    """What each photo is trimmed to, from which prints, and how many pixels it takes."""
    return on_bench(arguments, recipe_id)
