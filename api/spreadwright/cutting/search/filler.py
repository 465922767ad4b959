"""Random filling by rows and columns, hard pieces first, and the exact search for what is left at the end.

One try peels row after row, or column after column, off a sheet. Each is filled by `strips.fill`, which takes the
pieces that are hardest to place; so what is left in the end are few pieces that go with many others, and for these the
exact search decides at once. Most tries fail, but thousands fit in a second.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from spreadwright.cutting.search import speed, strips
from spreadwright.cutting.search.exact import settled
from spreadwright.cutting.search.kinds import Size, Stock, counted
from spreadwright.cutting.search.table import Table, new_table
from spreadwright.cutting.search.trees import Block, above, beside

FAILED = 1 << 14


@dataclass(frozen=True, slots=True)
class Manner:
    """How one filler works.

    Attributes:
        blocks: Blocks of its table that are joined because they are small.
        alike: Further ones that are joined because they are of few kinds.
        spread: By how much each further kind puts a block back.
        tries: Candidates tried in each rectangle, and rows tried in each sheet.
        noise: How far chance may raise a candidate, in 1024ths.
        last: With so many pieces left the exact search decides.
        last_blocks: Blocks of its table.
        steps: Rectangles looked at for one row.
        length_weight: What a piece's longer side counts against its shorter one, in halves.
    """

    blocks: int = 300
    alike: int = 1500
    spread: int = 2
    tries: int = 3
    noise: int = 1000
    last: int = 24
    last_blocks: int = 2500
    steps: int = 100
    length_weight: int = 3


class Filler:
    """Tries to fill sheets with all pieces of a stock."""

    def __init__(self, stock: Stock, sizes: Sequence[Size], manner: Manner, seed: int) -> None:
        self.stock = stock
        self.manner = manner
        self.sizes = sizes
        self.work = 0
        width, height = _bounding(sizes, stock.all_turn)
        self.table = new_table(stock, width, height, 8 * (manner.blocks + manner.alike))
        self.table.grow(width * height, manner.blocks)
        self.table.grow_alike(manner.blocks + manner.alike, manner.spread)
        self.filling = _filling(self.table, manner, seed)

    def attempt(self, is_over: Callable[[], bool]) -> list[Block] | None:
        """The trees of all sheets, if this one try succeeds."""
        f = self.filling
        f.state[3] += 1
        f.state[0] = 0
        for k, total in enumerate(self.stock.packing.total):
            f.free[k] = total
        return self._sheet(0, is_over)

    def _sheet(self, number: int, is_over: Callable[[], bool]) -> list[Block] | None:
        size = self.sizes[number]
        if number == len(self.sizes) - 1:
            tree = self._peel(*size, is_over)
            return None if tree is None else [tree]
        f = self.filling
        for _ in range(self.manner.tries):
            start = int(f.state[0])
            self.work += 2
            tree = self._one_block(*size) or self._some(*size, size[0] * size[1] // 3, is_over)
            if tree is not None:
                others = self._sheet(number + 1, is_over)
                if others is not None:
                    return [tree, *others]
            strips.undo(self.table.blocks, f, start)
            if is_over():
                return None
        return None

    def _one_block(self, width: int, height: int) -> Block | None:
        """A sheet that is a block of the table as it is."""
        start = int(self.filling.state[0])
        self.filling.state[1] = 1
        if strips.fill(self.table.blocks, self.filling, width, height, 0):
            return self._replayed(start, width, height)[0]
        return None

    def _some(self, width: int, height: int, small: int, is_over: Callable[[], bool]) -> Block | None:
        """A rectangle filled with any free pieces: rows and columns until little is left, then whatever fills that."""
        b, f = self.table.blocks, self.filling
        if width == 0 or height == 0:
            return Block(width, height)
        for _ in range(self.manner.tries):
            start = int(f.state[0])
            f.state[1] = 2 * self.manner.steps
            self.work += 1
            if width * height <= small:
                filled = strips.fill(b, f, width, height, 0)
                return self._replayed(start, width, height)[0] if filled else None
            if strips.fill(b, f, width, height, 1):
                tree, is_row = self._replayed_strip(start, width, height)
                rest = (width, height - tree.high) if is_row else (width - tree.wide, height)
                other = self._some(*rest, small, is_over)
                if other is not None:
                    return above(tree, other) if is_row else beside(tree, other)
                strips.undo(b, f, start)
            if is_over():
                return None
        return None

    def _peel(self, width: int, height: int, is_over: Callable[[], bool]) -> Block | None:
        b, f = self.table.blocks, self.filling
        left = self.stock.packing.counts(f.free)
        if sum(left) <= self.manner.last:
            return self._settled(left, width, height)
        for _ in range(self.manner.tries):
            start = int(f.state[0])
            f.state[1] = self.manner.steps
            self.work += 1
            if strips.fill(b, f, width, height, 1):
                tree, is_row = self._replayed_strip(start, width, height)
                if is_row:
                    below = self._peel(width, height - tree.high, is_over)
                    if below is not None:
                        return above(tree, below)
                else:
                    right = self._peel(width - tree.wide, height, is_over)
                    if right is not None:
                        return beside(tree, right)
                strips.undo(b, f, start)
            if is_over():
                return None
        return None

    def _settled(self, left: Sequence[int], width: int, height: int) -> Block | None:
        if width == 0 or height == 0:
            return Block(width, height)
        self.work += 4
        few = counted(Counter({k: n for k, n in zip(self.stock.kinds, left, strict=True) if n}))
        return settled(few, width, height, self.manner.last_blocks, self.manner.last_blocks).tree

    def _replayed_strip(self, start: int, width: int, height: int) -> tuple[Block, bool]:
        """The row or column that the trail says, and whether it is a row."""
        what, number = int(self.filling.trail[start]), int(self.filling.trail[start + 1])
        block, is_row = self._corner(what, number)
        if is_row:
            other, _ = self._replayed(start + 2, width - block.wide, block.high)
            return beside(block, other), True
        other, _ = self._replayed(start + 2, block.wide, height - block.high)
        return above(block, other), False

    def _corner(self, what: int, number: int) -> tuple[Block, bool]:
        b = self.table.blocks
        wide, high = int(b.wide[number]), int(b.high[number])
        if what in (strips.TURNED_ROW, strips.TURNED_COLUMN):
            wide, high = high, wide
        return self.table.tree(number, wide, high), what in (strips.ROW, strips.TURNED_ROW)

    def _replayed(self, at: int, width: int, height: int) -> tuple[Block, int]:
        """The tree of a filled rectangle as the trail tells it, and where the trail goes on."""
        if width == 0 or height == 0:
            return Block(width, height), at
        what, number = int(self.filling.trail[at]), int(self.filling.trail[at + 1])
        area = int(self.table.blocks.area[number])
        if what == strips.EXACT:
            return self.table.tree(number, width, height), at + 2
        if what == strips.ABOVE:
            block = self.table.tree(number, width, area // width)
            below, at = self._replayed(at + 2, width, height - block.high)
            return above(block, below), at
        if what == strips.BESIDE:
            block = self.table.tree(number, area // height, height)
            right, at = self._replayed(at + 2, width - block.wide, height)
            return beside(block, right), at
        block, is_row = self._corner(what, number)
        if is_row:
            other, at = self._replayed(at + 2, width - block.wide, block.high)
            below, at = self._replayed(at, width, height - block.high)
            return above(beside(block, other), below), at
        other, at = self._replayed(at + 2, block.wide, height - block.high)
        right, at = self._replayed(at, width - block.wide, height)
        return beside(above(block, other), right), at


def _filling(table: Table, manner: Manner, seed: int) -> strips.Filling:
    stock, b = table.stock, table.blocks
    hardness = [8 * (k.high * manner.length_weight + 2 * k.wide) for k in stock.kinds]
    if not stock.all_turn:
        hardness = [8 * (max(k.wide, k.high) * manner.length_weight + 2 * min(k.wide, k.high)) for k in stock.kinds]
    blocks = int(b.state[0])
    score, counts = speed.zeros(blocks), speed.zeros(len(hardness) + 1)
    word, shift, mask = (speed.ints(list(x)) for x in (stock.packing.word, stock.packing.shift, stock.packing.mask))
    hard = speed.ints(hardness)
    holders = speed.zeros(strips.score_blocks(b, hard, word, shift, mask, score, counts))
    strips.list_holders(b, word, shift, mask, counts, holders)
    return strips.Filling(
        hardness=hard,
        score=score,
        word=word,
        shift=shift,
        mask=mask,
        first=counts,
        holders=holders,
        free=speed.ints(list(stock.packing.total)),
        trail=speed.zeros(4 * stock.pieces + 8),
        frames=speed.zeros(strips.FRAME * (2 * stock.pieces + 8)),
        picks=speed.zeros(strips.PICKS * (2 * stock.pieces + 8)),
        failed=speed.zeros(FAILED),
        state=speed.ints([0, 0, seed % 2147483647 + 1, 0, manner.tries, manner.noise, _shortest(stock)]),
    )


def _bounding(sizes: Sequence[Size], may_turn: bool) -> Size:
    """The size in which a block must fit to fit in any of these."""
    ways = [(max(s), min(s)) for s in sizes] if may_turn else sizes
    return max(w for w, _ in ways), max(h for _, h in ways)


def _shortest(stock: Stock) -> int:
    return min(min(k.wide, k.high) for k in stock.kinds)
