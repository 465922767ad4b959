from functools import cache
from itertools import combinations, pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from spreadwright.cutting.reslicing import easiest, handling
from spreadwright.cutting.search.kinds import kind
from spreadwright.cutting.search.trees import Block, above, beside, piece


@st.composite
def trees(draw, wide=8, high=8, depth=3):
    """Dissections with many lines that run through both ways."""
    ways = [w for w, side in ((True, wide), (False, high)) if side > 1]
    if not depth or not ways or draw(st.integers(0, 3)) == 0:
        return piece(wide, high, kind(wide, high))
    is_row = draw(st.sampled_from(ways))
    at = draw(st.sampled_from([n for n in (1, 2, 4, 6) if n < (wide if is_row else high)]))
    if is_row:
        return beside(draw(trees(at, high, depth - 1)), draw(trees(wide - at, high, depth - 1)))
    return above(draw(trees(wide, at, depth - 1)), draw(trees(wide, high - at, depth - 1)))


def places(tree, left=0, top=0):
    if not tree.parts:
        return [(tree.wide, tree.high)]
    return [place for part in tree.parts for place in places(part)]


def least_turns(tree):
    """Of all trees that make the same parts where they lie: every set of parallel lines may be cut at once."""

    def laid(block, left, top):
        if not block.parts:
            return [(left, top, left + block.wide, top + block.high)]
        found = []
        for part in block.parts:
            found += laid(part, left, top)
            left, top = (left + part.wide, top) if block.is_row else (left, top + part.high)
        return found

    @cache
    def splits(rects):
        if len(rects) == 1:
            return 0
        best = 10**6
        for axis in (0, 1):
            low, high = min(r[axis] for r in rects), max(r[axis + 2] for r in rects)
            inner = sorted({r[axis] for r in rects} - {low})
            lines = [x for x in inner if not any(r[axis] < x < r[axis + 2] for r in rects)]
            for number in range(1, len(lines) + 1):
                for chosen in combinations(lines, number):
                    ends = [low, *chosen, high]
                    parts = [tuple(r for r in rects if a <= r[axis] and r[axis + 2] <= b) for a, b in pairwise(ends)]
                    best = min(best, 1 + sum(map(splits, parts)))
        return best

    return max(0, splits(tuple(laid(tree, 0, 0))) - 1)


@settings(deadline=None, max_examples=200)
@given(trees())
def test_the_same_parts_come_with_no_more_handling(tree):
    easier = easiest(tree)
    assert sorted(places(easier)) == sorted(places(tree))
    assert (easier.wide, easier.high) == (tree.wide, tree.high)
    assert handling(easier) <= handling(tree)


@settings(deadline=None, max_examples=200)
@given(trees())
def test_no_other_tree_of_the_same_parts_takes_fewer_turns(tree):
    assert handling(easiest(tree))[1] == least_turns(tree)


def test_a_grid_is_cut_along_its_fewer_strips():
    cell = piece(2, 3, kind(2, 3))
    column = Block(2, 6, (cell, cell), is_row=False)
    grid = Block(8, 6, (column,) * 4, is_row=True)
    assert handling(grid) == (7, 4, 5)
    assert handling(easiest(grid)) == (7, 2, 3)


def test_equal_strips_are_cut_with_one_setting():
    wide, slim = piece(3, 4, kind(3, 4)), piece(1, 4, kind(1, 4))
    row = Block(9, 4, (wide, slim, wide, slim, slim), is_row=True)
    assert handling(row)[2] == 3 and handling(easiest(row))[2] == 2


def test_a_part_without_an_equal_stays_on_the_board():
    wide, slim = piece(3, 4, kind(3, 4)), piece(1, 4, kind(1, 4))
    row = Block(5, 4, (slim, slim, wide), is_row=True)
    assert [part.wide for part in easiest(row).parts] == [3, 1, 1]
    assert handling(easiest(row))[2] == 1
