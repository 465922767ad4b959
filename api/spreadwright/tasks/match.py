"""The verb *match*: from photographs to their colours, the papers that suit them, and their places on the mats."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from spreadwright.colour.palette import Tally, Tone, palette, tally, together
from spreadwright.colour.spaces import oklab
from spreadwright.document import Reading
from spreadwright.errors import Finding, UnreadablePicture, note, warning
from spreadwright.geometry import Size
from spreadwright.images import MOST_PIXELS, Picture, limited, read
from spreadwright.images.srgb import light_of
from spreadwright.lengths import TICKS, Unit, neighbours, told_size
from spreadwright.model import PaperSet, Recipe
from spreadwright.photos import COARSE, Pixels
from spreadwright.photos.cropping import Crop, Focus
from spreadwright.photos.faces import LONGEST as LONGEST_FOR_FACES
from spreadwright.photos.faces import faces
from spreadwright.photos.matching import Laid, Shot, laid
from spreadwright.photos.saliency import LONGEST as LONGEST_LOOKED_AT
from spreadwright.photos.saliency import Floats, attention
from spreadwright.tasks.check import proven
from spreadwright.tasks.layout import layout
from spreadwright.tasks.suiting import Suit, suits
from spreadwright.words import gettext as _

__all__ = ["MOST_PHOTOGRAPHS", "Crop", "Focus", "Match", "Photograph", "PhotographInMat", "looked_at", "match"]

MOST_PHOTOGRAPHS = 24
"""That are matched together."""

_STEPS = {
    Unit.INCH: TICKS[Unit.INCH] // 8,
    Unit.CENTIMETRE: TICKS[Unit.MILLIMETRE],
    Unit.MILLIMETRE: TICKS[Unit.MILLIMETRE],
}
"""To which a size that is advised is rounded down, ticks."""

_LONGEST_FOR_COLOURS = 256
"""Pixels on the longest side: more shows no other palette."""


@dataclass(frozen=True, slots=True, eq=False)
class Photograph:
    """A photograph that was read, and what was seen in it.

    Attributes:
        size: Upright, as it was made.
        picture: Upright, in sRGB, small.
        tones: Its palette.
        attention: For every pixel of a small picture of it.
    """

    name: str
    size: Pixels
    picture: Picture
    tally: Tally
    tones: tuple[Tone, ...]
    attention: Floats


@dataclass(frozen=True, slots=True, eq=False)
class PhotographInMat:
    """A photograph on the mat where it loses least.

    Attributes:
        number: Among the photographs, from nought.
        size: Of what is seen of it, as it lies on the page, ticks.
    """

    number: int
    photograph: Photograph
    on: str
    mark: str
    page: str
    size: Size
    laid: Laid

    @property
    def crop(self) -> Crop:
        """What of it is seen."""
        return self.laid.crop


@dataclass(frozen=True, slots=True, eq=False)
class Match:
    """What was found out about photographs.

    Attributes:
        tones: The palette of all of them, each counting alike.
        suits: The papers that suit them, the best first.
        recipe: Whose mats they lie on, if one was named.
        left_over: The photographs for which no mat was left, by number.
        empty: The mats for which no photograph was left.
    """

    photographs: tuple[Photograph, ...]
    tones: tuple[Tone, ...]
    suits: tuple[Suit, ...]
    recipe: Recipe | None = None
    in_mats: tuple[PhotographInMat, ...] = ()
    left_over: tuple[int, ...] = ()
    empty: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()


def looked_at(name: str, data: bytes, *, most_pixels: int = MOST_PIXELS) -> Photograph:
    """A photograph, with its colours and with what draws the eye.

    Raises:
        UnreadablePicture: The bytes are no photograph, or too large; it bears the name.
    """
    try:
        picture = read(data, most_pixels=most_pixels)
    except UnreadablePicture as refusal:
        raise UnreadablePicture(refusal.code, refusal.reason, refusal.remedy, name=name) from refusal
    counted = tally(limited(picture.pixels, _LONGEST_FOR_COLOURS))
    found = faces(limited(picture.pixels, LONGEST_FOR_FACES))
    seen = attention(oklab(light_of(limited(picture.pixels, LONGEST_LOOKED_AT))), found)
    size = Pixels(picture.width, picture.height)
    return Photograph(name, size, picture, counted, palette(counted), seen)


def match(
    photographs: Sequence[Photograph],
    sets: Sequence[PaperSet],
    *,
    reading: Reading[Recipe] | None = None,
    wanted: int = 4,
    focus: Mapping[int, Focus] | None = None,
) -> Match:
    """The colours of photographs, the sets or colourways that suit them, and their places on the mats of a recipe.

    Args:
        photographs: At least one.
        sets: Among which to choose; of a single one several colourways are given.
        reading: The recipe on whose mats they are to lie.
        wanted: How many sets or colourways, at most.
        focus: By the number of a photograph the point about which it is cropped.

    Raises:
        InvalidDocument: The recipe carries an error.
        NoColourway: None of the sets fills the roles of the recipe.
    """
    tones = palette(together([each.tally for each in photographs]))
    if reading is None:
        return Match(tuple(photographs), tones, suits(tones, sets, wanted))
    recipe = proven(reading)
    lying, mats = _in_mats(recipe, photographs, focus or {})
    taken = {each.number for each in lying}
    left_over = tuple(number for number in range(len(photographs)) if number not in taken)
    empty = tuple(mat for mat in mats if mat not in {each.on for each in lying})
    return Match(
        tuple(photographs),
        tones,
        suits(tones, sets, wanted, recipe=recipe),
        recipe,
        lying,
        left_over,
        empty,
        (*_coarse(lying, recipe), *_left(photographs, left_over, empty)),
    )


def _in_mats(
    recipe: Recipe, photographs: Sequence[Photograph], focus: Mapping[int, Focus]
) -> tuple[tuple[PhotographInMat, ...], list[str]]:
    pieces, photos = layout(recipe)
    placed = {each.piece.id: each for each in pieces}
    mats = [(placed[photo.on], photo.rect_on(placed[photo.on].rect).size) for photo in photos if photo.on in placed]
    shots = [Shot(each.size, each.attention, focus.get(number)) for number, each in enumerate(photographs)]
    lying = []
    for each in laid(shots, [size for _mat, size in mats]):
        mat, size = mats[each.mat]
        photograph = photographs[each.shot]
        lying.append(PhotographInMat(each.shot, photograph, mat.piece.id, mat.piece.mark, mat.page, size, each))
    return tuple(lying), [mat.piece.id for mat, _size in mats]


def _coarse(lying: Sequence[PhotographInMat], recipe: Recipe) -> list[Finding]:
    """Photographs of too few pixels for the size that they have on paper."""
    found = []
    for each in lying:
        if each.laid.per_inch < COARSE:
            words, remedy = _coarse_words(each, recipe)
            found.append(warning("photo-too-coarse", f"/photographs/{each.number}", words, remedy))
    return found


def _coarse_words(each: PhotographInMat, recipe: Recipe) -> tuple[str, str]:
    share, step = each.laid.per_inch / COARSE, _STEPS[recipe.unit]
    wide, high = (neighbours(side * share, step)[0] for side in (each.size.width, each.size.height))
    told = _("“{photo}” has {resolution} pixels to the inch on the mat “{mat}”, where it is {size}.")
    remedy = _("Below {least} it looks soft: take it with more pixels, or use a mat where it is at most {size}.")
    message = told.format(
        photo=each.photograph.name,
        resolution=int(each.laid.per_inch),
        mat=each.on,
        size=told_size(each.size.width, each.size.height, recipe.unit),
    )
    return message, remedy.format(least=COARSE, size=told_size(wide, high, recipe.unit))


def _left(photographs: Sequence[Photograph], left_over: Sequence[int], empty: Sequence[str]) -> list[Finding]:
    found = []
    for number in left_over:
        message = _("No mat is left for “{photo}”.").format(photo=photographs[number].name)
        remedy = _("Take a recipe with more mats, or leave it for another page.")
        found.append(note("photo-left-over", f"/photographs/{number}", message, remedy))
    if empty:
        message = _("No photo is left for: {mats}.").format(mats=", ".join(empty))
        found.append(note("mat-left-empty", "/empty", message, _("Add photos, or leave these mats for the maker.")))
    return found
