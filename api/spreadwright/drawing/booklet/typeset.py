"""Words and pictures as HTML, escaped by construction."""

import re
from base64 import b64encode
from copy import deepcopy
from xml.etree.ElementTree import Element, tostring

from markupsafe import Markup, escape

from spreadwright.drawing.booklet.press import family
from spreadwright.drawing.canvas import Canvas, Lettering, printable
from spreadwright.drawing.millimetres import mm

_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)"
_LENGTH = re.compile(rf"(?<![\w./,])(?:{_NUMBER} × )?{_NUMBER}(?: (?:in|cm|mm|m|ml|g/m²|%))?(?![\w/]|[.,]\d)")
_FRACTION = re.compile(r"(?<![\d/])\d+/\d+(?![\d/])")


def typeset(text: str) -> Markup:
    """Words with their lengths unbroken and fractions set as such; what is copied from them stays as it was.

    >>> print(typeset("3 1/2 × 5 in & up"))
    <span class="length">3 <span class="fraction">1/2</span> × 5 in</span> &amp; up
    """
    return Markup(_LENGTH.sub(_length, str(escape(printable(text)))))  # escaped before any tag is put in


def _length(match: re.Match[str]) -> str:
    if " " not in match[0] and "/" not in match[0]:
        return match[0]
    return f'<span class="length">{_FRACTION.sub(_fraction, match[0])}</span>'


def _fraction(match: re.Match[str]) -> str:
    return f'<span class="fraction">{match[0]}</span>'


def picture(canvas: Canvas, title: str, *, width: int = 0) -> Markup:
    """A picture for a page, its words repeated unseen where they stand, so that they can be found and marked.

    Args:
        canvas: The picture.
        title: What it shows, for people who cannot see it.
        width: Ticks; otherwise its own.
    """
    root = deepcopy(canvas.root)
    originals = dict(zip(canvas.root.iter(), root.iter(), strict=True))
    parents = {child: parent for parent in root.iter() for child in parent}
    for lettering in canvas.lettering:
        outlines = originals[lettering.outlines]
        parent = parents[outlines]
        parent.insert(list(parent).index(outlines) + 1, _unseen(lettering))
    data = b64encode(tostring(root, encoding="utf-8")).decode()
    wide = width or canvas.size.width
    size = f"width:{mm(wide)}mm;height:{mm(canvas.size.height * wide // canvas.size.width)}mm"
    return Markup('<img src="data:image/svg+xml;base64,{}" alt="{}" style="{}">').format(data, printable(title), size)


def _unseen(lettering: Lettering) -> Element:
    x, y = lettering.at
    held = {"x": mm(x), "y": mm(y), "font-size": mm(lettering.size), "font-family": family("sans"), "fill": "none"}
    element = Element("text", held)
    element.text = lettering.words
    return element
