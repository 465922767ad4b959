"""A canvas to SVG: as text that can lie in a page, or as the bytes of a file."""

from xml.etree.ElementTree import tostring

from spreadwright.drawing.canvas import Canvas


def markup(canvas: Canvas) -> str:
    """The picture as one `<svg>` element, without an XML declaration."""
    return tostring(canvas.root, encoding="unicode")


def svg_bytes(canvas: Canvas) -> bytes:
    """The picture as a file in UTF-8; the same canvas gives the same bytes."""
    return markup(canvas).encode() + b"\n"
