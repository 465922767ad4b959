"""A canvas to SVG: as text that can lie in a page, or as the bytes of a file."""

import re
from collections.abc import Callable, Mapping
from copy import copy
from xml.etree.ElementTree import Element, tostring

from spreadwright.drawing.canvas import Canvas

_SIGNS = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})
_QUOTES = _SIGNS | str.maketrans({'"': "&quot;", "\r": "&#13;", "\n": "&#10;", "\t": "&#09;"})
_QUOTED = re.compile('[&<>"\r\n\t]')
"""Most values hold none of these, and looking for them takes a quarter of the time."""


def markup(canvas: Canvas) -> str:
    """The picture as one `<svg>` element, without an XML declaration."""
    return _text(canvas.root, canvas.ready)


def inline_markup(canvas: Canvas) -> str:
    """The picture as it lies in a page that says what it shows: browsers show a title to everybody who points."""
    root = copy(canvas.root)
    for part in [part for part in root if part.tag in ("title", "desc")]:
        root.remove(part)
    del root.attrib["aria-labelledby"]
    return _text(root, canvas.ready)


def _text(root: Element, ready: Mapping[Element, str]) -> str:
    if not ready:
        return tostring(root, encoding="unicode")
    parts: list[str] = []
    _write(root, ready, parts.append)
    return "".join(parts)


def _write(element: Element, ready: Mapping[Element, str], put: Callable[[str], None]) -> None:
    """As `tostring` writes it, and without writing again what is ready."""
    if element in ready:
        put(ready[element])
        return
    attributes = "".join([f' {name}="{_quoted(value)}"' for name, value in element.items()])
    if not len(element) and not element.text:
        put(f"<{element.tag}{attributes} />")
        return
    put(f"<{element.tag}{attributes}>{(element.text or '').translate(_SIGNS)}")
    for child in element:
        _write(child, ready, put)
    put(f"</{element.tag}>")


def _quoted(value: str) -> str:
    return value.translate(_QUOTES) if _QUOTED.search(value) else value


def svg_bytes(canvas: Canvas) -> bytes:
    """The picture as a file in UTF-8; the same canvas gives the same bytes."""
    return markup(canvas).encode() + b"\n"
