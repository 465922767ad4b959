"""A picture as the operators of PDF (ISO 32000): its lines as lines, its words as words of the shipped fonts.

Ten times as fast as handing SVG to the library that sets the pages, and words can be found, marked and read aloud.
Lengths are millimetres, y runs downward, as in the picture.
"""

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import groupby
from math import cos, radians, sin
from typing import Protocol
from xml.etree.ElementTree import Element

from spreadwright.drawing.canvas import Canvas, Lettering
from spreadwright.drawing.fonts import Font, Glyph
from spreadwright.drawing.millimetres import mm

_UNSEEN = frozenset({"svg", "title", "desc", "defs", "clipPath", "linearGradient", "stop"})
_PLAIN = _UNSEEN | {"g", "use", "rect", "line", "circle", "path"}
_ADDRESS = "url(#"
_ROUND = 0.5523
"""A quarter of a circle as one curve."""
_STEP = re.compile(r"[Mmhvlqcz]|-?\d*\.?\d+")
_MOVE = re.compile(r"(translate|rotate|scale)\(([^)]*)\)")
_TAKES = {"M": 2, "m": 2, "h": 1, "v": 1, "l": 2, "q": 4, "c": 6, "z": 0}


Matrix = tuple[float, float, float, float, float, float]
"""As SVG and PDF have it."""


class Pen(Protocol):
    """Who writes the operators down."""

    def say(self, words: str) -> None:
        """Write operators."""

    def begin(self) -> None:
        """What follows, up to `end`, lies together."""

    def move(self, matrix: Matrix) -> None:
        """What follows, up to `end`, is moved, turned and scaled."""

    def end(self) -> None:
        """Back to what was before `begin`."""

    def fade(self, opacity: float) -> None:
        """What follows is drawn with this opacity, 0 to 1."""

    def shade(self, shape: Element, gradient: Element) -> None:
        """Draw a shape that is filled with a gradient."""

    def name(self, font: Font, glyphs: Sequence[Glyph]) -> str:
        """What the file calls a font, of which it keeps these glyphs."""


def is_plain(canvas: Canvas) -> bool:
    """Whether a picture consists of what can be drawn here; photographs, and groups that fade or paint, cannot."""
    return all(
        element.tag in _PLAIN
        and (element.tag not in ("g", "use") or not any(element.get(key) for key in ("opacity", "fill", "stroke")))
        for element in canvas.root.iter()
    )


def ink(canvas: Canvas, pen: Pen) -> None:
    """Draw a plain picture, in its own coordinates."""
    _Drawing(canvas, pen).children(canvas.root)


class _Drawing:
    """One picture on its way to a pen."""

    def __init__(self, canvas: Canvas, pen: Pen) -> None:
        self._pen = pen
        self._words: dict[Element, Lettering] = {each.outlines: each for each in canvas.lettering}
        self._named = {each.get("id", ""): each for each in canvas.root.iter() if each.get("id")}

    def children(self, parent: Element) -> None:
        for element in parent:
            if element.tag in ("g", "use"):
                self._group(element)
            elif element.get("fill", "").startswith(_ADDRESS):
                self._pen.shade(element, self._at(element.get("fill", "")))
            elif element in self._words and _is_known(self._words[element]):
                self._write(element, self._words[element])
            elif element.tag in _SHAPES:
                self._shape(element)

    def _group(self, element: Element) -> None:
        self._pen.begin()
        for matrix in _moves(element.get("transform", "")):
            self._pen.move(matrix)
        clip = element.get("clip-path")
        if clip is not None:
            self._pen.say(f"{_rect(self._at(clip)[0])} W n")
        motif = element.get("href")
        self.children(element if motif is None else self._named[motif.removeprefix("#")])
        self._pen.end()

    def _at(self, address: str) -> Element:
        """What `url(#name)` leads to."""
        return self._named[address.removeprefix(_ADDRESS).removesuffix(")")]

    def _shape(self, element: Element) -> None:
        opacity = element.get("opacity")
        if opacity is None:
            self._pen.say(f"q {_painted(element)} Q")
            return
        self._pen.begin()
        self._pen.fade(float(opacity))
        self._pen.say(_painted(element))
        self._pen.end()

    def _write(self, element: Element, lettering: Lettering) -> None:
        """Glyph by glyph, each where the picture has it; a space parts them from the words that follow elsewhere."""
        x, y, size = mm(lettering.at[0]), mm(lettering.at[1]), mm(lettering.size)
        self._pen.say(f"q {_colour(element.get('fill', ''))} rg BT 1 0 0 -1 {x} {y} Tm")
        for font, run in groupby((*lettering.glyphs, *_space(lettering.glyphs)), key=lambda glyph: glyph.font):
            glyphs = list(run)
            if font is not None:
                self._pen.say(f"/{self._pen.name(font, glyphs)} {size} Tf [{_shown(font, glyphs)}] TJ")
        self._pen.say("ET Q")


def _painted(element: Element) -> str:
    """A shape with its fill and its edge."""
    is_filled, is_stroked = element.get("fill") != "none", element.get("stroke") is not None
    fill = f"{_colour(element.get('fill', ''))} rg " if is_filled else ""
    stroke = f"{_stroke(element)} " if is_stroked else ""
    paint = {(True, True): "B", (True, False): "f", (False, True): "S"}.get((is_filled, is_stroked), "n")
    return f"{fill}{stroke}{_SHAPES[element.tag](element)} {paint}"


def _is_known(lettering: Lettering) -> bool:
    """Whether the fonts have every character, each on the line."""
    return all(glyph.font is not None and not glyph.y for glyph in lettering.glyphs)


