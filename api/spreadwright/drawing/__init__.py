"""Pictures of finished results; decides nothing."""

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.pixels import PIXELS_PER_MM, face_pixels
from spreadwright.drawing.raster import pdf, png
from spreadwright.drawing.spread import draw_spread, size_on_table, spread_picture, spread_size
from spreadwright.drawing.svg import markup, svg_bytes
from spreadwright.drawing.swatch import swatch_picture

__all__ = [
    "PIXELS_PER_MM",
    "Canvas",
    "draw_spread",
    "face_pixels",
    "markup",
    "pdf",
    "png",
    "size_on_table",
    "spread_picture",
    "spread_size",
    "svg_bytes",
    "swatch_picture",
]
