"""The lengths that matter on a sheet, and the most that unlimited copies are worth on every rectangle of such lengths.

Cuts need be made only at sums of piece sides (normal patterns: Herz 1972, Christofides and Whitlock 1977). Where there
are too many sums, sides and sheet are counted in whole coarse units, rounded down: what fits still does, so every
value stays a bound from above.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.cutting.search import speed
from spreadwright.cutting.search.kinds import Size, reachable
from spreadwright.cutting.search.speed import Ints, compiled

LONGEST = 1 << 17
"""Units that an axis has at most."""

MOST_SUMS = 1024
"""Lengths that an axis has at most; 2 axes of so many make tables of 8 MiB."""


@dataclass(frozen=True, slots=True)
class Axis:
    """One direction of a sheet.

    Attributes:
        length: Of the sheet.
        unit: What `sums` and `below` count in; 1 where nothing is rounded.
        sums: Reachable lengths in units, nought first.
        below: For every number of units the index of the largest sum not above it.
    """

    length: int
    unit: int
    sums: Ints
    below: Ints

    @property
    def last(self) -> int:
        """Index of the largest sum."""
        return len(self.sums) - 1

    def index(self, side: int) -> int:
        """Index of the largest sum not above a length."""
        return int(self.below[side // self.unit])


@dataclass(frozen=True, slots=True)
class Grid:
    """Both axes of a sheet."""

    across: Axis
    down: Axis

    @property
    def cells(self) -> int:
        """How many rectangles have sides of such lengths."""
        return len(self.across.sums) * len(self.down.sums)

    @property
    def is_exact(self) -> bool:
        """Whether no length was rounded."""
        return self.across.unit == self.down.unit == 1

    @property
    def work(self) -> int:
        """Steps that one dynamic programme takes, about."""
        return self.cells * (len(self.across.sums) + len(self.down.sums)) // 4

    def cell(self, wide: int, high: int) -> int:
        """Number of the largest cell inside a rectangle."""
        return self.across.index(wide) * len(self.down.sums) + self.down.index(high)


def axis(length: int, sides: Sequence[tuple[int, int]]) -> Axis:
    """The axis for at most so many of each side."""
    unit = -(-length // LONGEST)
    while True:
        most = length // unit
        bits = reachable([(side // unit, count) for side, count in sides if unit <= side <= length], most)
        if bits.bit_count() <= MOST_SUMS or most <= MOST_SUMS:
            break
        unit = max(unit + 1, -(-length // MOST_SUMS))
    sums = [n for n, bit in enumerate(reversed(bin(bits)[2:])) if bit == "1"]
    return Axis(length, unit, speed.ints(sums), speed.ints(below(sums, most)))


def below(sums: Sequence[int], most: int) -> list[int]:
    """For every length up to `most` the index of the largest sum not above it."""
    found, at = [], 0
    for length in range(most + 1):
        at += at + 1 < len(sums) and sums[at + 1] <= length
        found.append(at)
    return found


def grid(sheet: Size, ways: Sequence[tuple[Size, int]]) -> Grid:
    """The grid of a sheet for pieces that lie in these ways, so many of each."""
    width, height = sheet
    return Grid(
        axis(width, [(wide, count) for (wide, _), count in ways]),
        axis(height, [(high, count) for (_, high), count in ways]),
    )


@compiled
def fill_row(worth: Ints, i: int, across: Ints, down: Ints, column: Ints, row: Ints) -> None:
    """Raises one column of rectangles to the best of: a smaller one, itself, two parts of a cut up to its middle."""
    rows = len(down)
    for j in range(1, rows):
        best = max(worth[i * rows + j], worth[(i - 1) * rows + j], worth[i * rows + j - 1])
        a = 1
        while a < i and 2 * across[a] <= across[i]:
            best = max(best, worth[a * rows + j] + worth[column[across[i] - across[a]] * rows + j])
            a += 1
        a = 1
        while a < j and 2 * down[a] <= down[j]:
            best = max(best, worth[i * rows + a] + worth[i * rows + row[down[j] - down[a]]])
            a += 1
        worth[i * rows + j] = best


@compiled
def rest_row(
    rest: Ints, worth: Ints, i: int, across: Ints, down: Ints, column: Ints, row: Ints, wide: int, high: int
) -> None:
    """The most that the sheet is worth beside and below a block, for blocks that leave `across[i]` beside them.

    The block is joined with a rectangle beside it or below it, and the joined block again, up to the whole sheet
    (Viswanathan and Bagchi 1993).

    Args:
        rest: What a block is left with, by the sums beside and below it.
        wide: Units of the whole sheet across.
        high: The same down.
    """
    rows = len(down)
    at_i = column[wide - across[i]]
    for j in range(rows):
        at_j = row[high - down[j]]
        best = 0
        if i:
            best = rest[(i - 1) * rows + j]
        if j:
            best = max(best, rest[i * rows + j - 1])
        for a in range(1, i + 1):
            best = max(best, worth[a * rows + at_j] + rest[column[across[i] - across[a]] * rows + j])
        for a in range(1, j + 1):
            best = max(best, worth[at_i * rows + a] + rest[i * rows + row[down[j] - down[a]]])
        rest[i * rows + j] = best


@compiled
def count_use(
    worth: Ints, base: Ints, sole: Ints, used: Ints, stack: Ints, grids: tuple[Ints, Ints, Ints, Ints]
) -> None:
    """Counts the pieces of the best plan of the whole sheet.

    Args:
        base: What single pieces are worth, by cell.
        sole: Which piece that is.
        used: The counts, added to.
        stack: Room for cells that wait.
    """
    across, down, column, row = grids
    rows = len(down)
    stack[0] = len(worth) - 1
    size = 1
    while size:
        size -= 1
        cell = stack[size]
        value = worth[cell]
        i, j = cell // rows, cell % rows
        if value == 0:
            continue
        if base[cell] == value:
            used[sole[cell]] += 1
        elif worth[cell - rows] == value or worth[cell - 1] == value:
            stack[size] = cell - rows if worth[cell - rows] == value else cell - 1
            size += 1
        else:
            first, second = parts_of(worth, i, j, value, across, down, column, row)
            stack[size] = first
            stack[size + 1] = second
            size += 2


@compiled
def parts_of(
    worth: Ints, i: int, j: int, value: int, across: Ints, down: Ints, column: Ints, row: Ints
) -> tuple[int, int]:
    """The two cells that a cell's value comes from."""
    rows = len(down)
    for a in range(1, i):
        other = column[across[i] - across[a]]
        if worth[a * rows + j] + worth[other * rows + j] == value:
            return a * rows + j, other * rows + j
    for a in range(1, j):
        other = row[down[j] - down[a]]
        if worth[i * rows + a] + worth[i * rows + other] == value:
            return i * rows + a, i * rows + other
    return 0, 0
