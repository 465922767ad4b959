"""What a limited knapsack is asked: kinds of pieces with their counts and values; and what it answers."""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from spreadwright.cutting.search.counts import Packing, packing
from spreadwright.cutting.search.kinds import Kind, Size, common_step
from spreadwright.cutting.search.trees import Block

Stop = Callable[[], bool]

Listener = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Item:
    """Pieces of one kind: how many there are, and what one is worth; nothing is worth less than nought."""

    kind: Kind
    count: int
    value: int


@dataclass(frozen=True, slots=True)
class Yield:
    """What sheets give.

    Attributes:
        value: Of all pieces in the trees.
        bound: No plan is worth more.
        trees: One a sheet, of the sheet's size.
    """

    value: int
    bound: int
    trees: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Effort:
    """How much is tried before the search ends by itself, in work and not in time.

    Attributes:
        blocks: Blocks that the exact search holds; each takes about 150 bytes and 8 a word of packed counts.
        rounds: Times that plans are made with other scores after that.
        weighings: Times that weights on overused kinds are corrected.
    """

    blocks: int = 1_000_000
    rounds: int = 40
    weighings: int = 40


@dataclass(frozen=True, slots=True)
class Case:
    """Items that fit on the sheets, lengths divided by what is common to all of them.

    Attributes:
        ways: Width, height and the number of its item, for each way that a piece may lie.
        packing: How counts of the items are packed.
        kinds: What the items were before; the kinds in `items` have the number of the item as their tag.
        step: What lengths were divided by.
        is_whole: Whether nothing counts but a plan of all pieces.
    """

    items: tuple[Item, ...]
    sheets: tuple[Size, ...]
    ways: tuple[tuple[Size, int], ...]
    packing: Packing
    kinds: tuple[Kind, ...]
    step: int
    is_whole: bool = False

    @property
    def counts(self) -> tuple[int, ...]:
        """Copies of each item."""
        return tuple(item.count for item in self.items)

    @property
    def total(self) -> int:
        """Value of everything."""
        return sum(item.count * item.value for item in self.items)

    def sides(self) -> list[tuple[Size, int]]:
        """Each way with its count."""
        return [(size, self.items[number].count) for size, number in self.ways]

    def used(self, tree: Block) -> tuple[int, ...]:
        """Copies of each item in a tree."""
        found = Counter(leaf.kind.tag for leaf in tree.leaves() if leaf.kind)
        return tuple(found[number] for number in range(len(self.items)))

    def restored(self, tree: Block) -> Block:
        """The tree in lengths and kinds as they were given."""
        kind = tree.kind and self.kinds[tree.kind.tag]
        parts = tuple(self.restored(part) for part in tree.parts)
        return Block(tree.wide * self.step, tree.high * self.step, parts, tree.is_row, kind)


def case(items: Sequence[Item], sheets: Sequence[Size], *, is_whole: bool = False) -> Case:
    """The items that are worth something and fit, the sheets, and no more copies than fit by area."""
    useful = [i for i in items if i.count > 0 and i.value > 0 and any(_fits(i.kind, sheet) for sheet in sheets)]
    step = common_step([*sheets, *((i.kind.wide, i.kind.high) for i in useful)])
    small_sheets = tuple((w // step, h // step) for w, h in sheets)
    small = tuple(_smaller(item, number, small_sheets, step) for number, item in enumerate(useful))
    ways = tuple((size, number) for number, item in enumerate(small) for size in item.kind.sides())
    kinds = tuple(item.kind for item in useful)
    return Case(small, small_sheets, ways, packing([item.count for item in small]), kinds, step, is_whole)


def _fits(kind: Kind, sheet: Size) -> bool:
    return any(w <= sheet[0] and h <= sheet[1] for w, h in kind.sides())


def _smaller(item: Item, number: int, sheets: tuple[Size, ...], step: int) -> Item:
    kind = replace(item.kind, wide=item.kind.wide // step, high=item.kind.high // step, tag=number)
    return Item(kind, min(item.count, sum(w * h // kind.area for w, h in sheets)), item.value)


def single(case: Case, sheet: Size, values: Sequence[int], counts: Sequence[int]) -> Case:
    """One sheet of a case, with other values and counts of its items; an item worth nothing is not used."""
    items = tuple(replace(i, value=max(v, 0), count=n) for i, v, n in zip(case.items, values, counts, strict=True))
    is_open = [item.value > 0 and item.count > 0 and _fits(item.kind, sheet) for item in items]
    ways = tuple((size, number) for size, number in case.ways if is_open[number])
    items = tuple(i if is_it else replace(i, value=0, count=0) for i, is_it in zip(items, is_open, strict=True))
    return replace(case, items=items, sheets=(sheet,), ways=ways, packing=packing([i.count for i in items]))
