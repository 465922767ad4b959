"""The exact search of one sheet: a pool of blocks that grows from single pieces, best bound first."""

from dataclasses import dataclass

from spreadwright.cutting.search import knapsack_join as loops
from spreadwright.cutting.search import speed
from spreadwright.cutting.search.knapsack_bound import Weights
from spreadwright.cutting.search.knapsack_grid import Grid
from spreadwright.cutting.search.knapsack_items import Case
from spreadwright.cutting.search.knapsack_join import Ground, Groups, Pool
from spreadwright.cutting.search.knapsack_rounds import padded
from spreadwright.cutting.search.speed import Ints
from spreadwright.cutting.search.trees import Block, above, beside, piece

FIRST_ROOM = 1 << 15

SLICE = 50_000
"""Work between two questions whether time is over, a tenth of a second at most."""


@dataclass
class Search:
    """Blocks so far; `pool` is replaced by a larger one when it is full."""

    case: Case
    weights: Weights
    ground: Ground
    groups: Groups
    pool: Pool

    @property
    def value(self) -> int:
        """What has to be exceeded, or has been reached."""
        return int(self.pool.state[loops.BEST])

    @property
    def is_finished(self) -> bool:
        """Whether no open block can lead to more."""
        return not self.pool.state[loops.HEAP] and self.pool.state[loops.CURRENT] < 0

    @property
    def bound(self) -> int:
        """No plan is worth more."""
        if self.is_finished:
            return self.value
        current, pool = int(self.pool.state[loops.CURRENT]), self.pool
        waiting = [int(pool.heap[0])] if pool.state[loops.HEAP] else []
        most = max(int(pool.bound[block]) for block in (*waiting, *[current][: current + 1]))
        return max(self.value, (most + self.weights.returned(self.case)) // self.weights.scale)

    def advance(self, most_blocks: int) -> bool:
        """Closes some more blocks; whether there is room for further ones within `most_blocks`."""
        allowed = speed.zeros(self.case.packing.words)
        loops.advance(self.pool, self.groups, self.ground, allowed, SLICE)
        if not self.pool.state[loops.IS_FULL]:
            return True
        room = min(2 * len(self.pool.wide), most_blocks)
        if room > len(self.pool.wide):
            self.pool = enlarged(self.pool, room, self.case.packing.words)
            self.groups = enlarged_groups(self.groups, room)
            return True
        return False

    def tree(self) -> Block | None:
        """The best plan, if one better than what was known at first has been found."""
        number = int(self.pool.state[loops.BEST_BLOCK])
        width, height = self.case.sheets[0]
        return None if number < 0 else padded(self._tree(number), width, height)

    def _tree(self, number: int) -> Block:
        pool = self.pool
        wide, high = int(pool.wide[number]), int(pool.high[number])
        left, right = int(pool.left[number]), int(pool.right[number])
        if left < 0:
            return piece(wide, high, self.case.items[right].kind)
        first, second = self._tree(left), self._tree(right)
        if pool.axis[number]:
            return beside(padded(first, first.wide, high), padded(second, second.wide, high))
        return above(padded(first, wide, first.high), padded(second, wide, second.high))


def search(case: Case, grid: Grid, weights: Weights, rest: Ints, value: int) -> Search:
    """The search that knows single pieces only and wants more than a value."""
    scale, returned = weights.scale, weights.returned(case)
    fields = zip(case.packing.word, case.packing.shift, case.packing.mask, case.items, strict=True)
    rows = len(grid.down.sums)
    width, height = case.sheets[0]
    ground = Ground(
        rest=rest,
        column=grid.across.below,
        row=grid.down.below,
        sides=speed.ints([width, height, grid.across.unit, grid.down.unit, rows, int(grid.is_exact)]),
        guard=speed.ints(list(case.packing.guard)),
        total=speed.ints(list(case.packing.total)),
        fields=speed.ints([n for w, s, m, item in fields for n in (w, s, m, item.count, item.kind.area)]),
        cut=speed.ints([(value + 1) * scale - returned - 1]),
        scale=speed.ints([scale, returned]),
    )
    groups = Groups(speed.filled(grid.cells, -1), *(speed.zeros(FIRST_ROOM) for _ in range(5)))
    found = Search(case, weights, ground, groups, empty_pool(FIRST_ROOM, case.packing.words, value))
    _lay_pieces(found)
    return found


def _lay_pieces(found: Search) -> None:
    scores = found.weights.scores(found.case)
    width, height = found.case.sheets[0]
    for (wide, high), number in found.case.ways:
        pool, words = found.pool, found.case.packing.words
        new = int(pool.state[loops.BLOCKS])
        pool.count[new * words : new * words + words] = 0
        pool.count[new * words + found.case.packing.word[number]] = 1 << found.case.packing.shift[number]
        pool.worth[new], pool.score[new] = found.case.items[number].value, scores[number]
        pool.left[new], pool.right[new] = -1, number
        if wide <= width and high <= height:
            loops.offer(pool, found.ground, wide, high, 1 << 60)


def empty_pool(room: int, words: int, value: int) -> Pool:
    """A pool of no blocks with room for some, that wants more than a value."""
    wide, high, group, worth, score, bound, left, right, axis, heap = (speed.zeros(room) for _ in range(10))
    count, after, slots = speed.zeros(room * words), speed.filled(room, -1), speed.filled(_slots(room), -1)
    state = speed.ints([0, 0, 0, 0, value, -1, 0, 0, -1, 0])
    return Pool(wide, high, group, worth, score, bound, left, right, axis, count, after, heap, slots, state)


def _slots(room: int) -> int:
    return 1 << (2 * room - 1).bit_length()


def enlarged(pool: Pool, room: int, words: int) -> Pool:
    """The same blocks with room for more."""
    larger = empty_pool(room, words, 0)
    for old, new in zip(pool, larger, strict=True):
        if old is not pool.slots:
            new[: len(old)] = old
    larger.state[loops.IS_FULL] = 0
    loops.place(larger, words)
    return larger


def enlarged_groups(groups: Groups, room: int) -> Groups:
    """The same groups with room for more."""
    larger = Groups(groups.number, *(speed.zeros(room) for _ in range(5)))
    for old, new in zip(groups[1:], larger[1:], strict=True):
        new[: len(old)] = old
    return larger
