"""The picture that stands for a recipe where others link to it: the spread on a table, and its title.

1200 by 630 pixels, the proportion that most pages cut such pictures to; the title stays clear of its edges. Lengths are
ticks.
"""

from collections.abc import Sequence

from spreadwright.drawing import relief
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.contact.lines import SECOND
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.spread import draw_spread, spread_size
from spreadwright.drawing.theme import INK, TABLE
from spreadwright.drawing.type import Style, fitted, wrapped, write
from spreadwright.geometry import Rect, Size
from spreadwright.model import Colourway, Recipe
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlacedPiece

WIDTH_PX, HEIGHT_PX = 1200, 630
_PX = 128
"""Ticks to a pixel: the picture is 480 mm wide, the spread on it smaller than it is."""
_EDGE, _GAP = 56 * _PX, 44 * _PX
_HIGHEST = 400 * _PX
"""Of a double page, so that the title has room below it."""
_TITLE = Style(Typeface.TEXT, 60 * _PX, INK)
_BESIDE = Style(Typeface.TEXT, 66 * _PX, INK)
_ABOUT = Style(Typeface.SANS, 30 * _PX, SECOND)
_MOST_LINES = 4


def card_picture(
    recipe: Recipe,
    placed: Sequence[PlacedPiece],
    photos: Sequence[MattedPhoto],
    colourway: Colourway,
    about: str,
) -> Canvas:
    """A recipe as a card: a double page above its title, a single one beside it.

    Args:
        about: What stands small below the title.

    Raises:
        CannotDraw: The recipe does not say how large its pages are.
    """
    canvas = Canvas(Size(WIDTH_PX * _PX, HEIGHT_PX * _PX), title=recipe.title, description=about)
    whole = Rect.at(0, 0, canvas.size)
    relief.table(canvas, whole, TABLE)
    size = spread_size(recipe)
    is_wide = size.width > size.height * 3 // 2
    pages = _pages(size, whole, is_wide=is_wide)
    with canvas.group(at=(pages.left, pages.top), scale=pages.width / size.width):
        draw_spread(canvas, recipe, placed, photos, colourway)
    if is_wide:
        _write_below(canvas, recipe.title, about, pages)
    else:
        _write_beside(canvas, recipe.title, about, Rect(pages.right + _GAP, 0, whole.right - pages.right - 2 * _GAP, 0))
    return canvas


def _pages(size: Size, whole: Rect, *, is_wide: bool) -> Rect:
    """Where the spread lies, all of it in sight."""
    high, wide = (_HIGHEST, whole.width - 2 * _EDGE) if is_wide else (whole.height - 2 * _EDGE, whole.width // 2)
    width = min(wide, high * size.width // size.height)
    height = width * size.height // size.width
    left = (whole.width - width) // 2 if is_wide else _EDGE
    top = _EDGE if is_wide else (whole.height - height) // 2
    return Rect(left, top, width, height)


def _write_below(canvas: Canvas, title: str, about: str, pages: Rect) -> None:
    style = fitted(title, _TITLE, pages.width, least=_ABOUT.size)
    baseline = pages.bottom + (canvas.size.height - pages.bottom) // 2
    write(canvas, title, (pages.left, baseline), style)
    write(canvas, about, (pages.left, baseline + _ABOUT.size * 3 // 2), fitted(about, _ABOUT, pages.width))


def _write_beside(canvas: Canvas, title: str, about: str, room: Rect) -> None:
    lines = wrapped(title, _BESIDE, room.width)
    if len(lines) > _MOST_LINES:
        lines = (*lines[: _MOST_LINES - 1], f"{lines[_MOST_LINES - 1]} …")
    pitch = _BESIDE.size * 6 // 5
    baseline = (canvas.size.height - len(lines) * pitch) // 2 + _BESIDE.size * 3 // 4
    for line in lines:
        write(canvas, line, (room.left, baseline), fitted(line, _BESIDE, room.width))
        baseline += pitch
    write(canvas, about, (room.left, baseline), fitted(about, _ABOUT, room.width))
