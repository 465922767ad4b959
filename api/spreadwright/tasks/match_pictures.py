"""Pictures of a match: colours beside the papers that suit them, and the spread with the photographs in it."""

from collections.abc import Callable

from spreadwright.colour.names import colour_name
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.drawing import Canvas, draw_spread, spread_picture, spread_size, svg_bytes
from spreadwright.drawing.match import Print, Proposal, Slip, Swatch, match_picture
from spreadwright.drawing.theme import TABLE
from spreadwright.errors import CannotDraw
from spreadwright.images import encode_jpeg, fitted, limited, resized
from spreadwright.model import Colourway, Recipe, face_title
from spreadwright.photos import MattedPhoto, matted_photos
from spreadwright.placing import PlacedPiece, placed_pieces
from spreadwright.tasks.match import Match, Photograph, PhotographInMat
from spreadwright.tasks.suiting import CLOSE, Suit, SuitingFace, share_words
from spreadwright.words import gettext as _
from spreadwright.words import title, unbroken

LARGE_PX, SMALL_PX = 720, 260
"""The longest side of a photograph in the preview, and where it is small, pixels."""


def match_svg(match: Match) -> bytes:
    """The photographs, their colours, and the papers that suit them best."""
    pictures = _pictures(match, SMALL_PX)
    found = [_proposal(match, suit, pictures) for suit in match.suits]
    heading = _("Colourways that suit them") if match.recipe else _("Paper sets that suit them")
    shown = _("Photos, the colours that they are made of, and the papers that suit them")
    prints = [_print(photograph) for photograph in match.photographs]
    return svg_bytes(match_picture(shown, heading, prints, _slips(match), found))


def match_preview_svg(match: Match, *, is_on_table: bool = True) -> bytes:
    """The spread in the colourway that suits best, with the photographs in their mats.

    Raises:
        CannotDraw: No recipe was named, or nothing suits it.
    """
    if match.recipe is None or not match.suits or match.suits[0].colourway is None:
        raise CannotDraw("A preview without a recipe")
    best = match.suits[0]
    recipe, placed, photos = _laid(match.recipe)
    surface = TABLE if is_on_table else ""
    pictures = _pictures(match, LARGE_PX)
    colourway = match.suits[0].colourway
    return svg_bytes(
        spread_picture(recipe, placed, photos, colourway, papers=best.papers.title, surface=surface, pictures=pictures)
    )


def _laid(recipe: Recipe) -> tuple[Recipe, tuple[PlacedPiece, ...], tuple[MattedPhoto, ...]]:
    cut = pieces(cut_sheets(recipe))
    return recipe, placed_pieces(recipe, cut), matted_photos(recipe, cut)


def _pictures(match: Match, longest: int) -> dict[str, bytes]:
    return {each.on: cropped_jpeg(each, longest) for each in match.in_mats}


def cropped_jpeg(each: PhotographInMat, longest: int) -> bytes:
    """What is seen of a photograph on its mat, at most so many pixels on its longest side."""
    pixels, crop = each.photograph.picture.pixels, each.crop
    height, width = pixels.shape[:2]
    left, top = float(crop.left * width), float(crop.top * height)
    wide, high = float(crop.width * width), float(crop.height * height)
    box = (left, top, min(left + wide, width), min(top + high, height))
    return encode_jpeg(resized(pixels, *fitted(wide, high, longest), box=box))


def _print(photograph: Photograph) -> Print:
    height, width = photograph.picture.pixels.shape[:2]
    return Print(encode_jpeg(limited(photograph.picture.pixels, 2 * SMALL_PX)), width, height)


def _slips(match: Match) -> list[Slip]:
    return [Slip(tone.hex, tone.share, colour_name(tone.hex), share_words(tone)) for tone in match.tones]


def _proposal(match: Match, suit: Suit, pictures: dict[str, bytes]) -> Proposal:
    score = _("{score} of 100").format(score=round(suit.score))
    swatches = tuple(_swatch(each) for each in suit.faces)
    named, words = title(suit.papers.title), unbroken(suit.words)
    if match.recipe is None or suit.colourway is None:
        return Proposal(named, score, words, swatches)
    drawn = _drawer(match.recipe, suit.colourway, pictures)
    return Proposal(named, score, words, swatches, drawn, spread_size(match.recipe))


def _drawer(recipe: Recipe, colourway: Colourway, pictures: dict[str, bytes]) -> Callable[[Canvas], None]:
    return lambda canvas: draw_spread(canvas, *_laid(recipe), colourway, pictures=pictures)


def _swatch(each: SuitingFace) -> Swatch:
    near = each.fit.nearest.hex if each.fit.likeness >= CLOSE else ""
    return Swatch(each.choice.face, each.choice.paper.core, face_title(each.choice), near)
