"""Which sheets might do: sets of sheets from the stock, the cheapest first, so that the first that works is best."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush
from itertools import count

from spreadwright.cutting.problem import Problem
from spreadwright.cutting.search.bounds import fewest_sheets
from spreadwright.cutting.search.kinds import Size, Stock


@dataclass(frozen=True, slots=True)
class StockSheet:
    """One sheet that may be cut: its size in ticks, its entry in the problem's stock, its cost."""

    size: Size
    stock: int
    cost: int


SheetSet = tuple[StockSheet, ...]

MOST_LOOKED_AT = 20_000
"""Sets of several sizes, too small ones included; where there are more, what the next would cost bounds the rest."""


def sizes(chosen: SheetSet) -> tuple[Size, ...]:
    """The sizes of a set."""
    return tuple(sheet.size for sheet in chosen)


def cost(chosen: SheetSet) -> int:
    """What a set costs."""
    return sum(sheet.cost for sheet in chosen)


def stock_sheets(problem: Problem, most: int) -> SheetSet:
    """Every sheet in stock, at most so many of each entry."""
    return tuple(
        StockSheet((s.size.width, s.size.height), number, s.cost)
        for number, s in enumerate(problem.stock)
        for _ in range(most if s.count is None else min(s.count, most))
    )


class SheetSets:
    """Sets of sheets that have the area of some pieces at least, by cost, then by number, then by area.

    Sheets of one size are told apart by cost alone, so of equal sizes the cheapest go first and no other need be tried.

    Attributes:
        left: What the sets cost that have not been given yet, at least; None when there are no more.
    """

    def __init__(self, sheets: SheetSet, pieces: Stock) -> None:
        self._by_size: dict[Size, list[StockSheet]] = defaultdict(list)
        for sheet in sorted(sheets, key=lambda s: (s.cost, s.stock)):
            self._by_size[sheet.size].append(sheet)
        self._pieces = pieces
        self.left: int | None = 0

    def __iter__(self) -> Iterator[SheetSet]:
        groups = list(self._by_size.values())
        found = self._equal(groups[0]) if len(groups) == 1 else self._mixed(groups)
        yield from found

    def _equal(self, group: Sequence[StockSheet]) -> Iterator[SheetSet]:
        counted = list(zip(self._pieces.kinds, self._pieces.counts, strict=True))
        for number in count(fewest_sheets(counted, *group[0].size)):
            if number > len(group):
                break
            chosen = tuple(group[:number])
            self.left = cost(chosen)
            yield chosen
        self.left = None

    def _mixed(self, groups: Sequence[Sequence[StockSheet]]) -> Iterator[SheetSet]:
        start = (0,) * len(groups)
        heap = [(0, 0, 0, start)]
        seen = {start}
        for _ in range(MOST_LOOKED_AT):
            if not heap:
                self.left = None
                return
            self.left = heap[0][0]
            price, number, area, taken = heappop(heap)
            chosen = tuple(s for group, n in zip(groups, taken, strict=True) for s in group[:n])
            if area >= self._pieces.area and self._has_room_for_each(chosen):
                yield chosen
            for i, group in enumerate(groups):
                more = (*taken[:i], taken[i] + 1, *taken[i + 1 :])
                if taken[i] < len(group) and more not in seen:
                    seen.add(more)
                    next_one = group[taken[i]]
                    wide, high = next_one.size
                    heappush(heap, (price + next_one.cost, number + 1, area + wide * high, more))

    def _has_room_for_each(self, chosen: SheetSet) -> bool:
        there = set(sizes(chosen))
        return all(any(w <= x and h <= y for w, h in k.sides() for x, y in there) for k in self._pieces.kinds)


def openings(sheets: SheetSet) -> Iterator[SheetSet]:
    """Orders in which sheets may be opened: good value first, small ones first, large ones first."""

    def area(sheet: StockSheet) -> int:
        return sheet.size[0] * sheet.size[1]

    keys: tuple[Callable[[StockSheet], tuple[float, ...]], ...] = (
        lambda s: (s.cost / area(s), -area(s)),
        lambda s: (area(s),),
        lambda s: (-area(s),),
    )
    yield from dict.fromkeys(tuple(sorted(sheets, key=key)) for key in keys)
