"""The kinds of pieces that a search arranges: sizes, counts, whether they may turn. Whole numbers without a unit."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import gcd

from spreadwright.cutting.search.counts import Packing, packing

Size = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Kind:
    """Pieces that nothing tells apart; one that may turn has its shorter side as `wide`.

    Attributes:
        tag: Tells pieces of one size apart that the caller needs to know apart.
    """

    wide: int
    high: int
    may_turn: bool = True
    tag: int = 0

    @property
    def area(self) -> int:
        """Width times height."""
        return self.wide * self.high

    def sides(self) -> tuple[Size, ...]:
        """Width and height in each way it may lie."""
        if self.may_turn and self.wide != self.high:
            return (self.wide, self.high), (self.high, self.wide)
        return ((self.wide, self.high),)


def kind(wide: int, high: int, may_turn: bool = True, tag: int = 0) -> Kind:
    """The kind of a piece, the same for a piece that may turn however it is given."""
    if may_turn and wide > high:
        wide, high = high, wide
    return Kind(wide, high, may_turn or wide == high, tag)


@dataclass(frozen=True, slots=True)
class Stock:
    """All pieces by kind, the largest kinds first, and how their counts are packed."""

    kinds: tuple[Kind, ...]
    counts: tuple[int, ...]
    packing: Packing

    @property
    def pieces(self) -> int:
        """How many pieces there are."""
        return sum(self.counts)

    @property
    def area(self) -> int:
        """Area of all pieces."""
        return sum(k.area * n for k, n in zip(self.kinds, self.counts, strict=True))

    @property
    def all_turn(self) -> bool:
        """Whether every piece may turn."""
        return all(k.may_turn for k in self.kinds)


def stock(pieces: Iterable[Kind]) -> Stock:
    """The pieces sorted into kinds."""
    return counted(Counter(pieces))


def counted(counts: Counter[Kind]) -> Stock:
    """Kinds with their counts, the largest first."""
    kinds = tuple(sorted((k for k in counts if counts[k]), key=lambda k: (-k.area, -k.high, k.wide, k.may_turn, k.tag)))
    numbers = tuple(counts[k] for k in kinds)
    return Stock(kinds, numbers, packing(numbers))


def divided(stock: Stock, step: int) -> Stock:
    """The same pieces in a unit `step` times as long."""
    smaller = (replace(k, wide=k.wide // step, high=k.high // step) for k in stock.kinds)
    return counted(Counter(dict(zip(smaller, stock.counts, strict=True))))


def common_step(sizes: Iterable[Size]) -> int:
    """The largest number that divides all sides."""
    return gcd(*(side for size in sizes for side in size)) or 1


def reachable(sides: Sequence[tuple[int, int]], most: int) -> int:
    """Sums up to `most` of at most so many of each side, as bits.

    >>> bin(reachable([(3, 2), (5, 1)], 9))
    '0b101101001'
    """
    sums = 1
    keep = (1 << (most + 1)) - 1
    for side, count in sides:
        for _ in range(min(count, most // side)):
            sums |= (sums << side) & keep
    return sums
