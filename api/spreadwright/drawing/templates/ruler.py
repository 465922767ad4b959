"""A scale to lay a ruler on: 100 mm along its upper edge and 4 in along its lower one, from the same zero."""

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.theme import INK, LINE, MM, SMALL, THIN
from spreadwright.drawing.type import Align, Style, write
from spreadwright.lengths import TICKS, Unit

LONGEST_MM, LONGEST_IN = 100, 4
RULER_WIDTH, RULER_HEIGHT = 112 * MM, 14 * MM
"""What it takes with its figures, ticks; its zero lies 2 mm from the left, its line in the middle."""

_INCH = TICKS[Unit.INCH]
_FIGURES = Style(size=SMALL, is_tabular=True)
_LONG, _MIDDLE, _SHORT = 3 * MM, 2 * MM, MM


def ruler(canvas: Canvas, at: Point) -> None:
    """Draw the scale, its zero at a point."""
    x, y = at
    end = x + max(LONGEST_MM * MM, LONGEST_IN * _INCH)
    canvas.line((x, y), (end, y), stroked(INK, LINE))
    ticks = Path()
    for mark in range(LONGEST_MM + 1):
        ticks.move(x + mark * MM, y).line(x + mark * MM, y - _mark(mark % 10, mark % 5))
    for mark in range(LONGEST_IN * 8 + 1):
        ticks.move(x + mark * _INCH // 8, y).line(x + mark * _INCH // 8, y + _mark(mark % 8, mark % 4))
    canvas.path(ticks, stroked(INK, THIN))
    _figures(canvas, at)


def _figures(canvas: Canvas, at: Point) -> None:
    x, y = at
    for mark in range(0, LONGEST_MM + 1, 20):
        words = f"{mark} mm" if mark == LONGEST_MM else str(mark)
        write(canvas, words, (x + mark * MM, y - _LONG - MM), _FIGURES, align=Align.MIDDLE)
    for mark in range(LONGEST_IN + 1):
        words = f"{mark} in" if mark == LONGEST_IN else str(mark)
        write(canvas, words, (x + mark * _INCH, y + _LONG + 3 * MM), _FIGURES, align=Align.MIDDLE)


def _mark(from_long: int, from_middle: int) -> int:
    if not from_long:
        return _LONG
    return _SHORT if from_middle else _MIDDLE
