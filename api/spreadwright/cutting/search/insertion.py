"""Plans with a rest: pieces cut one after the other, in orders that improve by trial.

Starts from the usual orders (by area, by sides) under every rule, then changes the best order a little, over and over:
pieces that found no place move to the front, others change places. What is no worse is kept.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from random import Random

from spreadwright.cutting.search import inserting, speed
from spreadwright.cutting.search.kinds import Kind, Size
from spreadwright.cutting.search.trees import Block, above, beside, piece, rest, turned

ORDERS: tuple[Callable[[Kind], tuple[int, ...]], ...] = (
    lambda k: (-k.area, -k.high, k.wide),
    lambda k: (-max(k.wide, k.high), -k.area),
    lambda k: (-min(k.wide, k.high), -k.area),
    lambda k: (-k.wide - k.high, -k.area),
)

RULES = tuple(product(range(3), range(4)))


@dataclass(frozen=True, slots=True)
class Request:
    """One piece to be cut.

    Attributes:
        group: Pieces of one group come from one sheet; -1 for none.
        value: What an optional piece is worth; 0 for one that must be cut.
    """

    kind: Kind
    group: int = -1
    value: int = 0


@dataclass(frozen=True, slots=True, order=True)
class Merit:
    """How good a packing is; smaller is better.

    Attributes:
        left_out: Pieces that must be cut and are not.
        sheets: Sheets that are cut.
        lost: Value of the optional pieces left out.
        emptiness: How far the sheets are from being either full or empty.
        gathered: Minus the area of the largest rest.
    """

    left_out: int
    sheets: int
    lost: int
    emptiness: int
    gathered: int


@dataclass(frozen=True, slots=True)
class Packing:
    """One tree a sheet that is cut, in the order of the sheets given, and the requests left out."""

    trees: tuple[Block, ...]
    left_out: tuple[int, ...]
    merit: Merit


class Inserter:
    """Cuts requests from sheets that are opened in the order given; limits of 0 allow anything."""

    def __init__(
        self,
        requests: Sequence[Request],
        sheets: Sequence[Size],
        seed: int,
        *,
        longest_cut: int = 0,
        narrowest: int = 0,
    ) -> None:
        self.requests = requests
        self.sheets = sheets
        self.rng = Random(seed)
        self.cutting = _cutting(requests, sheets, seed)
        self.cutting.limits[0], self.cutting.limits[1] = longest_cut, narrowest

    def packings(self, most_sheets: int, rounds: int, is_over: Callable[[], bool]) -> Iterator[Packing]:
        """Ever better packings with at most so many sheets."""
        best: tuple[Merit, list[int], int, int] | None = None
        for order, (fit, rule) in product(self._orders(), RULES):
            merit = self._tried(order, most_sheets, fit, rule, 0)
            if best is None or merit < best[0]:
                best = merit, order, fit, rule
                yield self._packing(merit)
            if is_over():
                return
        if best is None:
            return
        for _ in range(rounds):
            if is_over():
                return
            merit, order, fit, rule = best
            changed = self._changed(order, merit)
            if self.rng.random() < 0.1:
                fit, rule = self.rng.choice(RULES)
            trial = self._tried(changed, most_sheets, fit, rule, 0)
            if trial <= merit:
                best = trial, changed, fit, rule
                if trial < merit:
                    yield self._packing(trial)

    def left_out(self, order: list[int], fit: int, rule: int) -> list[int]:
        """The requests that find no place in this order."""
        self._tried(order, len(self.sheets), fit, rule, 0)
        return [int(i) for i in self.cutting.left_out[: int(self.cutting.state[3])]]

    def trees(self) -> tuple[Block, ...]:
        """The sheets cut by the order tried last."""
        c = self.cutting
        roots: dict[int, int] = {}
        for node in range(int(c.state[1])):
            roots.setdefault(int(c.node_sheet[node]), node)
        return tuple(self._tree(roots[sheet]) for sheet in sorted(roots))

    def _orders(self) -> list[list[int]]:
        def rank(i: int, key: Callable[[Kind], tuple[int, ...]]) -> tuple[object, ...]:
            request = self.requests[i]
            return (request.value > 0, -request.value, request.group < 0, key(request.kind))

        return [sorted(range(len(self.requests)), key=lambda i: rank(i, key)) for key in ORDERS]

    def _changed(self, order: list[int], merit: Merit) -> list[int]:
        changed = list(order)
        rng, most = self.rng, len(order)
        if merit.left_out and rng.random() < 0.5:
            out = [int(i) for i in self.cutting.left_out[: int(self.cutting.state[3])]]
            mover = rng.choice(out) if out else rng.choice(changed)
            changed.remove(mover)
            changed.insert(rng.randrange(most), mover)
            return changed
        for _ in range(rng.choice((1, 1, 2, 3))):
            i = rng.randrange(most)
            mover = changed.pop(i)
            j = rng.randrange(most) if rng.random() < 0.5 else max(0, min(most - 1, i + rng.randint(-6, 6)))
            changed.insert(j, mover)
        return changed

    def _tried(self, order: list[int], most_sheets: int, fit: int, rule: int, noise: int) -> Merit:
        c = self.cutting
        inserting.insert_all(c, speed.ints(order), min(most_sheets, len(self.sheets)), fit, rule, noise)
        out = [self.requests[int(i)] for i in c.left_out[: int(c.state[3])]]
        missing = sum(1 for r in out if not r.value)
        sheets = int(c.state[2])
        return Merit(
            left_out=missing and sum(r.kind.area for r in out if not r.value),
            sheets=sheets,
            lost=sum(r.value for r in out),
            emptiness=-int(inserting.squares_of_use(c)) // 20000,
            gathered=-int(inserting.largest_open(c)),
        )

    def _packing(self, merit: Merit) -> Packing:
        c = self.cutting
        return Packing(self.trees(), tuple(int(i) for i in c.left_out[: int(c.state[3])]), merit)

    def _tree(self, node: int) -> Block:
        c = self.cutting
        wide, high, number = int(c.node_wide[node]), int(c.node_high[node]), int(c.node_piece[node])
        if number < 0 or wide == 0 or high == 0:
            return rest(wide, high)
        kind, way, child = self.requests[number].kind, int(c.node_way[node]), int(c.node_next[node])
        leaf = piece(kind.wide, kind.high, kind)
        leaf = turned(leaf) if way >= 2 else leaf
        if way % 2 == 0:
            return above(beside(leaf, self._tree(child)), self._tree(child + 1))
        return beside(above(leaf, self._tree(child)), self._tree(child + 1))


def columns(requests: Sequence[Request], step: int = 1) -> dict[str, speed.Ints]:
    """What inner loops have to know of each request, lengths in steps."""
    return {
        "wide": speed.ints([r.kind.wide // step for r in requests]),
        "high": speed.ints([r.kind.high // step for r in requests]),
        "turns": speed.ints([int(len(r.kind.sides()) == 2) for r in requests]),
        "group": speed.ints([r.group for r in requests]),
    }


def _cutting(requests: Sequence[Request], sheets: Sequence[Size], seed: int) -> inserting.Cutting:
    n, nodes = len(requests), 2 * len(requests) + len(sheets) + 2
    groups = max((r.group for r in requests), default=-1) + 1
    return inserting.Cutting(
        **columns(requests),
        optional=speed.ints([int(r.value > 0) for r in requests]),
        sheet_wide=speed.ints([w for w, _ in sheets]),
        sheet_high=speed.ints([h for _, h in sheets]),
        node_wide=speed.zeros(nodes),
        node_high=speed.zeros(nodes),
        node_sheet=speed.zeros(nodes),
        node_piece=speed.zeros(nodes),
        node_way=speed.zeros(nodes),
        node_next=speed.zeros(nodes),
        open_nodes=speed.zeros(nodes),
        group_sheet=speed.zeros(max(1, groups)),
        state=speed.ints([0, 0, 0, 0, seed % 2147483647 + 1]),
        left_out=speed.zeros(n + 1),
        limits=speed.zeros(2),
    )
