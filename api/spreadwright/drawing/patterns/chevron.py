"""Chevrons: zigzag lines with clean mitres, a wide and a narrow one in turn."""

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.patterns.ground import drawn_repeat, ground, inks
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Face

_MOST = 9000
_RHYTHMS: dict[int, tuple[tuple[float, float, int], ...]] = {
    1: ((0.0, 0.34, 0), (0.5, 0.07, 0)),
    2: ((0.0, 0.34, 0), (0.5, 0.10, 1)),
    3: ((0.0, 0.34, 0), (0.36, 0.07, 2), (0.64, 0.16, 1)),
}
"""Offset and width by the repeat, and the number of the ink, for so many inks."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """Rows one repeat apart that point up the sheet."""
    ground(canvas, face, area)
    repeat = drawn_repeat(face, area, finest=2 * MM, most=_MOST)
    own = inks(face)
    rhythm = _RHYTHMS.get(len(own)) or tuple((i / len(own), 0.62 / len(own), i) for i in range(len(own)))
    for offset, width, ink in rhythm:
        rows = _rows(area, repeat, round(offset * repeat))
        canvas.path(rows, stroked(own[ink], round(width * repeat * 0.78)))  # upright width to width across the line


def _rows(area: Rect, repeat: int, offset: int) -> Path:
    half, rise = repeat * 5 // 8, repeat // 2
    path = Path()
    first, last = area.left // half - 1, area.right // half + 2
    for row in range(area.top // repeat - 1, area.bottom // repeat + 2):
        y = row * repeat + offset
        path.lines((column * half, y + (rise if column % 2 else 0)) for column in range(first, last + 1))
    return path
