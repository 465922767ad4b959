from io import BytesIO

from pypdfium2 import PdfDocument

from builder import sound
from spreadwright.document import read_recipe
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import cut, place
from spreadwright.tasks.draw import cut_sheets_pdf, cut_sheets_svg, placement_pdf, placement_svg

POINTS = 25.4 / 72


def pages_mm(pdf: bytes) -> list[tuple[float, float]]:
    return [(page.get_width() * POINTS, page.get_height() * POINTS) for page in PdfDocument(BytesIO(pdf))]


def words(pdf: bytes) -> str:
    return " ".join(page.get_textpage().get_text_range() for page in PdfDocument(BytesIO(pdf)))


def test_every_page_fits_on_paper_at_full_size():
    reading = Collection().recipe("the-long-way-home")
    placing = place(reading, INCH_BENCH)
    for pdf in (placement_pdf(placing), cut_sheets_pdf(cut(reading, INCH_BENCH))):
        assert all(abs(wide - 186) < 0.1 and high < 265.1 for wide, high in pages_mm(pdf))
    assert b'height="265mm"' not in placement_svg(placing)


def test_every_sheet_has_one_picture_and_at_least_one_page():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    assert len(cut_sheets_svg(cutting)) == len(cutting.sheets) <= len(pages_mm(cut_sheets_pdf(cutting)))


def test_sheets_that_are_not_cut_can_be_left_out():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    uncut = sum(not cutting.steps_of(sheet) for sheet in cutting.sheets)
    assert uncut == 2
    without, all_of_them = (cut_sheets_pdf(cutting, is_uncut_shown=shown) for shown in (False, True))
    assert len(pages_mm(without)) == len(pages_mm(all_of_them)) - uncut


def test_the_words_of_a_print_can_be_found():
    reading = read_recipe(sound())
    cutting, placing = cut(reading, INCH_BENCH), place(reading, INCH_BENCH)
    cuts, pieces = words(cut_sheets_pdf(cutting)), words(placement_pdf(placing))
    assert cutting.recipe.title in cuts and cutting.recipe.title in pieces
    assert PdfDocument(BytesIO(placement_pdf(placing))).get_metadata_dict()["Title"].startswith(cutting.recipe.title)
    assert all(step.placed.piece.mark in pieces for step in placing.steps)


def test_the_same_print_has_the_same_bytes():
    placing = place(read_recipe(sound()), INCH_BENCH)
    assert placement_pdf(placing) == placement_pdf(placing)
