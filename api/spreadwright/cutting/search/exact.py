"""Whether all pieces together fill one rectangle: a plan, a proof that there is none, or no answer within the bound.

The smaller half of every cut comes from a table of blocks that grows from small to large; see `loops.settle`.
"""

from dataclasses import dataclass
from enum import Enum

from spreadwright.cutting.search import loops, speed
from spreadwright.cutting.search.kinds import Stock
from spreadwright.cutting.search.table import Table, new_table
from spreadwright.cutting.search.trees import Block, above, beside

MARKS = 4096


class Verdict(Enum):
    """What a search can say."""

    FOUND = "found"
    IMPOSSIBLE = "impossible"
    STOPPED = "stopped"


@dataclass(frozen=True, slots=True)
class Answer:
    """A verdict, with the plan if one was found."""

    verdict: Verdict
    tree: Block | None = None


def settled(stock: Stock, width: int, height: int, most_blocks: int, most_steps: int) -> Answer:
    """How all pieces of the stock fill a rectangle of exactly their area.

    Args:
        most_blocks: Blocks of the table that are joined; below a few thousand this takes milliseconds.
        most_steps: Rectangles that are looked at on the way down.
    """
    table = new_table(stock, width, height, 8 * most_blocks)
    half = width * height // 2
    table.grow(half, most_blocks)
    return settled_by(table, most_steps, table.complete >= half)


def settled_by(table: Table, most_steps: int, is_proof: bool) -> Answer:
    """The same with a table that has been grown as far as is wanted."""
    words, levels = table.stock.packing.words, table.stock.pieces + 3
    stack, rest = speed.zeros(5 * levels), speed.zeros(words * levels)
    marks = speed.zeros(MARKS * (words + 2))
    wanted = speed.ints(list(table.stock.packing.total))
    found = loops.settle(table.blocks, table.width, table.height, wanted, marks, stack, rest, most_steps)
    if found > 0:
        return Answer(Verdict.FOUND, _tree(table, stack, int(found)))
    if found == 0 and is_proof:
        return Answer(Verdict.IMPOSSIBLE)
    return Answer(Verdict.STOPPED)


def _tree(table: Table, stack: speed.Ints, levels: int) -> Block:
    wide, high, _, _, number = (int(n) for n in stack[5 * levels - 5 : 5 * levels])
    tree = table.tree(number, wide, high)
    for level in reversed(range(levels - 1)):
        wide, high, _, turn, link = (int(n) for n in stack[5 * level : 5 * level + 5])
        area = int(table.blocks.area[link // 2])
        if turn == 0:
            tree = above(table.tree(link // 2, wide, area // wide), tree)
        else:
            tree = beside(table.tree(link // 2, area // high, high), tree)
    return tree
