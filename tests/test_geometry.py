from hypothesis import given
from hypothesis import strategies as st

from spreadwright.geometry import Rect, Size, area, uncovered
from strategies import rects
from tiling import is_tiled


def cells(rect: Rect) -> set[tuple[int, int]]:
    return {(x, y) for x in range(rect.left, rect.right) for y in range(rect.top, rect.bottom)}


@given(rects(), rects())
def test_overlap_means_sharing_a_cell(a, b):
    assert a.overlaps(b) == b.overlaps(a) == bool(cells(a) & cells(b))


@given(rects(), rects())
def test_containing_means_having_every_cell(a, b):
    assert a.contains(b) == (cells(b) <= cells(a))


@given(rects(), st.lists(rects(), max_size=6))
def test_uncovered_part_is_what_no_cover_hides(rect, covers):
    left = uncovered(rect, covers)
    hidden = set().union(*map(cells, covers)) if covers else set()
    assert set().union(*map(cells, left)) == cells(rect) - hidden
    assert area(left) == len(cells(rect) - hidden)


@given(rects(), st.lists(rects(), min_size=1, max_size=4))
def test_tiling_has_neither_gap_nor_overlap(rect, tiles):
    once = sum(len(cells(tile)) for tile in tiles) == len(set().union(*map(cells, tiles)))
    assert is_tiled(rect, tiles) == (once and set().union(*map(cells, tiles)) == cells(rect))


@given(rects(), st.integers(1, 4), st.integers(1, 4))
def test_two_halves_tile_the_whole(rect, left, top):
    wide = Rect(rect.left, rect.top, rect.width + left, rect.height)
    assert is_tiled(wide, [rect, Rect(rect.right, rect.top, left, rect.height)])


def test_size_turns_and_fits():
    assert Size(3, 5).turned() == Size(5, 3)
    assert Size(5, 5).fits(Size(5, 4)) and not Size(5, 5).fits(Size(6, 1))
    assert Rect(0, 0, 4, 6).inset(1) == Rect(1, 1, 2, 4)
