"""Matching uploaded photographs with papers and mats; nothing is kept."""

from typing import Any

from spreadwright.document import Reading, read_recipe
from spreadwright.model import Recipe
from spreadwright.photos.focus import FORM, focus_points
from spreadwright.rest.choices import sets_for
from spreadwright.rest.forms import Arguments, json_form, picture_forms
from spreadwright.rest.match_envelopes import Match as Shape
from spreadwright.rest.parameters import BadQuery, WrongParameter, wrong
from spreadwright.rest.queries import MatchQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.rest.turns import turn
from spreadwright.rest.uploads import Upload, uploaded
from spreadwright.tasks.match import Focus, Match, looked_at, match
from spreadwright.tasks.match_answers import match_answer
from spreadwright.tasks.match_pictures import match_preview_svg, match_svg

blueprint = Resources("match", __name__, description=__doc__)

_SECONDS = 10
"""As many pixels as may be sent take about as long, in the slowest of kinds."""
_MOST_PIXELS = 50_000_000


def _answer(_: Arguments, found: Match) -> dict[str, Any]:
    return match_answer(found)


def _sheet(_: Arguments, found: Match) -> bytes:
    return match_svg(found)


def _preview(_: Arguments, found: Match) -> bytes:
    return match_preview_svg(found)


@blueprint.task("/match", json_form(_answer, Shape), *picture_forms(_sheet), query=MatchQuery, reads=uploaded)
def match_photographs(arguments: Arguments, upload: Upload) -> Documents:
    """The colours of uploaded photographs and the paper sets that suit them, as a table or as a picture.

    With a recipe, by its id in the query or as a part of its own: the colourways that suit them, which photograph lies
    on which mat, and how it is cropped there. Photographs are JPEG, PNG, WebP, TIFF, or HEIF where the service can read
    it; what is no photograph, damaged, too large or moves is answered with 422 and `unreadable-picture`.
    """
    return (_found(arguments, upload),)


@blueprint.task("/match/preview", *picture_forms(_preview), query=MatchQuery, reads=uploaded)
def match_preview(arguments: Arguments, upload: Upload) -> Documents:
    """The spread in the colourway that suits uploaded photographs best, with the photographs in its mats."""
    if "recipe" not in arguments and upload.recipe is None:
        message = "A preview needs a recipe."
        raise BadQuery([WrongParameter("missing-parameter", "recipe", message, "Name one, or send it as a part.")])
    return (_found(arguments, upload),)


def _found(arguments: Arguments, upload: Upload) -> Match:
    reading = _recipe(arguments, upload)
    sets = sets_for(arguments.get("set"))
    focus = _focus(arguments, upload)
    with turn(_SECONDS):
        seen = [looked_at(name, data, most_pixels=_MOST_PIXELS) for name, data in upload.photographs]
        return match(seen, sets, reading=reading, wanted=arguments["n"], focus=focus)


def _recipe(arguments: Arguments, upload: Upload) -> Reading[Recipe] | None:
    if upload.recipe is not None:
        return read_recipe(upload.recipe, "")
    return collection().recipe(arguments["recipe"]) if "recipe" in arguments else None


def _focus(arguments: Arguments, upload: Upload) -> dict[int, Focus]:
    texts = [each for each in arguments.get("focus", "").split(";") if each.strip()]
    try:
        return focus_points(texts, [name for name, _ in upload.photographs])
    except ValueError as reason:
        raise wrong("focus", str(reason), FORM) from None
