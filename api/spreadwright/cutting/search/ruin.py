"""Plans with a rest by ruin and recreate: some pieces are taken out and put back where they fit best, over and over.

A change is kept if it is no worse than what was kept a while ago, so the search finds its way out of dead ends: ruin
and recreate after Schrimpf et al. 2000, Journal of Computational Physics 159; late acceptance after Burke and Bykov
2017, European Journal of Operational Research 258. Both sources stand here from memory.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import reduce
from math import isqrt

from spreadwright.cutting.search import nodes, ruining
from spreadwright.cutting.search.insertion import Request, columns
from spreadwright.cutting.search.kinds import Size, common_step
from spreadwright.cutting.search.nodes import Ruins
from spreadwright.cutting.search.speed import Table, filled, floats, ints, table, zeros
from spreadwright.cutting.search.trees import Block, above, beside, piece, rest, turned

MOST_PIECES = 3000
"""With more of them a step takes too long to be worth it."""

STEPS, WORK = 30_000, 30_000_000
"""Of one round: steps, and steps times pieces, at most; from one second to several."""

AT_A_TIME = 30_000
"""Of this work between two questions whether to stop."""

SETTINGS = ((100, 0.05, 40), (30, 0.4, 25), (30, 0.2, 40), (100, 0.2, 25))
"""Of rounds by turns: from how many steps ago a cost is remembered, how much gathered rests count, and how many pieces
a step takes out at most."""


@dataclass(frozen=True, slots=True)
class Filled:
    """One tree for each sheet, in the order of the sheets given, and the optional requests left out."""

    trees: tuple[Block, ...]
    left_out: tuple[int, ...]


class Ruiner:
    """Cuts requests from just these sheets; limits of 0 allow anything."""

    def __init__(
        self, requests: Sequence[Request], sheets: Sequence[Size], *, longest_cut: int = 0, narrowest: int = 0
    ) -> None:
        self.requests = requests
        self.sheets = sheets
        self.step = common_step([*sheets, *((r.kind.wide, r.kind.high) for r in requests)])
        self.limits = longest_cut // self.step, -(-narrowest // self.step)

    def filled(
        self, restart: int, seed: int, is_over: Callable[[], bool], *, larger_than: int | None = None
    ) -> Iterator[Filled]:
        """Ever better plans, the first as soon as everything lies that must be cut.

        Args:
            restart: Its number: each begins anew, with settings that change by turns.
            larger_than: Area of the largest rest of a plan that leaves nothing out, if only better ones are wanted.
        """
        count = len(self.requests)
        if count > MOST_PIECES:
            return
        memory, pull, most_out = SETTINGS[restart % len(SETTINGS)]
        pull /= isqrt(max(w * h for w, h in self.sheets)) // self.step
        most_lost = sum(r.value for r in self.requests) + 1 if larger_than is None else 0
        largest = (larger_than or 0) // self.step**2
        r, kept = self._ruins(seed + restart), self._ruins(seed)
        ruining.recreate(r)
        costs = floats([ruining.cost(r, pull)] * (memory + 1))
        steps = max(1, AT_A_TIME // count)
        for _ in range(min(STEPS, WORK // count) // steps):
            if is_over():
                return
            if ruining.improve(r, kept, costs, steps, most_out, pull, most_lost, largest):
                found = self._filled(r)
                yield found
                most_lost, largest = sum(self.requests[i].value for i in found.left_out), int(nodes.largest_rest(r))
                if most_lost == 0 and larger_than is None:
                    return

    def _filled(self, r: Ruins) -> Filled:
        out = tuple(int(i) for i in r.out[: int(r.state[nodes.OUT])])
        return Filled(tuple(self._tree(r, sheet) for sheet in range(len(self.sheets))), out)

    def _tree(self, r: Ruins, node: int) -> Block:
        wide, high, content = (int(r.nodes[row, node]) for row in (nodes.WIDE, nodes.HIGH, nodes.CONTENT))
        if content == nodes.REST:
            return rest(wide * self.step, high * self.step)
        if content >= 0:
            kind = self.requests[content].kind
            lies = piece(kind.wide, kind.high, kind)
            return lies if lies.size == (wide * self.step, high * self.step) else turned(lies)
        join = beside if r.nodes[nodes.AXIS, node] == nodes.ASIDE else above
        parts = [self._tree(r, child) for child in _children(r, node)]
        return reduce(join, sorted(parts, key=lambda part: part.is_rest))

    def _ruins(self, seed: int) -> Ruins:
        count, groups = len(self.requests), max((r.group for r in self.requests), default=-1) + 1
        sizes = [(w // self.step, h // self.step) for w, h in self.sheets]
        largest = max(w * h for w, h in sizes)
        return Ruins(
            **columns(self.requests, self.step),
            value=ints([r.value for r in self.requests]),
            weight=floats(self._weights()),
            where=filled(count, -1),
            group_sheet=zeros(max(1, groups)),
            group_count=zeros(max(1, groups)),
            nodes=_free_nodes(sizes, 4 * count + 2 * len(sizes) + 2),
            out=ints(list(range(count))),
            state=ints([count, len(sizes), len(sizes), 0, seed % 2147483647 + 1]),
            limits=ints([*self.limits, largest * (isqrt(largest) + 1)]),
        )

    def _weights(self) -> list[float]:
        """Areas of what must be cut; each of them more than all optional pieces, which count by their value."""
        areas = [r.kind.area // self.step**2 for r in self.requests]
        optional = sum(area for area, r in zip(areas, self.requests, strict=True) if r.value)
        value = sum(r.value for r in self.requests)
        weights = zip(areas, self.requests, strict=True)
        return [r.value / value * optional if r.value else float(area + optional) for area, r in weights]


def _children(r: Ruins, node: int) -> Iterator[int]:
    child = int(r.nodes[nodes.FIRST, node])
    while child >= 0:
        yield child
        child = int(r.nodes[nodes.NEXT, child])


def _free_nodes(sizes: Sequence[Size], count: int) -> Table:
    """Sheets of which nothing is cut, and free nodes, each naming the next."""
    made = table(nodes.SHEET + 1, count, -1)
    made[nodes.CONTENT] = nodes.FREE
    made[nodes.NEXT] = range(1, count + 1)
    for number, (wide, high) in enumerate(sizes):
        sheet = (wide, high, -1, -1, -1, nodes.REST, -1, number)
        made[:, number] = sheet
    return made
