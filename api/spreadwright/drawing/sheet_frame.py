"""A sheet as it lies in a picture, and the dimensions round it."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.dimensions import Span, across, down, fits
from spreadwright.drawing.path import Point
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.lengths import Unit, text
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


def dimensions(canvas: Canvas, frame: Frame, whole: Rect, rects: Sequence[Rect], unit: Unit) -> None:
    """Chains along the four edges of a sheet where they say something, and the whole outside them.

    Args:
        canvas: Where to draw.
        frame: Where the sheet lies there.
        whole: The sheet, ticks.
        rects: Its parts, ticks.
        unit: Of every figure.
    """
    drawn = frame.rect(whole)
    top = _columns(frame, [r for r in rects if r.top == whole.top], unit)
    bottom = _columns(frame, [r for r in rects if r.bottom == whole.bottom], unit)
    left = _rows(frame, [r for r in rects if r.left == whole.left], unit)
    right = _rows(frame, [r for r in rects if r.right == whole.right], unit)
    if len(top) > 1 and fits(top):
        across(canvas, top, edge=drawn.top, line=drawn.top - _CHAIN)
    if len(bottom) > 1 and bottom != top and fits(bottom):
        across(canvas, bottom, edge=drawn.bottom, line=drawn.bottom + _CHAIN + MM)
    if len(left) > 1 and fits(left):
        down(canvas, left, edge=drawn.left, line=drawn.left - _CHAIN + MM)
    if len(right) > 1 and right != left and fits(right):
        down(canvas, right, edge=drawn.right, line=drawn.right + _CHAIN)
    across(canvas, _columns(frame, [whole], unit), edge=drawn.top, line=drawn.top - OVERALL)
    down(canvas, _rows(frame, [whole], unit), edge=drawn.left, line=drawn.left - OVERALL + MM)


def _columns(frame: Frame, rects: Sequence[Rect], unit: Unit) -> list[Span]:
    drawn = [(frame.rect(rect), rect) for rect in sorted(rects)]
    return [Span(d.left, d.right, decimal(text(rect.width, unit))) for d, rect in drawn]


def _rows(frame: Frame, rects: Sequence[Rect], unit: Unit) -> list[Span]:
    drawn = [(frame.rect(rect), rect) for rect in sorted(rects, key=lambda rect: rect.top)]
    return [Span(d.top, d.bottom, decimal(text(rect.height, unit))) for d, rect in drawn]
