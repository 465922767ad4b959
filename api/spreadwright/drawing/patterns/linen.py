"""Linen: threads pressed into the paper, felt before they are seen."""

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns.ground import ground, threads
from spreadwright.drawing.theme import MM
from spreadwright.drawing.tint import lightness
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Face

_WARP = tuple(round(MM * share) for share in (0.20, 0.34, 0.26, 0.30, 0.16, 0.42, 0.30, 0.28, 0.22, 0.52))
_WEFT = tuple(round(MM * share) for share in (0.24, 0.30, 0.18, 0.44, 0.28, 0.26, 0.20, 0.36))
_SLUBS = tuple(round(MM * share) for share in (0.3, 3.3, 0.25, 5.9, 0.35, 2.1, 0.2, 7.7))
"""Thread and gap in turn, ticks. No two sums agree, so the weave never shows a rhythm of its own."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """A plain colour with a woven surface."""
    ground(canvas, face, area)
    weave(canvas, face.colours[0], area)


def weave(canvas: Canvas, colour: str, area: Rect, strength: float = 1) -> None:
    """The threads alone, for a surface of about that colour."""
    light = lightness(colour)
    shade, thread, slub = "#2a1d10", 0.10 - 0.05 * light, 0.065 * light**3  # pale threads would glare on dark paper
    for axis, dash, low, high in (
        (Axis.COLUMNS, _WARP, area.left, area.right),
        (Axis.ROWS, _WEFT, area.top, area.bottom),
    ):
        threads(canvas, area, axis, _anchor(low, dash), high, dash, shade, thread * strength)
        threads(canvas, area, axis, _anchor(low, _SLUBS), high, _SLUBS, "#ffffff", slub * strength)


def _anchor(low: int, dash: tuple[int, ...]) -> int:
    return low // sum(dash) * sum(dash)
