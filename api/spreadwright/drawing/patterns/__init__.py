"""Printed papers, one print a file, at real scale."""

from collections.abc import Callable

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import chevron, contour, dots, gingham, leaf, linen, stripe
from spreadwright.drawing.patterns.ground import ground
from spreadwright.geometry import Rect
from spreadwright.model import Face, Pattern

_PRINTS: dict[Pattern, Callable[[Canvas, Face, Rect], None]] = {
    Pattern.PLAIN: ground,
    Pattern.LINEN: linen.draw,
    Pattern.STRIPE: stripe.draw,
    Pattern.GINGHAM: gingham.draw,
    Pattern.DOTS: dots.draw,
    Pattern.CHEVRON: chevron.draw,
    Pattern.LEAF: leaf.draw,
    Pattern.CONTOUR: contour.draw,
}


def draw_face(canvas: Canvas, face: Face, area: Rect) -> None:
    """One part of a sheet's face, in the coordinates of the whole sheet, ticks from its top left corner.

    Some prints reach beyond `area`: clip them.
    """
    _PRINTS[face.pattern](canvas, face, area)