def _space(glyphs: Sequence[Glyph]) -> tuple[Glyph, ...]:
    font = glyphs[-1].font if glyphs else None
    number = font.glyph(" ") if font else None
    return (Glyph(font, number, 0, 0, font.advance(number), " "),) if font and number else ()


def _shown(font: Font, glyphs: Sequence[Glyph]) -> str:
    """Glyphs in hexadecimal with what each runs less than the font says, thousandths of the size."""
    shown = ""
    for glyph in glyphs:
        less = font.advance(glyph.number) + glyph.x - glyph.advance
        shown += f"{-glyph.x}" if glyph.x else ""
        shown += f"<{glyph.number:04x}>" + (f"{less}" if less else "")
    return shown.replace("><", "")


@lru_cache(maxsize=1024)
def _colour(written: str) -> str:
    """#rrggbb as three shares of one."""
    return " ".join(f"{int(written[at : at + 2], 16) / 255:.4g}" for at in (1, 3, 5))


def _stroke(element: Element) -> str:
    said = f"{_colour(element.get('stroke', ''))} RG {element.get('stroke-width')} w"
    if element.get("stroke-linecap") == "round":
        said += " 1 J 1 j"
    dash = element.get("stroke-dasharray")
    if dash is not None:
        said += f" [{dash}] {element.get('stroke-dashoffset', '0')} d"
    return said


def _moves(transform: str) -> Iterator[Matrix]:
    for verb, held in _MOVE.findall(transform):
        values = [float(each) for each in held.split()]
        if verb == "translate":
            yield 1, 0, 0, 1, values[0], values[1]
        elif verb == "scale":
            yield values[0], 0, 0, values[0], 0, 0
        else:
            a, b = round(cos(radians(values[0])), 6), round(sin(radians(values[0])), 6)
            yield a, b, -b, a, 0, 0


@lru_cache(maxsize=65536)
def _short(value: float) -> str:
    """At most six decimals."""
    return f"{round(value, 6) + 0:.6f}".rstrip("0").rstrip(".")  # + 0: no -0


def _rect(element: Element) -> str:
    x, y, wide, high = (element.get(key, "0") for key in ("x", "y", "width", "height"))
    radius = element.get("rx")
    if radius is None:
        return f"{x} {y} {wide} {high} re"
    return _rounded(float(x), float(y), float(wide), float(high), float(radius))


def _rounded(x: float, y: float, wide: float, high: float, radius: float) -> str:
    r = min(radius, wide / 2, high / 2)
    k, right, low = r * (1 - _ROUND), x + wide, y + high
    steps = (
        ((x + r, y), "m"),
        ((right - r, y), "l"),
        ((right - k, y, right, y + k, right, y + r), "c"),
        ((right, low - r), "l"),
        ((right, low - k, right - k, low, right - r, low), "c"),
        ((x + r, low), "l"),
        ((x + k, low, x, low - k, x, low - r), "c"),
        ((x, y + r), "l"),
        ((x, y + k, x + k, y, x + r, y), "c"),
    )
    return " ".join(f"{_numbers(values)} {verb}" for values, verb in steps) + " h"


def _line(element: Element) -> str:
    return "{x1} {y1} m {x2} {y2} l".format(**{key: element.get(key, "0") for key in ("x1", "y1", "x2", "y2")})


def _circle(element: Element) -> str:
    x, y, r = (float(element.get(key, "0")) for key in ("cx", "cy", "r"))
    return _rounded(x - r, y - r, 2 * r, 2 * r, r)


def _path(element: Element) -> str:
    """An outline of relative steps as one of absolute points."""
    said, here, start = [], (0.0, 0.0), (0.0, 0.0)
    for verb, values in _steps(element.get("d", "")):
        if verb == "z":
            here = start
            said.append("h")
            continue
        points = _points(verb, values, here)
        if verb == "q":
            points = _as_cubic(here, points)
        here = points[-1]
        start = here if verb in "Mm" else start
        said.append(f"{_numbers([v for point in points for v in point])} {_VERBS[verb]}")
    return " ".join(said)


_VERBS = {"M": "m", "m": "m", "h": "l", "v": "l", "l": "l", "q": "c", "c": "c"}


def _steps(data: str) -> Iterator[tuple[str, list[float]]]:
    found = iter(_STEP.findall(data))
    for verb in found:
        yield verb, [float(next(found)) for _ in range(_TAKES[verb])]


_Point = tuple[float, float]


def _points(verb: str, values: Sequence[float], here: _Point) -> list[_Point]:
    if verb == "M":
        return [(values[0], values[1])]
    if verb in "hv":
        return [(here[0] + values[0], here[1])] if verb == "h" else [(here[0], here[1] + values[0])]
    pairs = zip(values[::2], values[1::2], strict=True)
    return [(here[0] + x, here[1] + y) for x, y in pairs]


def _as_cubic(here: _Point, points: Sequence[_Point]) -> list[_Point]:
    """The same curve with two control points."""
    (x1, y1), (x, y) = points
    first = (here[0] + (x1 - here[0]) * 2 / 3, here[1] + (y1 - here[1]) * 2 / 3)
    second = (x + (x1 - x) * 2 / 3, y + (y1 - y) * 2 / 3)
    return [first, second, (x, y)]


def _numbers(values: Sequence[float]) -> str:
    return " ".join(_short(round(value, 3)) for value in values)


_SHAPES = {"rect": _rect, "line": _line, "circle": _circle, "path": _path}
