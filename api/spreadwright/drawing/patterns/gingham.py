"""Gingham: equal bands both ways, darkest where they cross, woven."""

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns.ground import bands, drawn_repeat, ground, inks
from spreadwright.drawing.patterns.linen import weave
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Face

_ONE_WAY = 0.56
"""One layer of thread; two of them cover four fifths."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """A check of half the repeat; a second ink draws a fine line through each band, further ones take turns."""
    ground(canvas, face, area)
    repeat = drawn_repeat(face, area, finest=MM, most=10**6)
    own = inks(face)
    for axis, ink in ((Axis.ROWS, own[0]), (Axis.COLUMNS, own[0])):
        bands(canvas, area, axis, start=0, width=repeat // 2, period=repeat, colour=ink, opacity=_ONE_WAY)
    for number, ink in enumerate(own[1:]):
        _overcheck(canvas, area, repeat, number, ink)
    weave(canvas, face.colours[0], area, strength=0.8)


def _overcheck(canvas: Canvas, area: Rect, repeat: int, number: int, ink: str) -> None:
    line = max(repeat // 22, MM // 8)
    middle = repeat * 3 // 4 if number % 2 == 0 else repeat // 4
    shift = (number // 2) * line * 3
    for axis in (Axis.ROWS, Axis.COLUMNS):
        start = middle - line // 2 + shift
        bands(canvas, area, axis, start=start, width=line, period=repeat, colour=ink, opacity=0.8)
