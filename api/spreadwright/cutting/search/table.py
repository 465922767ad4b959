"""A table of blocks for one set of pieces, and its blocks as trees."""

from dataclasses import dataclass

from spreadwright.cutting.search import loops, speed
from spreadwright.cutting.search.kinds import Stock
from spreadwright.cutting.search.trees import Block, above, beside, piece


@dataclass(frozen=True, slots=True)
class Table:
    """Blocks that the pieces of a stock make inside a rectangle."""

    stock: Stock
    width: int
    height: int
    blocks: loops.Blocks

    @property
    def complete(self) -> int:
        """The area up to which every block that fits is known."""
        return int(self.blocks.state[3])

    def grow(self, most_area: int, most_blocks: int) -> None:
        """Joins blocks, smallest first, up to an area or a number of blocks."""
        loops.grow(self.blocks, self.width, self.height, most_area, most_blocks)

    def grow_alike(self, most_blocks: int, spread: int) -> None:
        """Joins further blocks, those of few kinds first; the area up to which all are known stays as it is."""
        loops.prefer_alike(self.blocks, spread)
        loops.grow(self.blocks, self.width, self.height, 1 << 60, most_blocks)

    def tree(self, number: int, wide: int, high: int) -> Block:
        """A block as it lies in a rectangle of its size."""
        b = self.blocks
        is_turned = b.wide[number] != wide or b.high[number] != high
        left, right = int(b.left[number]), int(b.right[number])
        if left < 0:
            return piece(wide, high, self.stock.kinds[right])
        if (b.axis[number] == 0) != is_turned:
            first = int(b.area[left]) // wide
            return above(self.tree(left, wide, first), self.tree(right, wide, high - first))
        first = int(b.area[left]) // high
        return beside(self.tree(left, first, high), self.tree(right, wide - first, high))


def new_table(stock: Stock, width: int, height: int, room: int) -> Table:
    """The table that knows only the single pieces that fit; it can hold `room` blocks."""
    words = stock.packing.words
    longest = max(width, height)
    apart = 0 if stock.all_turn else longest + 1
    room += 2 * len(stock.kinds)
    blocks = loops.Blocks(
        guard=speed.ints(list(stock.packing.guard)),
        total=speed.ints(list(stock.packing.total)),
        apart=speed.ints([apart]),
        wide=speed.zeros(room),
        high=speed.zeros(room),
        area=speed.zeros(room),
        rank=speed.zeros(room),
        mix=speed.filled(room, 1),
        sole=speed.zeros(room),
        count=speed.zeros(room * words),
        left=speed.filled(room, -1),
        right=speed.zeros(room),
        axis=speed.zeros(room),
        slots=speed.filled(2 * room + 1, -1),
        head=speed.filled(longest + 1 + apart, -1),
        after=speed.filled(2 * room, -1),
        heap=speed.zeros(room),
        state=speed.zeros(5),
    )
    table = Table(stock, width, height, blocks)
    for number, kind in enumerate(stock.kinds):
        for wide, high in kind.sides()[: 2 if apart else 1]:
            is_inside = (wide <= width and high <= height) or (not apart and high <= width and wide <= height)
            if is_inside:
                _add_piece(table, number, wide, high)
    return table


def _add_piece(table: Table, kind: int, wide: int, high: int) -> None:
    b, i, words = table.blocks, int(table.blocks.state[0]), len(table.blocks.guard)
    one = table.stock.packing.packed([int(k == kind) for k in range(len(table.stock.kinds))])
    for k in range(words):
        b.count[i * words + k] = one[k]
    b.wide[i], b.high[i], b.area[i], b.right[i] = wide, high, wide * high, kind
    b.rank[i], b.sole[i] = wide * high, kind
    b.slots[loops.slot_of(b, wide, high, b.count, i * words)] = i
    b.state[0] = i + 1
    loops.push(b, i)
