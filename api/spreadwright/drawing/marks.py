"""The small signs of instructions: numbers of cuts, signs of piles, hatching. Nothing is told by colour alone."""

from collections.abc import Sequence

from spreadwright.drawing.canvas import Canvas, Paint, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.theme import ACCENT, HAIRLINE, INK, MM, SMALL, THIN
from spreadwright.drawing.type import Align, Style, write
from spreadwright.geometry import Rect, Size

WHITE = "#ffffff"
NUMBER_RADIUS = 5 * MM // 2
_NUMBER = Style(face=Typeface.SANS_BOLD, size=SMALL, colour=WHITE, is_tabular=True)
PILE, SMALL_PILE = Size(7 * MM, 4 * MM), Size(3 * MM, 2 * MM)
"""The sign of a pile, and the same on the smallest pieces."""


def cut_number(canvas: Canvas, number: int, middle: Point) -> None:
    """The number of a cut in a disc."""
    canvas.circle(middle, NUMBER_RADIUS + THIN, filled(WHITE))
    canvas.circle(middle, NUMBER_RADIUS, filled(ACCENT))
    write(canvas, str(number), (middle[0], middle[1] + SMALL * 32 // 100), _NUMBER, align=Align.MIDDLE)


def number_box(middle: Point) -> Rect:
    """What the number of a cut takes, ticks."""
    radius = NUMBER_RADIUS + THIN
    return Rect(middle[0] - radius, middle[1] - radius, 2 * radius, 2 * radius)


def pile_sign(canvas: Canvas, pages: Sequence[str], page: str, middle: Point, size: Size = PILE) -> None:
    """The spread in small, with the page of the pile filled."""
    total = size.width if len(pages) > 1 else size.width // 2
    wide = total // len(pages)
    for index, each in enumerate(pages):
        box = Rect(middle[0] - total // 2 + index * wide, middle[1] - size.height // 2, wide, size.height)
        canvas.rect(box, Paint(fill=INK if each == page else WHITE, stroke=INK, width=HAIRLINE))


def hatching(canvas: Canvas, rect: Rect, *, pitch: int = 3 * MM, colour: str = INK) -> None:
    """Fine lines from lower left to upper right: a part that is kept for later, or falls."""
    path = Path()
    for offset in range(pitch, rect.width + rect.height, pitch):
        start = (rect.left + max(0, offset - rect.height), rect.top + min(offset, rect.height))
        end = (rect.left + min(offset, rect.width), rect.top + max(0, offset - rect.width))
        path.move(*start).line(*end)
    canvas.path(path, stroked(colour, HAIRLINE, opacity=0.5))


def first_corner(canvas: Canvas, rect: Rect) -> None:
    """The mark of a sheet's top left corner, so that a turn is seen."""
    box = corner_box(rect)
    corner = Path().move(box.left, box.top).line(box.right, box.top).line(box.left, box.bottom).close()
    canvas.path(corner, filled(INK))


def corner_box(rect: Rect) -> Rect:
    """What the mark of the first corner takes, ticks."""
    return Rect(rect.left, rect.top, 4 * MM, 4 * MM)
