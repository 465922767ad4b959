"""Upper bounds for limited copies: unlimited ones, with weights that make the overused kinds worth less.

What a piece weighs is taken from its value and given back for every copy there is, so no plan within the counts loses
by it (Lagrangian relaxation); sub-gradients correct the weights until the bound sinks no more.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from spreadwright.cutting.search import knapsack_grid as loops
from spreadwright.cutting.search import speed
from spreadwright.cutting.search.knapsack_grid import Grid
from spreadwright.cutting.search.knapsack_items import Case, Stop
from spreadwright.cutting.search.speed import Ints


@dataclass(frozen=True, slots=True)
class Weights:
    """What each item weighs, in parts of a value.

    Attributes:
        scale: How many parts.
        least: What each has to weigh: all its value, if rounding makes nothing of its sides.
    """

    each: tuple[int, ...]
    scale: int
    least: tuple[int, ...]

    def scores(self, case: Case) -> list[int]:
        """Value less weight, in parts, of one of each item."""
        return [item.value * self.scale - w for item, w in zip(case.items, self.each, strict=True)]

    def returned(self, case: Case) -> int:
        """What all copies weigh, in parts."""
        return sum(item.count * w for item, w in zip(case.items, self.each, strict=True))


@dataclass(frozen=True, slots=True)
class Table:
    """What unlimited copies are worth in parts of a value, by cell; and the copies of the best plan."""

    weights: Weights
    worth: Ints
    used: tuple[int, ...]

    @property
    def most(self) -> int:
        """On the whole sheet."""
        return int(self.worth[len(self.worth) - 1])


def no_weights(case: Case, grids: Sequence[Grid]) -> Weights:
    """Weights to start with; as many parts as whole numbers of 64 bits have room for.

    Where all pieces are wanted, a weight may be negative: no plan of all pieces gains or loses by it.
    """
    scale = 256
    while scale > 1 and case.total * scale >= 1 << 54:
        scale //= 2
    shortest = max(unit for g in grids for unit in (g.across.unit, g.down.unit))
    least = []
    for item in case.items:
        is_nothing = min(item.kind.wide, item.kind.high) < shortest
        least.append(item.value * scale if is_nothing else -item.value * scale if case.is_whole else 0)
    return Weights(tuple(max(0, n) for n in least), scale, tuple(least))


def table(case: Case, grid: Grid, weights: Weights, is_over: Stop) -> Table | None:
    """The dynamic programme with these weights; nothing if time is over."""
    worth, base, sole = (speed.zeros(grid.cells) for _ in range(3))
    scores = weights.scores(case)
    for (wide, high), number in case.ways:
        if wide <= grid.across.length and high <= grid.down.length:
            cell = grid.cell(wide, high)
            if scores[number] > base[cell] and cell >= len(grid.down.sums) and cell % len(grid.down.sums):
                base[cell] = worth[cell] = scores[number]
                sole[cell] = number
    across, down = grid.across, grid.down
    for i in range(1, len(across.sums)):
        loops.fill_row(worth, i, across.sums, down.sums, across.below, down.below)
        if is_over():
            return None
    used = speed.zeros(len(case.items))
    room = speed.zeros(across.last + down.last + 8 + len(across.sums) * 2)
    loops.count_use(worth, base, sole, used, room, (across.sums, down.sums, across.below, down.below))
    return Table(weights, worth, tuple(int(n) for n in used))


def rest(grid: Grid, worth: Ints, is_over: Stop) -> Ints | None:
    """What the sheet is worth beside and below a block, in parts, by cell of what the block leaves."""
    across, down = grid.across, grid.down
    found = speed.zeros(grid.cells)
    wide, high = across.length // across.unit, down.length // down.unit
    for i in range(len(across.sums)):
        loops.rest_row(found, worth, i, across.sums, down.sums, across.below, down.below, wide, high)
        if is_over():
            return None
    return found


def bound_of(case: Case, tables: Sequence[Table]) -> int:
    """No plan for these sheets is worth more; one table a sheet, all with the same weights."""
    weights = tables[0].weights
    return min(case.total, (weights.returned(case) + sum(t.most for t in tables)) // weights.scale)


def corrected(case: Case, weights: Weights, used: Sequence[int], gap: int, share: int) -> Weights | None:
    """The next weights along the sub-gradient; nothing if the counts show that these are best.

    Args:
        used: Copies of each item that the relaxed plan takes.
        gap: Between bound and best plan, in parts.
        share: The step, in 64ths of the full one.
    """
    over = [n - item.count for n, item in zip(used, case.items, strict=True)]
    spare = [w - least for w, least in zip(weights.each, weights.least, strict=True)]
    slope = [d if d > 0 or w else 0 for d, w in zip(over, spare, strict=True)]
    norm = sum(d * d for d in slope)
    if not norm:
        return None
    moved = (max(0, w + gap * share * d // (64 * norm)) for w, d in zip(spare, slope, strict=True))
    each = tuple(w + least for w, least in zip(moved, weights.least, strict=True))
    return Weights(each, weights.scale, weights.least)


@dataclass
class Weighing:
    """Sub-gradient steps: the best weights so far, and where the next step starts.

    Attributes:
        tables: Of the best weights.
        patience: Steps without a better bound after which the step is halved.
    """

    case: Case
    solve: Callable[[Weights], list[Table] | None]
    tables: list[Table]
    share: int = 64
    patience: int = 0

    @property
    def bound(self) -> int:
        """The best bound."""
        return bound_of(self.case, self.tables)

    def parts(self, tables: Sequence[Table]) -> int:
        """A bound in parts of a value."""
        return tables[0].weights.returned(self.case) + sum(t.most for t in tables)

    def step(self, current: Sequence[Table], value: int) -> list[Table] | None:
        """Tables of the next weights, or nothing when there is nothing to gain or time is over."""
        scale = current[0].weights.scale
        used = [sum(counts) for counts in zip(*(t.used for t in current), strict=True)]
        gap = max(self.parts(current) - value * scale, scale)
        weights = corrected(self.case, current[0].weights, used, gap, self.share)
        tables = self.solve(weights) if weights and self.share else None
        if tables is None:
            return None
        self._keep(tables)
        return tables

    def _keep(self, tables: list[Table]) -> None:
        if self.parts(tables) < self.parts(self.tables):
            self.tables, self.patience = tables, 0
            return
        self.patience += 1
        if self.patience >= 4:
            self.patience, self.share = 0, self.share * 2 // 3
