"""The fonts that ship with the package (SIL Open Font License 1.1), and the outlines of their glyphs.

Each face comes in four files by script, asked in this order: Latin, further Latin, Greek, Cyrillic.
"""

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from importlib.resources import files
from itertools import pairwise

import uharfbuzz

UNITS_PER_EM = 1000
"""All shipped fonts are drawn on this grid."""

SCRIPTS = ("latin", "latin-ext", "greek", "cyrillic")
"""A file each."""


class Typeface(StrEnum):
    """A family and weight that ships."""

    SANS = "alegreya-sans-regular"
    SANS_MEDIUM = "alegreya-sans-medium"
    SANS_BOLD = "alegreya-sans-bold"
    TEXT = "alegreya-regular"
    TEXT_ITALIC = "alegreya-italic"


@dataclass(frozen=True, slots=True)
class Stroke:
    """One step of a glyph's outline: M, L, Q, C or Z and its coordinates in font units, y upward."""

    verb: str
    values: tuple[float, ...]


class Font:
    """One font file: shapes runs of text and knows its glyphs' outlines.

    Attributes:
        name: Of the file, without its ending.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        data = files(__package__).joinpath(f"{name}.ttf").read_bytes()
        self._font = uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob(data)))
        self._outlines: dict[int, tuple[Stroke, ...]] = {}

    def has(self, character: str) -> bool:
        """Whether the font has a glyph for a character."""
        return bool(self.glyph(character))

    def glyph(self, character: str) -> int | None:
        """The glyph of a character, when there is one."""
        found: int | None = self._font.get_nominal_glyph(ord(character))
        return found

    def advance(self, glyph: int) -> int:
        """How far a glyph runs by itself, font units."""
        return int(self._font.get_glyph_h_advance(glyph))

    def shape(self, text: str, features: dict[str, bool]) -> list["Glyph"]:
        """The glyphs of a run."""
        buffer = uharfbuzz.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        uharfbuzz.shape(self._font, buffer, features)
        starts = [info.cluster for info in buffer.glyph_infos]
        words = [text[here:end] for here, end in pairwise([*starts, len(text)])]
        return [
            Glyph(self, info.codepoint, at.x_offset, at.y_offset, at.x_advance, said)
            for info, at, said in zip(buffer.glyph_infos, buffer.glyph_positions, words, strict=True)
        ]

    def outline(self, glyph: int) -> tuple[Stroke, ...]:
        """The outline of a glyph."""
        if glyph not in self._outlines:
            strokes: list[Stroke] = []
            self._font.draw_glyph(glyph, _recorder(), strokes)
            self._outlines[glyph] = tuple(strokes)
        return self._outlines[glyph]


@dataclass(frozen=True, slots=True)
class Glyph:
    """A glyph with its place and advance in font units.

    Attributes:
        font: None where no font has the character.
        words: What it stands for; nothing when it only adds to the glyph before it.
    """

    font: Font | None
    number: int
    x: int
    y: int
    advance: int
    words: str


@lru_cache
def fonts(face: Typeface) -> tuple[Font, ...]:
    """The files of a face, in the order in which they are asked; read once."""
    return tuple(Font(f"{face.value}-{script}") for script in SCRIPTS)


@lru_cache
def _recorder() -> uharfbuzz.DrawFuncs:
    functions = uharfbuzz.DrawFuncs()
    functions.set_move_to_func(lambda *got: _record("M", got))
    functions.set_line_to_func(lambda *got: _record("L", got))
    functions.set_quadratic_to_func(lambda *got: _record("Q", got))
    functions.set_cubic_to_func(lambda *got: _record("C", got))
    functions.set_close_path_func(lambda strokes: strokes.append(Stroke("Z", ())))
    return functions


def _record(verb: str, got: tuple[object, ...]) -> None:
    *values, strokes = got
    assert isinstance(strokes, list)
    strokes.append(Stroke(verb, tuple(float(str(value)) for value in values)))
