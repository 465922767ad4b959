"""Words beside and below small spreads: line by line, each as high as its type needs."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.path import Point
from spreadwright.drawing.type import Style, wrapped, write

SECOND = "#57534d"
"""Words that are read second: 7 : 1 on white."""

Pen = Callable[..., None]
"""`write`, or what it is called that keeps each letter once."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of words."""

    words: str
    style: Style

    @property
    def height(self) -> int:
        """What it takes, ticks."""
        return self.style.size * 13 // 10


def lines_of(words: str, style: Style, room: int) -> list[Line]:
    """Words in lines that run no further than `room`, ticks."""
    return [Line(line, style) for line in wrapped(words, style, room)]


def height_of(lines: Sequence[Line]) -> int:
    """What they take, ticks."""
    return sum(line.height for line in lines)


def write_lines(canvas: Canvas, lines: Sequence[Line], at: Point, pen: Pen = write) -> int:
    """Write them one below the other from a top left corner; gives where the next one would have its top."""
    left, top = at
    for line in lines:
        pen(canvas, line.words, (left, top + line.height * 3 // 4), line.style)
        top += line.height
    return top
