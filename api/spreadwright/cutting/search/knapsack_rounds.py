"""Good plans of one sheet within the counts, one for each set of scores."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from math import isqrt

from spreadwright.cutting.search import speed
from spreadwright.cutting.search.knapsack_grid import Axis, Grid
from spreadwright.cutting.search.knapsack_items import Case, Stop
from spreadwright.cutting.search.knapsack_plans import Lengths, Plans, fill_plans
from spreadwright.cutting.search.trees import Block, above, beside, piece, rest

MOST_NUMBERS = 10_000_000
"""Whole numbers that the plans of all cells take, 80 MB."""

FEW_LENGTHS = 64
"""Lengths of an axis for a plan that is made in no time."""


@dataclass(frozen=True, slots=True)
class Found:
    """A plan of one sheet.

    Attributes:
        used: Copies of each item.
    """

    value: int
    tree: Block
    used: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """Where one sheet may be cut; true lengths, nought first and the sheet's own last."""

    across: tuple[int, ...]
    down: tuple[int, ...]

    @property
    def size(self) -> tuple[int, int]:
        """Width and height of the sheet."""
        return self.across[-1], self.down[-1]


def frame(case: Case, grid: Grid, most: int = 1024) -> Frame:
    """All sums that the grid knows, or as many of few sides as `most` and the room for plans allow."""
    most = min(most, isqrt(MOST_NUMBERS // (case.packing.words + 5)))
    across, down = (sorted({size[i] for size, _ in case.ways}) for i in (0, 1))
    return Frame(_lengths(grid.across, across, most), _lengths(grid.down, down, most))


def _lengths(axis: Axis, sides: Sequence[int], most: int) -> tuple[int, ...]:
    if axis.unit == 1 and len(axis.sums) < most:
        return tuple(sorted({*(int(n) for n in axis.sums), axis.length}))
    kept = newest = {0}
    inside = _thinned([side for side in sides if side <= axis.length], most // 4)
    while newest and len(kept) < most // 2:
        sums = sorted({a + side for a in newest for side in inside if a + side <= axis.length} - kept)
        newest = set(_thinned(sums, most // 4))
        kept = kept | newest | {axis.length - n for n in newest}
    return tuple(sorted({*_thinned(sorted(kept), most - 2), 0, axis.length}))


def _thinned(lengths: Sequence[int], most: int) -> list[int]:
    """Not more than so many of them, evenly."""
    return [lengths[i * len(lengths) // most] for i in range(most)] if len(lengths) > most else list(lengths)


def good_plan(case: Case, frame: Frame, scores: Sequence[int], counts: Sequence[int], is_over: Stop) -> Found | None:
    """The plan that the scores lead to, within these counts; nothing if time is over."""
    words, rows = case.packing.words, len(frame.down)
    cells = len(frame.across) * rows
    plans = Plans(
        speed.zeros(cells), speed.zeros(cells), speed.filled(cells, -2), speed.zeros(cells), speed.zeros(cells * words)
    )
    _lay_pieces(case, frame, scores, counts, plans)
    guard, total = (speed.ints(list(n)) for n in (case.packing.guard, case.packing.packed(counts)))
    lengths = Lengths(speed.ints(list(frame.across)), speed.ints(list(frame.down)), guard, total)
    for i in range(1, len(frame.across)):
        fill_plans(plans, i, lengths)
        if is_over():
            return None
    worths = plans.worth
    best = int(worths.argmax())
    used = case.packing.counts(plans.count[best * words : best * words + words])
    tree = _tree(case, frame, plans, best, frame.size)
    return Found(int(worths[best]), tree, tuple(used))


def _lay_pieces(case: Case, frame: Frame, scores: Sequence[int], counts: Sequence[int], plans: Plans) -> None:
    rows, words = len(frame.down), case.packing.words
    for way, ((wide, high), number) in enumerate(case.ways):
        if not counts[number] or wide > frame.across[-1] or high > frame.down[-1]:
            continue
        cell = bisect_left(frame.across, wide) * rows + bisect_left(frame.down, high)
        if scores[number] > plans.score[cell]:
            plans.score[cell], plans.worth[cell] = scores[number], case.items[number].value
            plans.first[cell], plans.second[cell] = -1, way
            plans.count[cell * words : cell * words + words] = 0
            plans.count[cell * words + case.packing.word[number]] = 1 << case.packing.shift[number]


def _tree(case: Case, frame: Frame, plans: Plans, cell: int, size: tuple[int, int]) -> Block:
    """The plan of a cell, filled up with rests to a size."""
    wide, high = size
    first, second, rows = int(plans.first[cell]), int(plans.second[cell]), len(frame.down)
    if first == -2:
        return rest(wide, high)
    if first == -1:
        (w, h), number = case.ways[second]
        return padded(piece(w, h, case.items[number].kind), wide, high)
    second, is_row = divmod(second, 2)
    if is_row:
        x = frame.across[first // rows]
        return beside(_tree(case, frame, plans, first, (x, high)), _tree(case, frame, plans, second, (wide - x, high)))
    y = frame.down[first % rows]
    return above(_tree(case, frame, plans, first, (wide, y)), _tree(case, frame, plans, second, (wide, high - y)))


def padded(block: Block, wide: int, high: int) -> Block:
    """A block in the top left corner of a rectangle, the rest of which nothing is made of."""
    row = beside(block, rest(wide - block.wide, block.high))
    return above(row, rest(wide, high - block.high))
