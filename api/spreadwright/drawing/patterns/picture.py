"""A print as the maker's own paper has it: its picture, as wide as the repeat, laid side by side."""

from zlib import crc32

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns.ground import COMMON_SHEET, ground
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size
from spreadwright.model import Face, Swatch

_MOST = 1600
"""Pictures on one sheet: a repeat of 8 mm."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """The picture at real size, its first corner in that of the sheet; the ground alone where there is none."""
    ground(canvas, face, area)
    picture = face.picture
    if picture is None:
        return
    tile = _tile(picture, face.repeat, area)
    name = f"picture-{crc32(picture.data):08x}-{tile.width}"
    if not canvas.has_motif(name):
        with canvas.motif(name):
            canvas.image(_with_overlap(picture, tile), picture.data, picture.media_type)
    for row in range(area.top // tile.height, (area.bottom - 1) // tile.height + 1):
        for column in range(area.left // tile.width, (area.right - 1) // tile.width + 1):
            canvas.use(name, (column * tile.width, row * tile.height))


def _tile(picture: Swatch, repeat: int, area: Rect) -> Size:
    """One repeat, ticks: doubled until it is not too fine to be seen, nor too often on a sheet to be drawn."""
    width, height = max(area.width, COMMON_SHEET), max(area.height, COMMON_SHEET)
    across = max(repeat, MM)
    while True:
        down = max(across * picture.height // picture.width, MM)
        if (width // across + 1) * (height // down + 1) <= _MOST:
            return Size(across, down)
        across *= 2


def _with_overlap(picture: Swatch, tile: Size) -> Rect:
    across = tile.width * (picture.width + picture.overlap) // picture.width
    return Rect(0, 0, across, tile.height * (picture.height + picture.overlap) // picture.height)
