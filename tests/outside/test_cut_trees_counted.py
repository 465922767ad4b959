"""Cut trees against published counts: OEIS A006318 (large Schröder numbers) and A151374."""

from functools import cache

import pytest

from spreadwright.cutting.plan import strips
from spreadwright.cutting.search.kinds import kind
from spreadwright.cutting.search.trees import Block, piece

SCHRODER = [1, 2, 6, 22, 90, 394, 1806]
RAW = [1, 2, 8, 40, 224, 1344, 8448]


@cache
def binary_trees(pieces):
    """Every tree of single cuts, each making columns or rows."""
    if pieces == 1:
        return (piece(1, 1, kind(1, 1)),)
    return tuple(
        Block(1, 1, (a, b), is_row)
        for n in range(1, pieces)
        for a in binary_trees(n)
        for b in binary_trees(pieces - n)
        for is_row in (True, False)
    )


def shape(block):
    """What a tree looks like once parallel cuts are one split."""
    return (block.is_row, *map(shape, strips(block))) if block.parts else ()


@pytest.mark.parametrize("pieces", range(1, 8))
def test_parallel_cuts_in_one_split_leave_schroder_numbers(pieces):
    trees = binary_trees(pieces)
    assert len(trees) == RAW[pieces - 1]
    assert len({shape(tree) for tree in trees}) == SCHRODER[pieces - 1]
