"""Pictures of finished results; decides nothing."""

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.raster import pdf, png
from spreadwright.drawing.spread import spread_picture
from spreadwright.drawing.svg import markup, svg_bytes
from spreadwright.drawing.swatch import swatch_picture

__all__ = ["Canvas", "markup", "pdf", "png", "spread_picture", "svg_bytes", "swatch_picture"]
