"""A face as pixels, for whatever measures colours: drawn as every picture draws it, at one scale for all papers."""

from functools import lru_cache
from typing import TYPE_CHECKING

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.drawing.raster import pixels
from spreadwright.drawing.svg import svg_bytes
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size
from spreadwright.model import Face

if TYPE_CHECKING:
    from numpy import uint8
    from numpy.typing import NDArray

PIXELS_PER_MM = 2
"""Half a millimetre is the finest that is told apart from where a page is looked at."""

_SMALLEST, _LARGEST = 60 * MM, 160 * MM


@lru_cache(maxsize=512)
def face_pixels(face: Face) -> "NDArray[uint8]":
    """Red, green and blue of whole repeats of a face, sRGB, rows from the top; not to be written to.

    At least 60 mm wide and high, `PIXELS_PER_MM` to the millimetre; 160 mm of a print that repeats later than that.

    Raises:
        CannotDraw: The renderer refused.
    """
    side = _side(face.repeat)
    canvas = Canvas(Size(side, side), title="")
    draw_face(canvas, face, Rect(0, 0, side, side))
    found = pixels(svg_bytes(canvas), round(side * PIXELS_PER_MM / MM))
    found.flags.writeable = False
    return found


def _side(repeat: int) -> int:
    """As many repeats as it takes to be large enough, ticks."""
    repeat = max(repeat, MM)
    return min(repeat * -(-_SMALLEST // repeat), _LARGEST)
