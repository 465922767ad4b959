"""Printed papers, one print a file, at real scale; over it the surface.

A repeat too fine to be seen is drawn coarser than it is, and so is one that would fill a sheet with too many motifs:
a repeat of 0.1 mm gives a print, but not that one. See `ground.drawn_repeat`.
"""

from collections.abc import Callable

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import chevron, contour, dots, gingham, leaf, linen, picture, stripe
from spreadwright.drawing.patterns.ground import ground
from spreadwright.drawing.patterns.texture import draw_texture
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
    Pattern.PICTURE: picture.draw,
}


def draw_face(canvas: Canvas, face: Face, area: Rect) -> None:
    """One part of a sheet's face, in the coordinates of the whole sheet, ticks from its top left corner.

    Some prints reach beyond `area`: clip them.
    """
    _PRINTS[face.pattern](canvas, face, area)
    draw_texture(canvas, face, area)
