"""Other ways to keep the words of a finished picture than an outline for every letter, which is most of its weight.

`as_text` is for a picture that lies in a page: its words are set by the page, in the page's typefaces, which are the
same as ours. `with_letters_once` is for a file of its own, which has no typefaces: each letter is drawn once and shown
again. Both change the canvas that they are given, so it is drawn for that end.
"""

from collections.abc import Mapping
from functools import partial
from xml.etree.ElementTree import Element, SubElement

from spreadwright.drawing.canvas import Canvas, Lettering, printable
from spreadwright.drawing.fonts import UNITS_PER_EM, Typeface
from spreadwright.drawing.millimetres import mm
from spreadwright.drawing.theme import HAIRLINE, SMALL
from spreadwright.drawing.type import Style, letter, parts, spaced, width

_WEIGHTS = {Typeface.SANS_MEDIUM: "500", Typeface.SANS_BOLD: "700"}
_COMMON = {"fill": "none", "stroke-width": mm(HAIRLINE), "font-size": mm(SMALL)}
"""What most of a drawing shares, said once for all of it."""
_FRACTION = "fraction"
_TABULAR = "tabular"
"""The classes by which a page's style sheet knows what to set as a fraction, and which figures are equally wide."""


def as_text(canvas: Canvas, label: str = "") -> Canvas:
    """The same picture with its words as text; the page sets family, lining figures and the two classes.

    Each line says how far it runs, so that it keeps to its room in another typeface, too. A label takes the place of
    title and description: browsers show a title as a tip wherever the pointer rests.
    """
    if label:
        _label(canvas.root, label)
    for words in canvas.lettering:
        element = words.outlines
        held = {"x": mm(words.at[0]), "y": mm(words.at[1]), "font-size": mm(words.size)}
        run = sum(glyph.advance for glyph in words.glyphs) * words.size // UNITS_PER_EM
        held |= {"textLength": mm(run)} if len(words.words) > 1 else {}
        _become(element, "text", held | _setting(words, run))
        _say(element, words.words)
    canvas.root.attrib.update(_COMMON)
    for child in canvas.root:
        _inherit(child, _COMMON)
    return canvas


def _inherit(element: Element, known: Mapping[str, str]) -> None:
    """Leave out what an element has from those around it."""
    own = {name: element.attrib[name] for name in known if name in element.attrib}
    for name, value in own.items():
        if known[name] == value:
            del element.attrib[name]
    for child in element:
        _inherit(child, {**known, **own})


def with_letters_once(canvas: Canvas) -> Canvas:
    """The same picture with every letter kept once."""
    for words in canvas.lettering:
        element, pen = words.outlines, 0
        paint = {name: element.attrib[name] for name in ("fill", "opacity") if name in element.attrib}
        label = element.get("aria-label", "")
        _become(element, "g", {"aria-label": label, "role": "img"} | paint)
        for glyph in words.glyphs:
            path = letter(glyph, words.size)
            if path.data:
                key = (glyph.font.name if glyph.font else "", glyph.number, glyph.x, glyph.y, words.size)
                at = (words.at[0] + pen * words.size // UNITS_PER_EM, words.at[1])
                canvas.repeated(key, partial(canvas.shape, path), at=at, within=element)
            pen += glyph.advance
    return canvas


def _label(root: Element, label: str) -> None:
    for named in [*root.findall("title"), *root.findall("desc")]:
        root.remove(named)
    root.attrib.pop("aria-labelledby", None)
    root.set("aria-label", printable(label))


def _become(element: Element, tag: str, attributes: dict[str, str]) -> None:
    """Another element in the same place, painted alike."""
    kept = {name: value for name, value in element.items() if name in ("fill", "opacity")}
    element.tag = tag
    element.attrib.clear()
    element.attrib.update(attributes | kept)


def _setting(words: Lettering, run: int) -> dict[str, str]:
    """Weight, and whether figures are equally wide: then the words run otherwise than they would by themselves."""
    name = next((glyph.font.name for glyph in words.glyphs if glyph.font), Typeface.SANS.value)
    face = next((face for face in Typeface if name.startswith(face.value)), Typeface.SANS)
    held = {"font-weight": _WEIGHTS[face]} if face in _WEIGHTS else {}
    return held | ({"class": _TABULAR} if abs(width(words.words, Style(face, words.size)) - run) > 1 else {})


def _say(element: Element, words: str) -> None:
    """Words with their fractions in elements of their own."""
    last: Element | None = None
    for part, is_fraction in parts(spaced(words)):
        if is_fraction:
            last = SubElement(element, "tspan", {"class": _FRACTION})
            last.text = part
        elif last is None:
            element.text = part
        else:
            last.tail = part
