"""A table in a picture: heads, rows, hairlines; no boxes."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.path import Point
from spreadwright.drawing.theme import HAIRLINE, MM, QUIET, SMALL
from spreadwright.drawing.type import Style, width, write

ROW = 11 * MM // 2
_HEAD = Style(size=SMALL, colour=QUIET)
_CELL = Style(size=SMALL, is_tabular=True)
_FIRST = Style(face=Typeface.SANS_BOLD, size=SMALL, is_tabular=True)
_RULE = stroked(QUIET, HAIRLINE, opacity=0.6)
_GUTTER = 5 * MM


@dataclass(frozen=True, slots=True)
class Table:
    """Heads and rows of equal length; the first column stands out."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    @property
    def height(self) -> int:
        """What it takes, ticks."""
        return ROW * (len(self.rows) + 1)

    def widths(self) -> tuple[int, ...]:
        """What each column takes with the gutter after it, ticks."""
        return tuple(
            max(width(head, _HEAD), *(width(row[i], _cell(i)) for row in self.rows)) + _GUTTER
            if self.rows
            else width(head, _HEAD) + _GUTTER
            for i, head in enumerate(self.heads)
        )


def table(canvas: Canvas, content: Table, at: Point, *, total: int) -> None:
    """Draw a table with its top left corner at a point, its rules `total` ticks long."""
    lefts = [at[0]]
    for column in content.widths():
        lefts.append(lefts[-1] + column)
    _row(canvas, content.heads, lefts, at[1] + ROW - 3 * MM // 2, None)
    for index, row in enumerate(content.rows):
        top = at[1] + (index + 1) * ROW
        canvas.line((at[0], top), (at[0] + total, top), _RULE)
        _row(canvas, row, lefts, top + ROW - 3 * MM // 2, index)


def _row(canvas: Canvas, cells: Sequence[str], lefts: Sequence[int], baseline: int, index: int | None) -> None:
    for column, (left, words) in enumerate(zip(lefts, cells, strict=False)):
        write(canvas, words, (left, baseline), _HEAD if index is None else _cell(column))


def _cell(column: int) -> Style:
    return _FIRST if column == 0 else _CELL
