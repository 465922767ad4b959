"""A sheet as it lies in a picture, and the dimensions round it."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.cutting import told_rect
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.dimensions import Span, across, down, fits, gathered
from spreadwright.drawing.path import Point
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.lengths import FINEST, nearest, text
from spreadwright.model import Bench
from spreadwright.words import decimal

OVERALL = 13 * MM
"""How far from the sheet's edge the outer dimensions stand, ticks."""
_CHAIN = 6 * MM


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the sheet lies in the picture, and how much smaller it is drawn."""

    at: Point
    drawn: int
    real: int

    def rect(self, rect: Rect) -> Rect:
        """A place on the sheet, as drawn."""
        left, top = self._scaled(rect.left), self._scaled(rect.top)
        right, bottom = self._scaled(rect.right), self._scaled(rect.bottom)
        return Rect.between(self.at[0] + left, self.at[1] + top, self.at[0] + right, self.at[1] + bottom)

    def _scaled(self, length: int) -> int:
        return length * self.drawn // self.real


def dimensions(canvas: Canvas, frame: Frame, whole: Rect, rects: Sequence[Rect], bench: Bench) -> None:
    """Chains along the four edges of a sheet where they say something, and the whole outside them.

    Args:
        canvas: Where to draw.
        frame: Where the sheet lies there.
        whole: The sheet, ticks.
        rects: Its parts, ticks.
        bench: Its unit and the marks of its scale are those of every figure.
    """
    drawn = frame.rect(whole)
    top = _columns(frame, [r for r in rects if r.top == whole.top], bench)
    bottom = _columns(frame, [r for r in rects if r.bottom == whole.bottom], bench)
    left = _rows(frame, [r for r in rects if r.left == whole.left], bench)
    right = _rows(frame, [r for r in rects if r.right == whole.right], bench)
    if len(top) > 1 and fits(top):
        across(canvas, top, edge=drawn.top, line=drawn.top - _CHAIN)
    if len(bottom) > 1 and bottom != top and fits(bottom):
        across(canvas, bottom, edge=drawn.bottom, line=drawn.bottom + _CHAIN + MM)
    if len(left) > 1 and fits(left):
        down(canvas, left, edge=drawn.left, line=drawn.left - _CHAIN + MM)
    if len(right) > 1 and right != left and fits(right):
        down(canvas, right, edge=drawn.right, line=drawn.right + _CHAIN)
    across(canvas, _columns(frame, [whole], bench), edge=drawn.top, line=drawn.top - OVERALL)
    down(canvas, _rows(frame, [whole], bench), edge=drawn.left, line=drawn.left - OVERALL + MM)


def _columns(frame: Frame, rects: Sequence[Rect], bench: Bench) -> list[Span]:
    drawn = [(frame.rect(rect), told_rect(rect, bench.trimmer)) for rect in sorted(rects)]
    return gathered([Span(d.left, d.right, _figure(told.width, bench)) for d, told in drawn])


def _rows(frame: Frame, rects: Sequence[Rect], bench: Bench) -> list[Span]:
    drawn = [(frame.rect(r), told_rect(r, bench.trimmer)) for r in sorted(rects, key=lambda rect: rect.top)]
    return gathered([Span(d.top, d.bottom, _figure(told.height, bench)) for d, told in drawn])


def _figure(length: int, bench: Bench) -> str:
    """Without its unit, which a drawing names once."""
    return decimal(text(nearest(length, FINEST[bench.unit]), bench.unit))
