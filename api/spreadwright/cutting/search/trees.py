"""Cut trees as the search knows them: a rectangle is a piece, a rest, or two parts that a through cut makes."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from spreadwright.cutting.search.kinds import Kind, Size


@dataclass(frozen=True, slots=True)
class Block:
    """A rectangle and how it is made.

    Attributes:
        parts: The two parts; none for a piece or a rest.
        is_row: Whether the parts lie side by side (one left of the other) instead of one above the other.
        kind: What piece it is; None for a rest and for what is cut further.
    """

    wide: int
    high: int
    parts: tuple["Block", ...] = ()
    is_row: bool = False
    kind: Kind | None = None

    @property
    def size(self) -> Size:
        """Width and height."""
        return self.wide, self.high

    @property
    def is_rest(self) -> bool:
        """Whether nothing is made of it."""
        return self.kind is None and not self.parts

    def leaves(self) -> Iterator["Block"]:
        """Pieces and rests, from the left and from the top."""
        if not self.parts:
            yield self
        for part in self.parts:
            yield from part.leaves()


def piece(wide: int, high: int, kind: Kind) -> Block:
    """A piece as it lies."""
    return Block(wide, high, kind=kind)


def rest(wide: int, high: int) -> Block:
    """A rectangle that nothing is made of."""
    return Block(wide, high)


def above(top: Block, bottom: Block) -> Block:
    """Two blocks of equal width, one above the other; one of no height is left out."""
    if top.high == 0 or bottom.high == 0:
        return top if bottom.high == 0 else bottom
    return Block(top.wide, top.high + bottom.high, (top, bottom), is_row=False)


def beside(left: Block, right: Block) -> Block:
    """Two blocks of equal height, side by side; one of no width is left out."""
    if left.wide == 0 or right.wide == 0:
        return left if right.wide == 0 else right
    return Block(left.wide + right.wide, left.high, (left, right), is_row=True)


def scaled(block: Block, step: int) -> Block:
    """The same tree with all lengths multiplied."""
    if step == 1:
        return block
    kind = block.kind and replace(block.kind, wide=block.kind.wide * step, high=block.kind.high * step)
    parts = tuple(scaled(part, step) for part in block.parts)
    return Block(block.wide * step, block.high * step, parts, block.is_row, kind)


def turned(block: Block) -> Block:
    """The same block lying on its side: rows become columns."""
    return Block(block.high, block.wide, tuple(turned(p) for p in block.parts), not block.is_row, block.kind)
