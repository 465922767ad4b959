"""The square code that leads from paper to an address."""

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.path import Path
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size

SIDE = 30 * MM
_QUIET = 4
"""Modules left free all round (ISO/IEC 18004)."""


def code_picture(address: str, title: str) -> Canvas:
    """The QR code of an address (ISO/IEC 18004; a seventh of it may be unreadable), 30 mm square or a little less."""
    import segno

    matrix = segno.make(address, error="m", micro=False, boost_error=False).matrix
    module = SIDE // (len(matrix) + 2 * _QUIET)
    side = module * (len(matrix) + 2 * _QUIET)
    canvas = Canvas(Size(side, side), title=title)
    canvas.rect(Rect(0, 0, side, side), filled(WHITE))
    path = Path()
    for y, row in enumerate(matrix, start=_QUIET):
        for x, is_dark in enumerate(row, start=_QUIET):
            if is_dark:
                path.rect(Rect(x * module, y * module, module, module))
    canvas.path(path, filled("#000000"))
    return canvas
