"""Cautions in a picture: a sign of its own, and the sentences beside it."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.theme import INK, MM, SMALL, THIN
from spreadwright.drawing.type import Style, wrapped, write

SIGN = 7 * MM // 2
"""Side of the sign, ticks."""
_WORDS = Style(size=SMALL)
_LINE_HEIGHT = 4 * MM
_INDENT = SIGN + 3 * MM // 2


def caution_sign(canvas: Canvas, at: Point) -> None:
    """A triangle with an exclamation mark, in ink; `at` is its lower left corner."""
    left, bottom = at
    middle, top = left + SIGN // 2, bottom - SIGN * 7 // 8
    triangle = Path().move(left, bottom).line(middle, top).line(left + SIGN, bottom).close()
    canvas.path(triangle, stroked(INK, THIN * 5 // 4, is_round=True), label="caution")
    stem = Path().move(middle, top + SIGN // 3).line(middle, bottom - SIGN * 3 // 10)
    canvas.path(stem, stroked(INK, THIN * 5 // 4, is_round=True))
    canvas.circle((middle, bottom - SIGN // 7), THIN * 3 // 4, filled(INK))


@dataclass(frozen=True, slots=True)
class Note:
    """A line or a few of plain words; with the sign before them when they are a caution."""

    lines: tuple[str, ...]
    is_caution: bool = False

    @property
    def height(self) -> int:
        """What it takes, ticks."""
        return _LINE_HEIGHT * len(self.lines)

    def draw(self, canvas: Canvas, at: Point, total: int) -> None:
        """With its top left corner at a point."""
        left = at[0] + (_INDENT if self.is_caution else 0)
        if self.is_caution:
            caution_sign(canvas, (at[0], at[1] + _LINE_HEIGHT))
        for index, words in enumerate(self.lines, start=1):
            write(canvas, words, (left, at[1] + index * _LINE_HEIGHT - MM), _WORDS)

    def split(self, room: int) -> "tuple[Note | None, Note | None]":
        """All of it, or nothing: sentences stay together."""
        return (self, None) if self.height <= room else (None, self)


def caution(sentences: Sequence[str], total: int) -> Note:
    """The sentences run on, broken to `total` ticks with the sign."""
    return Note(wrapped(" ".join(sentences), _WORDS, total - _INDENT), is_caution=True)


def remark(sentence: str, total: int) -> Note:
    """Plain words, broken to `total` ticks."""
    return Note(wrapped(sentence, _WORDS, total))
