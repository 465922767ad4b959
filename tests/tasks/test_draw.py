import re

from builder import sound
from spreadwright.document import read_recipe
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import cut, place
from spreadwright.tasks.draw import cut_sheets_pages_svg, cut_sheets_svg, placement_pages_svg, placement_svg


def height_mm(svg: bytes) -> float:
    found = re.search(rb'<svg [^>]*height="([\d.]+)mm"', svg)
    assert found is not None
    return float(found[1])


def test_every_page_fits_on_paper():
    reading = Collection().recipe("the-long-way-home")
    placing = place(reading, INCH_BENCH)
    pages = placement_pages_svg(placing) + cut_sheets_pages_svg(cut(reading, INCH_BENCH))
    assert max(height_mm(svg) for svg in pages) <= 265 < height_mm(placement_svg(placing))


def test_every_sheet_has_one_picture_and_at_least_one_page():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    assert len(cut_sheets_svg(cutting)) == len(cutting.sheets) <= len(cut_sheets_pages_svg(cutting))


def test_sheets_that_are_not_cut_can_be_left_out():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    uncut = sum(not cutting.steps_of(sheet) for sheet in cutting.sheets)
    assert uncut == 2
    assert len(cut_sheets_pages_svg(cutting, is_uncut_shown=False)) == len(cut_sheets_pages_svg(cutting)) - uncut
