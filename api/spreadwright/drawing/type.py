"""Words as outlines of the shipped fonts: a picture is the same on a machine without fonts. Lengths are ticks.

Kerning and lining figures always; `1/2` is set as a fraction, with a thin space before it and before a unit.
"""

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache, partial

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.fonts import UNITS_PER_EM, Font, Glyph, Typeface, fonts
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.theme import BODY, INK

_THIN_SPACE = "\u2009"
_NARROW_SPACE = "\u202f"
"""The unbroken space of French before ; ! ? and inside « »; no font has it."""
_WORD = re.compile(r"[^ \t\n]+")
"""Words as lines may break between them: an unbroken space is none of the breaks."""
_FRACTION = re.compile(r"(?<![\d/])\d+/\d+(?![\d/])")
_BEFORE_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d+(?![\d/]))")
_BEFORE_UNIT = re.compile(r"(?<=\d) (?=(?:in|mm|cm|pt|g/m²|dpi|%)(?!\w))")
_THIN_ADVANCE = 140
"""The fonts' own thin space is too thin before a unit; font units."""
_MISSING_WIDTH, _MISSING_HEIGHT, _MISSING_EDGE = 520, 620, 50
"""A character that no font has: an upright box, font units."""


class Align(StrEnum):
    """Which part of the words stands at the point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True)
class Style:
    """How words are set; `size` in ticks, see `theme.SIZES`.

    Attributes:
        is_tabular: All figures equally wide, for columns of numbers.
    """

    face: Typeface = Typeface.SANS
    size: int = BODY
    colour: str = INK
    is_tabular: bool = False


def width(text: str, style: Style) -> int:
    """How far the words run, ticks."""
    return _units(sum(glyph.advance for glyph in _glyphs(text, style.face, style.is_tabular)), style.size)


def write(
    canvas: Canvas, text: str, at: Point, style: Style, *, align: Align = Align.START, turned_deg: float = 0
) -> None:
    """Set one line of words on a canvas.

    Args:
        at: On the baseline, ticks.
        turned_deg: Turn to the right about that point; -90 reads from the right.
    """
    if turned_deg:
        with canvas.group(at=at, turned_deg=turned_deg):
            write(canvas, text, (0, 0), style, align=align)
        return
    start = (at[0] - _share(width(text, style), align), at[1])
    glyphs = _glyphs(text, style.face, style.is_tabular)
    path, paint = outline(text, start, style), filled(style.colour)
    canvas.words(path, paint, text.strip(), at=start, size=style.size, glyphs=glyphs)


def write_repeated(canvas: Canvas, text: str, at: Point, style: Style, *, align: Align = Align.START) -> None:
    """As `write`, each letter kept once: for pages of words, which would be mostly outlines of the same letters."""
    start, pen = (at[0] - _share(width(text, style), align), at[1]), 0
    with canvas.group(at=start, label=text.strip()):
        for glyph in _glyphs(text, style.face, style.is_tabular):
            path = letter(glyph, style.size)
            if path.data:
                name = glyph.font.name if glyph.font else ""
                key = (name, glyph.number, glyph.x, glyph.y, style.size, style.colour)
                canvas.repeated(key, partial(canvas.path, path, filled(style.colour)), at=(_units(pen, style.size), 0))
            pen += glyph.advance


@lru_cache(maxsize=2048)
def letter(glyph: Glyph, size: int) -> Path:
    """The outline of one letter that starts where both coordinates are nought."""
    path = Path(places=2)
    _draw(path, glyph, size)
    return path


def outline(text: str, at: Point, style: Style, *, align: Align = Align.START) -> Path:
    """The outlines of one line of words, as one path."""
    left = at[0] - _share(width(text, style), align)
    return _outlined(text, style).moved(left, at[1])


@lru_cache(maxsize=4096)
def _outlined(text: str, style: Style) -> Path:
    """The outlines of words that start where both coordinates are nought."""
    path, pen = Path(places=2), 0
    for glyph in _glyphs(text, style.face, style.is_tabular):
        path.add(letter(glyph, style.size), _units(pen, style.size), 0)
        pen += glyph.advance
    return path


def wrapped(text: str, style: Style, measure: int) -> tuple[str, ...]:
    """The words broken into lines that run no further than `measure`, ticks; a longer word stands alone."""
    lines: list[str] = []
    for word in _WORD.findall(text):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, style) <= measure:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def fitted(text: str, style: Style, measure: int, *, least: int = 1) -> Style:
    """The style, so much smaller that the words run no further than `measure`; never smaller than `least`, ticks."""
    return replace(style, size=max(least, min(style.size, style.size * measure // max(1, width(text, style)))))


def spaced(text: str) -> str:
    """The text with thin spaces before fractions and units.

    >>> spaced("11 1/2 in").replace("\u2009", "|")
    '11|1/2|in'
    """
    text = _BEFORE_FRACTION.sub(_THIN_SPACE, unicodedata.normalize("NFC", text).replace(_NARROW_SPACE, _THIN_SPACE))
    return _BEFORE_UNIT.sub(_THIN_SPACE, text)


def _share(total: int, align: Align) -> int:
    return {Align.START: 0, Align.MIDDLE: total // 2, Align.END: total}[align]


def _units(value: float, size: int) -> int:
    return round(value * size / UNITS_PER_EM)


@lru_cache(maxsize=4096)
def _glyphs(text: str, face: Typeface, is_tabular: bool) -> tuple[Glyph, ...]:
    features = {"kern": True, "lnum": True, "tnum": is_tabular}
    return tuple(
        glyph
        for words, is_fraction in parts(spaced(text))
        for font, run in _runs(words, fonts(face))
        for glyph in _shaped(font, run, features | {"frac": True} if is_fraction else features)
    )


def parts(text: str) -> Iterator[tuple[str, bool]]:
    """The text in parts, each with whether it is a fraction."""
    done = 0
    for match in _FRACTION.finditer(text):
        yield text[done : match.start()], False
        yield match[0], True
        done = match.end()
    yield text[done:], False


def _runs(text: str, chain: tuple[Font, ...]) -> Iterator[tuple[Font | None, str]]:
    """The text in runs of one font each; None where no font has the character."""
    run, current = "", None
    for character in text:
        font = _font_for(character, chain, current)
        if run and font is not current:
            yield current, run
            run = ""
        run, current = run + character, font
    if run:
        yield current, run


def _font_for(character: str, chain: tuple[Font, ...], current: Font | None) -> Font | None:
    """The run's own font wherever it can go on, so that spaces do not break a run."""
    if current is not None and current.has(character):
        return current
    return next((font for font in chain if font.has(character)), None)


