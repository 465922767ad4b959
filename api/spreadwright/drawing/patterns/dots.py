"""Dots in a six-sided lattice; the inks take turns along each row."""

from spreadwright.drawing.canvas import Canvas, Paint
from spreadwright.drawing.path import Path
from spreadwright.drawing.patterns.ground import drawn_repeat, ground, inks
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Face

_LARGE, _SMALL = 0.36, 0.12
"""Diameters by the distance of two dots."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """Dots as far apart as the repeat; the last of three or more inks prints pin dots between them."""
    ground(canvas, face, area)
    repeat = drawn_repeat(face, area, finest=2 * MM, most=60_000)
    own = inks(face)
    turning, pins = (own[:-1], own[-1]) if len(own) > 2 else (own, "")
    for number, ink in enumerate(turning):
        _dots(canvas, _rows(area, repeat, number, len(turning)), len(turning) * repeat, round(repeat * _LARGE), ink)
    if pins:
        _dots(canvas, _rows(area, repeat, 0, 1, lower=True), repeat, round(repeat * _SMALL), pins)


def _rows(area: Rect, repeat: int, number: int, count: int, *, lower: bool = False) -> Path:
    """Lines through the middles of all dots of one ink, each starting on a dot; `lower` for those in the gaps."""
    step = round(repeat * 0.866)
    path = Path()
    for row in range(area.top // step - 1, area.bottom // step + 2):
        start = (row % 2) * repeat // 2 + ((number + row // 2) % count) * repeat
        start += (area.left - start) // (count * repeat) * count * repeat
        y = row * step + (step * 2 // 3 if lower else 0)
        path.move(start, y).line(area.right + repeat, y)
    return path


def _dots(canvas: Canvas, rows: Path, period: int, diameter: int, ink: str) -> None:
    canvas.path(rows, Paint(stroke=ink, width=diameter, dash=(0, period), is_round=True))
