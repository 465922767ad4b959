"""How a page of an album is shared out over sheets of printing paper, at full size and with an overlap.

All tiles of a page are equally large, so that none is a narrow remnant. Where two meet, they are joined near the
middle of what they share.
"""

from dataclasses import dataclass
from itertools import pairwise

from spreadwright.drawing.booklet import Format
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size

EDGE, HEAD, FOOT = 10 * MM, 14 * MM, 20 * MM
"""What no printer prints on each side, and what stands above and below a tile; ticks."""

OVERLAP, BESIDE_MIDDLE = 14 * MM, 5 * MM // 2
"""What two neighbours share, and how far from its middle they are joined, since edges are frequent there; ticks."""

MOST_TILES = 40
"""Of one page: nobody tapes more sheets together."""


@dataclass(frozen=True, slots=True)
class Tile:
    """One part of a page.

    Attributes:
        row: From the top, from 0.
        column: From the left, from 0.
        rect: What it shows, ticks from the page's top left corner.
        core: What of it remains when it is cut along its joins.
    """

    row: int
    column: int
    rect: Rect
    core: Rect


@dataclass(frozen=True, slots=True)
class Tiling:
    """The tiles of one page, row by row.

    Attributes:
        paper: The printing paper as it lies, ticks.
    """

    paper: Size
    rows: int
    columns: int
    tiles: tuple[Tile, ...]

    @property
    def is_too_large(self) -> bool:
        """Whether nobody would tape so many together."""
        return self.rows * self.columns > MOST_TILES

    def index(self, row: int, column: int) -> int | None:
        """The place of a tile in the list; None beyond the edge of the page."""
        is_inside = 0 <= row < self.rows and 0 <= column < self.columns
        return row * self.columns + column if is_inside else None


def tiling(page: Size, paper: Format) -> Tiling:
    """The fewest tiles, on upright paper or on paper that lies on its side; upright where both take as many."""
    return min(
        (_tiling(page, each) for each in (paper.size, paper.size.turned())),
        key=lambda found: found.rows * found.columns,
    )


def window(paper: Size) -> Rect:
    """Where a tile can lie on its paper, ticks."""
    return Rect.between(EDGE, EDGE + HEAD, paper.width - EDGE, paper.height - EDGE - FOOT)


def place(tile: Tile, paper: Size) -> Rect:
    """Where a tile lies on its paper: in the middle, below the heading; ticks."""
    room = window(paper)
    return Rect.at(room.left + (room.width - tile.rect.width) // 2, room.top, tile.rect.size)


def _tiling(page: Size, paper: Size) -> Tiling:
    room = window(paper)
    across, down = _count(page.width, room.width), _count(page.height, room.height)
    if across * down > MOST_TILES:
        return Tiling(paper, down, across, ())
    tiles = tuple(
        _tile(row, column, x, y)
        for row, y in enumerate(_shares(page.height, down))
        for column, x in enumerate(_shares(page.width, across))
    )
    return Tiling(paper, down, across, tiles)


def _count(length: int, room: int) -> int:
    """How many tiles of at most `room` cover a length, neighbours overlapping."""
    return 1 if length <= room else -(-(length - OVERLAP) // (room - OVERLAP))


@dataclass(frozen=True, slots=True)
class _Span:
    """What a tile shows in one direction, and what remains of it between its joins."""

    start: int
    end: int
    first: int
    last: int


def _shares(length: int, count: int) -> list[_Span]:
    each = -(-(length + (count - 1) * OVERLAP) // count)
    starts = [index * (length - each) // max(1, count - 1) for index in range(count)]
    joins = [(start + each + following) // 2 + BESIDE_MIDDLE for start, following in pairwise(starts)]
    return [
        _Span(start, start + each, first, last)
        for start, first, last in zip(starts, [0, *joins], [*joins, length], strict=True)
    ]


def _tile(row: int, column: int, x: _Span, y: _Span) -> Tile:
    shown = Rect.between(x.start, y.start, x.end, y.end)
    return Tile(row, column, shown, Rect.between(x.first, y.first, x.last, y.last))
