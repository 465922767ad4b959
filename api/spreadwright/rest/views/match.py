"""Matching uploaded photographs with papers and mats; nothing is kept."""

from typing import Any

from spreadwright.document import Reading, read_recipe
from spreadwright.images import pixel_count
from spreadwright.model import PaperSet, Recipe
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
from spreadwright.rest.working import told
from spreadwright.tasks.match import Focus, Match, looked_at, match
from spreadwright.tasks.match_answers import match_answer
from spreadwright.tasks.match_pictures import match_preview_svg, match_svg

blueprint = Resources("match", __name__, description=__doc__)

_JPEG = b"\xff\xd8"
_SECONDS = 10
"""As many pixels as may be sent take about as long, in the slowest of kinds."""
MOST_PIXELS = 50_000_000
_EACH_S, _JPEG_S, _OTHER_S = 0.25, 8e-9, 45e-9
"""Of each photograph whatever its size, and of each of its pixels by kind."""

Found = tuple[Upload, tuple[PaperSet, ...], Reading[Recipe] | None, tuple[tuple[int, Focus], ...]]


def _matched(arguments: Arguments, upload: Upload, sets: Any, reading: Any, focus: Any) -> Match:
    count = len(upload.photographs)
    with turn(_SECONDS):
        seen = []
        for number, (name, data) in enumerate(upload.photographs):
            told(number / (count + 1), "looking at the photographs")
            seen.append(looked_at(name, data, most_pixels=MOST_PIXELS))
        told(count / (count + 1), "matching papers")
        return match(seen, sets, reading=reading, wanted=arguments["n"], focus=dict(focus))


def _expected_s(_: Arguments, upload: Upload, *__: object) -> float:
    return sum(
        _EACH_S + pixel_count(data) * (_JPEG_S if data.startswith(_JPEG) else _OTHER_S)
        for _, data in upload.photographs
    )


def _answer(*found: Any) -> dict[str, Any]:
    return match_answer(_matched(*found))


def _sheet(*found: Any) -> bytes:
    return match_svg(_matched(*found))


def _preview(*found: Any) -> bytes:
    return match_preview_svg(_matched(*found))


@blueprint.task(
    "/match",
    json_form(_answer, Shape),
    *picture_forms(_sheet),
    query=MatchQuery,
    reads=uploaded,
    expected_s=_expected_s,
)
def match_photographs(arguments: Arguments, upload: Upload) -> Documents:
    """The colours of uploaded photographs and the paper sets that suit them, as a table or as a picture.

    With a recipe, by its id in the query or as a part of its own: the colourways that suit them, which photograph lies
    on which mat, and how it is cropped there. Photographs are JPEG, PNG, WebP, TIFF, or HEIF where the service can read
    it; what is no photograph, damaged, too large or moves is answered with 422 and `unreadable-picture`. Many
    large ones are a job, which keeps them until it is over and no longer.
    """
    return _found(arguments, upload)


@blueprint.task("/match/preview", *picture_forms(_preview), query=MatchQuery, reads=uploaded, expected_s=_expected_s)
def match_preview(arguments: Arguments, upload: Upload) -> Documents:
    """The spread in the colourway that suits uploaded photographs best, with the photographs in its mats."""
    if "recipe" not in arguments and upload.recipe is None:
        message = "A preview needs a recipe."
        raise BadQuery([WrongParameter("missing-parameter", "recipe", message, "Name one, or send it as a part.")])
    return _found(arguments, upload)


def _found(arguments: Arguments, upload: Upload) -> Found:
    """Everything that can be wrong with the request is found before any photograph is looked at."""
    reading = _recipe(arguments, upload)
    return upload, sets_for(arguments.get("set")), reading, tuple(_focus(arguments, upload).items())


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
