"""A table in a picture: heads, rows, hairlines; no boxes."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.cautions import SIGN, caution_sign
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.path import Point
from spreadwright.drawing.theme import HAIRLINE, MM, QUIET, SMALL
from spreadwright.drawing.type import Style, width, wrapped, write

ROW = 11 * MM // 2
_HEAD = Style(size=SMALL, colour=QUIET)
_CELL = Style(size=SMALL, is_tabular=True)
_FIRST = Style(face=Typeface.SANS_BOLD, size=SMALL, is_tabular=True)
_RULE = stroked(QUIET, HAIRLINE, opacity=0.6)
_GUTTER, _NARROW_GUTTER = 5 * MM, 2 * MM
_INDENT = SIGN + MM
_NOTE_MEASURE = 170 * MM
"""As wide as every table is drawn."""
_SHORTEST = 20 * MM
"""No column is narrowed further."""


@dataclass(frozen=True, slots=True)
class Table:
    """Heads and rows of equal length; the first column stands out.

    Attributes:
        warned: The rows, from 0, that carry the sign of a caution before them.
        note: What stands above the heads, not repeated where the table runs on.
    """

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    warned: frozenset[int] = frozenset()
    note: str = ""

    @property
    def height(self) -> int:
        """What it takes, ticks."""
        return ROW * (len(self.rows) + self._above)

    @property
    def _above(self) -> int:
        """The rows that heads and note take."""
        return 1 + len(self._note_lines)

    @property
    def _note_lines(self) -> tuple[str, ...]:
        return wrapped(self.note, _CELL, _NOTE_MEASURE) if self.note else ()

    def widths(self) -> tuple[int, ...]:
        """What the words of each column take, ticks."""
        return tuple(
            max([width(head, _HEAD), *(width(row[column], _cell(column)) for row in self.rows)])
            for column, head in enumerate(self.heads)
        )

    def draw(self, canvas: Canvas, at: Point, total: int) -> None:
        """Draw it with its top left corner at a point, its rules `total` ticks long.

        Columns move closer when they would run over; then the widest is shortened.
        """
        for line in self._note_lines:
            write(canvas, line, (at[0], at[1] + ROW - 5 * MM // 2), _CELL)
            at = (at[0], at[1] + ROW)
        indent = _INDENT if self.warned else 0
        columns, gutter = _fitted(self.widths(), total - indent)
        lefts = [at[0] + indent]
        for column in columns:
            lefts.append(lefts[-1] + column + gutter)
        _row(canvas, self.heads, lefts, at[1] + ROW - 3 * MM // 2, None, columns)
        for index, row in enumerate(self.rows):
            top = at[1] + (index + 1) * ROW
            canvas.line((at[0], top), (at[0] + total, top), _RULE)
            if index in self.warned:
                caution_sign(canvas, (at[0], top + ROW - 5 * MM // 4))
            _row(canvas, row, lefts, top + ROW - 3 * MM // 2, index, columns)

    def split(self, room: int) -> "tuple[Table | None, Table | None]":
        """As many rows as `room` ticks hold, and the others under the same heads; no heads and no row alone."""
        count = room // ROW - self._above
        if count >= len(self.rows):
            return self, None
        if count < 1:
            return None, self
        if count > 2 and count == len(self.rows) - 1:
            count -= 1  # the last row does not stand alone either
        return self._rows(0, count), replace(self._rows(count, len(self.rows)), note="")

    def _rows(self, start: int, end: int) -> "Table":
        warned = frozenset(index - start for index in self.warned if start <= index < end)
        return replace(self, rows=self.rows[start:end], warned=warned)


def _fitted(widths: Sequence[int], total: int) -> tuple[list[int], int]:
    """The widths of the columns and the gutter between them."""
    columns, gaps = list(widths), max(len(widths) - 1, 1)
    gutter = max(_NARROW_GUTTER, min(_GUTTER, (total - sum(columns)) // gaps))
    over = sum(columns) + gutter * gaps - total
    if over > 0:
        widest = columns.index(max(columns))
        columns[widest] = max(_SHORTEST, columns[widest] - over)
    return columns, gutter


def _row(
    canvas: Canvas,
    cells: Sequence[str],
    lefts: Sequence[int],
    baseline: int,
    index: int | None,
    columns: Sequence[int],
) -> None:
    for column, (left, words) in enumerate(zip(lefts, cells, strict=False)):
        style = _HEAD if index is None else _cell(column)
        write(canvas, _shortened(words, style, columns[column]), (left, baseline), style)


def _shortened(words: str, style: Style, room: int) -> str:
    if width(words, style) <= room:
        return words
    kept = words
    while kept and width(kept + "…", style) > room:
        kept = kept[:-1]
    return kept + "…"


def _cell(column: int) -> Style:
    return _FIRST if column == 0 else _CELL
