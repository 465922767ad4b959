"""Whether all pieces together fill one rectangle: a plan, a proof that there is none, or no answer within the bound.

The smaller half of every cut comes from a table of blocks that grows from small to large; see `descent.settle`.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from spreadwright.cutting.search import descent, speed
from spreadwright.cutting.search.kinds import Stock
from spreadwright.cutting.search.table import Table, new_table
from spreadwright.cutting.search.trees import Block, above, beside

MARKS = 4096

BLOCKS_AT_ONCE, LOOKS_AT_ONCE = 4000, 2_000_000
"""Work between two questions whether time is over, a few hundredths of a second."""


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


def settled(
    stock: Stock,
    width: int,
    height: int,
    most_blocks: int,
    most_steps: int,
    is_over: Callable[[], bool] = lambda: False,
) -> Answer:
    """How all pieces of the stock fill a rectangle of exactly their area.

    Args:
        most_blocks: Blocks of the table that are joined; below a few thousand this takes milliseconds.
        most_steps: Rectangles that are looked at on the way down.
        is_over: Asked every few hundredths of a second.
    """
    table = new_table(stock, width, height, 8 * most_blocks)
    half = width * height // 2
    for blocks in (*range(BLOCKS_AT_ONCE, most_blocks, BLOCKS_AT_ONCE), most_blocks):
        table.grow(half, blocks)
        if is_over():
            return Answer(Verdict.STOPPED)
    return settled_by(table, most_steps, table.complete >= half, is_over)


def settled_by(table: Table, most_steps: int, is_proof: bool, is_over: Callable[[], bool] = lambda: False) -> Answer:
    """The same with a table that has been grown as far as is wanted."""
    down = _descent(table, most_steps)
    found = descent.INTERRUPTED
    while found == descent.INTERRUPTED:
        found = int(descent.settle(table.blocks, down, LOOKS_AT_ONCE))
        if is_over():
            break
    if found > 0:
        return Answer(Verdict.FOUND, _tree(table, down.stack, found))
    if found == descent.FAILED and is_proof:
        return Answer(Verdict.IMPOSSIBLE)
    return Answer(Verdict.STOPPED)


def _descent(table: Table, most_steps: int) -> descent.Descent:
    words, levels = table.stock.packing.words, table.stock.pieces + 3
    stack, rest = speed.zeros(5 * levels), speed.zeros(words * levels)
    stack[0], stack[1] = table.width, table.height
    rest[:words] = speed.ints(list(table.stock.packing.total))
    return descent.Descent(stack, rest, speed.zeros(MARKS * (words + 2)), speed.ints([0, 1, most_steps]))


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