def _shaped(font: Font | None, run: str, features: dict[str, bool]) -> list[Glyph]:
    if font is None:
        return [Glyph(None, 0, 0, 0, _MISSING_WIDTH, each) for each in run]
    thin = font.glyph(_THIN_SPACE)
    shaped = font.shape(run, features)
    return [replace(glyph, advance=_THIN_ADVANCE, words=" ") if glyph.number == thin else glyph for glyph in shaped]


def _draw(path: Path, glyph: Glyph, size: int) -> None:
    if glyph.font is None:
        _draw_box(path, size)
        return
    for stroke in glyph.font.outline(glyph.number):
        values = [
            _units(glyph.x + value, size) if i % 2 == 0 else -_units(glyph.y + value, size)
            for i, value in enumerate(stroke.values)
        ]
        _follow(path, stroke.verb, values)


def _follow(path: Path, verb: str, values: list[int]) -> None:
    verbs: dict[str, Callable[..., Path]] = {
        "M": path.move,
        "L": path.line,
        "Q": path.quad,
        "C": path.curve,
        "Z": path.close,
    }
    verbs[verb](*values)


def _draw_box(path: Path, size: int) -> None:
    """A hollow box: the inner outline runs the other way round."""
    left, right = _MISSING_EDGE, _MISSING_WIDTH - _MISSING_EDGE
    outer = ((left, 0), (left, _MISSING_HEIGHT), (right, _MISSING_HEIGHT), (right, 0))
    low, high = _MISSING_EDGE, _MISSING_HEIGHT - _MISSING_EDGE
    inner = (
        (left + _MISSING_EDGE, low),
        (right - _MISSING_EDGE, low),
        (right - _MISSING_EDGE, high),
        (left + _MISSING_EDGE, high),
    )
    for corners in (outer, inner):
        path.lines((_units(x, size), -_units(y, size)) for x, y in corners).close()
