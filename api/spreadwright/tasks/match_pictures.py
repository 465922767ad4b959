"""Pictures of a match: colours beside the papers that suit them, and the spread with the photographs in it."""

from collections.abc import Callable

from spreadwright.colour.names import colour_name
from spreadwright.drawing import Canvas, draw_spread, spread_picture, spread_size, svg_bytes
from spreadwright.drawing.match import Print, Proposal, Slip, Swatch, match_picture
from spreadwright.drawing.theme import TABLE
from spreadwright.errors import CannotDraw
from spreadwright.images import encode_jpeg, fitted, limited, resized
from spreadwright.model import Colourway, Recipe, face_title
from spreadwright.tasks.layout import Layout, layout
from spreadwright.tasks.match import Match, Photograph, PhotographInMat
from spreadwright.tasks.suiting import CLOSE, Suit, SuitingFace, share_words
from spreadwright.words import gettext as _
from spreadwright.words import title, unbroken

LARGE_PX, SMALL_PX = 720, 260
"""The longest side of a photograph in the preview, and where it is small, pixels."""


def match_svg(match: Match) -> bytes:
    """The photographs, their colours, and the papers that suit them best."""
    pictures = _pictures(match, SMALL_PX)
    laid = layout(match.recipe) if match.recipe else None
    found = [_proposal(match, suit, laid, pictures) for suit in match.suits]
    heading = _("Colourways that suit them") if match.recipe else _("Paper sets that suit them")
    shown = _("Photos, the colours that they are made of, and the papers that suit them")
    prints = [_print(photograph) for photograph in match.photographs]
    return svg_bytes(match_picture(shown, heading, prints, _slips(match), found))


def match_preview_svg(match: Match, *, is_on_table: bool = True) -> bytes:
    """The spread in the colourway that suits best, with the photographs in their mats.

    Raises:
        CannotDraw: No recipe was named, or nothing suits it.
    """
    best = match.suits[0] if match.suits else None
    if match.recipe is None or best is None or best.colourway is None:
        raise CannotDraw("A preview without a recipe")
    return svg_bytes(
        spread_picture(
            match.recipe,
            *layout(match.recipe),
            best.colourway,
            papers=best.papers.title,
            surface=TABLE if is_on_table else "",
            pictures=_pictures(match, LARGE_PX),
        )
    )


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


def _proposal(match: Match, suit: Suit, laid: Layout | None, pictures: dict[str, bytes]) -> Proposal:
    score = _("{score} of 100").format(score=round(suit.score))
    swatches = tuple(_swatch(each) for each in suit.faces)
    named, words = title(suit.papers.title), unbroken(suit.words)
    if match.recipe is None or laid is None or suit.colourway is None:
        return Proposal(named, score, words, swatches)
    drawn = _drawer(match.recipe, laid, suit.colourway, pictures)
    return Proposal(named, score, words, swatches, drawn, spread_size(match.recipe))


def _drawer(recipe: Recipe, laid: Layout, colourway: Colourway, pictures: dict[str, bytes]) -> Callable[[Canvas], None]:
    return lambda canvas: draw_spread(canvas, recipe, *laid, colourway, pictures=pictures)


def _swatch(each: SuitingFace) -> Swatch:
    near = each.fit.nearest.hex if each.fit.likeness >= CLOSE else ""
    return Swatch(each.choice.face, each.choice.paper.core, face_title(each.choice), near)
