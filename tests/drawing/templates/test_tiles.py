from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.booklet import Format
from spreadwright.drawing.templates import MOST_TILES, tiling
from spreadwright.drawing.templates.tiles import OVERLAP, place, window
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit
from tiling import is_tiled

MM, INCH = TICKS[Unit.MILLIMETRE], TICKS[Unit.INCH]
SIDES = st.integers(20 * MM, 700 * MM)
PAGES, FORMATS = st.builds(Size, SIDES, SIDES), st.sampled_from(Format)


@given(PAGES, FORMATS)
def test_what_remains_of_all_tiles_is_the_page(page, paper):
    assert is_tiled(Rect.at(0, 0, page), [tile.core for tile in tiling(page, paper).tiles])


@given(PAGES, FORMATS)
def test_every_tile_fits_on_its_paper_within_what_printers_print(page, paper):
    found = tiling(page, paper)
    assert all(window(found.paper).contains(place(tile, found.paper)) for tile in found.tiles)
    assert all(tile.rect.contains(tile.core) for tile in found.tiles)


@given(PAGES, FORMATS)
def test_neighbours_overlap_enough_for_their_marks(page, paper):
    found = tiling(page, paper)
    for one in found.tiles:
        for other in found.tiles:
            if one.row == other.row and other.column == one.column + 1:
                assert one.rect.right - other.rect.left >= OVERLAP - found.columns
            if one.column == other.column and other.row == one.row + 1:
                assert one.rect.bottom - other.rect.top >= OVERLAP - found.rows


@given(PAGES, FORMATS)
def test_turning_page_and_paper_changes_no_count(page, paper):
    one, other = tiling(page, paper), tiling(page.turned(), paper)
    assert len(one.tiles) >= 1 and max(one.rows, one.columns) <= len(one.tiles)
    assert {one.paper, other.paper} <= {paper.size, paper.size.turned()}


def test_square_foot_takes_four_tiles_on_either_paper():
    for paper in Format:
        found = tiling(Size(12 * INCH, 12 * INCH), paper)
        assert (found.rows, found.columns, found.paper) == (2, 2, paper.size)


def test_paper_lies_on_its_side_where_that_takes_fewer_tiles():
    found = tiling(Size(10 * INCH, 6 * INCH), Format.A4)
    assert len(found.tiles) == 1 and found.paper == Format.A4.size.turned()


def test_page_that_nobody_would_tape_together_has_no_tiles():
    found = tiling(Size(60 * INCH, 60 * INCH), Format.A4)
    assert found.is_too_large and found.rows * found.columns > MOST_TILES and found.tiles == ()
