from itertools import combinations

import pytest

from cutting.brute import fills
from cutting.cutter import cut_block
from spreadwright.cutting.search.kinds import kind, stock
from spreadwright.cutting.search.table import new_table

PIECES = [(2, 3), (2, 3), (1, 3), (4, 2), (3, 3), (1, 1)]


def grown(may_turn, area):
    made = new_table(stock(kind(w, h, may_turn) for w, h in PIECES), 7, 7, 4000)
    made.grow(area, 4000)
    return made


def by_brute_force(may_turn, area):
    """Every size with the pieces that fill it, as a set of (width, height, sorted pieces)."""
    found = set()
    for n in range(1, len(PIECES) + 1):
        for chosen in {tuple(sorted(c)) for c in combinations(PIECES, n)}:
            total = sum(w * h for w, h in chosen)
            for width in range(1, 8):
                height = total // width
                if total % width == 0 and height <= 7 and total <= area:
                    if may_turn and width > height:
                        continue
                    if fills(chosen, width, height, may_turn=may_turn):
                        found.add((width, height, tuple(sorted(tuple(sorted(p)) if may_turn else p for p in chosen))))
    return found


@pytest.mark.parametrize("may_turn", [True, False])
def test_table_is_complete_up_to_its_area(may_turn):
    table = grown(may_turn, 24)
    assert table.complete == 24
    found = set()
    for i in range(int(table.blocks.state[0])):
        tree = table.tree(i, int(table.blocks.wide[i]), int(table.blocks.high[i]))
        kinds = (leaf.kind for leaf in tree.leaves())
        found.add((tree.wide, tree.high, tuple(sorted((k.wide, k.high) for k in kinds))))
    assert found == by_brute_force(may_turn, 24)


def test_every_block_is_cut_from_its_tree():
    table = grown(True, 30)
    for i in range(int(table.blocks.state[0])):
        wide, high = int(table.blocks.wide[i]), int(table.blocks.high[i])
        for size in ((wide, high), (high, wide)):
            pieces = cut_block(table.tree(i, *size), *size)
            assert sum(w * h for w, h in pieces) == wide * high


def test_full_table_says_how_far_it_is_complete():
    table = new_table(stock(kind(w, h) for w, h in PIECES), 7, 7, 4000)
    table.grow(49, 5)
    known = by_brute_force(True, table.complete)
    sizes = {(int(w), int(h)) for w, h in zip(table.blocks.wide, table.blocks.high, strict=True)}
    assert {(w, h) for w, h, _ in known} <= sizes
