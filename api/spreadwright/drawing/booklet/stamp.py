"""Plain pictures in the pages of the library that sets them: it asks for their size and where to draw, `ink` draws.

What this module knows of the library is no promise of it, so its version is bounded in pyproject.toml.
"""

from collections.abc import Mapping, Sequence
from math import inf
from typing import Any
from xml.etree.ElementTree import Element, SubElement

from spreadwright.drawing.booklet.families import styled
from spreadwright.drawing.booklet.ink import Matrix, ink, is_plain
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.fonts import Font, Glyph
from spreadwright.drawing.theme import points

_PX = points(0.75)
"""A pixel of CSS, ticks."""
_ANY_SIZE = 1000
"""As large as it is drawn, so nothing is scaled; a shape may lie beyond it."""
_NO_CHARACTER = "\u200d"
"""What a glyph stands for that only adds to the one before it."""


class Stamps:
    """The plain pictures of a document, as the library's cache of pictures holds them."""

    def __init__(self, pictures: Mapping[str, Canvas], known: Any) -> None:
        names = _Names(known)
        self.by_address = {address: _Stamp(canvas, names) for address, canvas in pictures.items() if is_plain(canvas)}


class _Stamp:
    """One picture, as the library asks for it."""

    def __init__(self, canvas: Canvas, names: "_Names") -> None:
        self._canvas, self._names = canvas, names

    def get_intrinsic_size(self, _resolution: float, _font_size: float) -> tuple[float, float, float]:
        """Width and height in pixels of CSS, and their ratio."""
        size = self._canvas.size
        return size.width / _PX, size.height / _PX, size.width / size.height

    def draw(self, stream: Any, wide: float, high: float, _style: Any) -> None:
        """Draw the picture as large as it is laid out, pixels of CSS."""
        left, top, across, down = (float(each) for each in self._canvas.root.get("viewBox", "").split())
        scale_x, scale_y = wide / across, high / down
        stream.transform(a=scale_x, d=scale_y, e=-left * scale_x, f=-top * scale_y)
        ink(self._canvas, _StreamPen(stream, self._names))


class _StreamPen:
    """Writes operators into a page of the library."""

    def __init__(self, stream: Any, names: "_Names") -> None:
        self._stream, self._names = stream, names

    def say(self, words: str) -> None:
        """Write operators."""
        self._stream.stream.append(words.encode("ascii"))

    def begin(self) -> None:
        """What follows, up to `end`, lies together."""
        self._stream.push_state()

    def move(self, matrix: Matrix) -> None:
        """Move, turn and scale what follows; the library keeps account of it, for gradients."""
        self._stream.transform(*matrix)

    def end(self) -> None:
        """Back to what was before `begin`."""
        self._stream.pop_state()

    def fade(self, opacity: float) -> None:
        """Draw what follows with an opacity, 0 to 1."""
        self._stream.set_alpha(opacity, stroke=True, fill=True)

    def shade(self, shape: Element, gradient: Element) -> None:
        """Leave a shape that is filled with a gradient to the library: an SVG of its own, in the same coordinates."""
        from weasyprint.svg import SVG

        root = Element("svg", {"viewBox": f"0 0 {_ANY_SIZE} {_ANY_SIZE}"})
        SubElement(root, "defs").append(gradient)
        root.append(shape)
        with self._stream.stacked():
            SVG(root, "", self._names.known).draw(self._stream, _ANY_SIZE, _ANY_SIZE, "", None)

    def name(self, font: Font, glyphs: Sequence[Glyph]) -> str:
        """The name of a font in the file."""
        return self._names.name(font, glyphs, self._stream)


class _Names:
    """What a file calls the shipped fonts: each is asked of the library once."""

    def __init__(self, known: Any) -> None:
        self.known = known
        self._fonts: dict[str, Any] = {}

    def name(self, font: Font, glyphs: Sequence[Glyph], stream: Any) -> str:
        """The name of a font, which then keeps these glyphs and what they stand for."""
        if font.name not in self._fonts:
            self._fonts[font.name], _ = stream.add_font(self._found(font, glyphs[0]))
        held = self._fonts[font.name]
        for glyph in glyphs:
            held.to_unicode.setdefault(glyph.number, glyph.words or _NO_CHARACTER)
            held.widths.setdefault(glyph.number, font.advance(glyph.number))
        return str(held.hash)

    def _found(self, font: Font, glyph: Glyph) -> Any:
        """The font as the library has it, found by setting one of its characters."""
        from weasyprint.css.properties import INITIAL_VALUES
        from weasyprint.text.line_break import split_first_line

        style = _Style(INITIAL_VALUES, font_config=self.known, **styled(font.name))
        layout = split_first_line(glyph.words, style, None, inf, 0)[0]
        layout.reactivate(style)
        line, _ = layout.get_first_line()
        return line.runs[0].data.item.analysis.font


class _Style(dict[str, Any]):
    """The properties of CSS that the library reads, with the fonts that it knows."""

    def __init__(self, initial: Mapping[str, Any], *, font_config: Any, **own: Any) -> None:
        super().__init__({**initial, **own})
        self.font_config = font_config
