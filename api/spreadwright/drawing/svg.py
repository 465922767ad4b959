"""A canvas to SVG: as text that can lie in a page, or as the bytes of a file."""

from collections.abc import Iterator, Mapping
from xml.etree.ElementTree import Element, tostring

from spreadwright.drawing.canvas import Canvas

_SIGNS = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})
_QUOTED = _SIGNS | str.maketrans({'"': "&quot;", "\r": "&#13;", "\n": "&#10;", "\t": "&#09;"})


def markup(canvas: Canvas) -> str:
    """The picture as one `<svg>` element, without an XML declaration."""
    if not canvas.ready:
        return tostring(canvas.root, encoding="unicode")
    return "".join(_written(canvas.root, canvas.ready))


def _written(element: Element, ready: Mapping[Element, str]) -> Iterator[str]:
    """As `tostring` writes it, and without writing again what is ready."""
    if element in ready:
        yield ready[element]
        return
    attributes = "".join([f' {name}="{value.translate(_QUOTED)}"' for name, value in element.items()])
    if not len(element) and not element.text:
        yield f"<{element.tag}{attributes} />"
        return
    yield f"<{element.tag}{attributes}>{(element.text or '').translate(_SIGNS)}"
    for child in element:
        yield from _written(child, ready)
    yield f"</{element.tag}>"


def svg_bytes(canvas: Canvas) -> bytes:
    """The picture as a file in UTF-8; the same canvas gives the same bytes."""
    return markup(canvas).encode() + b"\n"
