"""The printed pages are read back with an independent library and measured."""

import os
import re
import subprocess
import sys
from ctypes import c_float
from io import BytesIO

import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from builder import spoilt
from spreadwright.document import read_recipe
from spreadwright.drawing.booklet import Format
from spreadwright.errors import InvalidDocument
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks.templates import template_plan, templates
from spreadwright.words import LANGUAGES, speaking

PAPERS = {Format.A4: (595.28, 841.89), Format.LETTER: (612, 792)}
ALBUM_PAGE_PT = 864
"""12 in."""


def reading(name="rain-until-four"):
    return Collection().recipe(name)


def words_of(page) -> str:
    return re.sub(r"\s+", " ", page.get_textpage().get_text_bounded())


@pytest.fixture(scope="module", params=Format)
def printed(request):
    return request.param, templates(reading(), INCH_BENCH, request.param)


def drawn(page) -> list[tuple[float, float]]:
    """Width and height between the corners of every path, points on paper, to a thousandth."""
    sizes = []
    for each in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
        corners = [each.get_matrix().on_point(*point) for point in points_of(each.raw)]
        spans = [max(along) - min(along) for along in zip(*corners, strict=True)]
        sizes.append((round(spans[0], 3), round(spans[1], 3)))
    return sizes


def points_of(path):
    x, y = c_float(), c_float()
    for index in range(pdfium.FPDFPath_CountSegments(path)):
        pdfium.FPDFPathSegment_GetPoint(pdfium.FPDFPath_GetPathSegment(path, index), x, y)
        yield x.value, y.value


def test_pages_have_the_size_of_the_paper(printed):
    paper, data = printed
    document = pypdfium2.PdfDocument(data)
    assert len(document) == 9
    assert [document.get_page_size(index) for index in range(9)] == [pytest.approx(PAPERS[paper], abs=0.02)] * 9


def test_title_author_language_and_bookmarks_are_told(printed):
    document = pypdfium2.PdfDocument(printed[1])
    assert document.get_metadata_dict()["Title"] == "Rain until four: templates"
    assert document.get_metadata_dict()["Subject"].endswith("each page of the album is 12 × 12 in.")
    marks = [mark.get_title() for mark in document.get_toc()]
    assert marks[0] == "Rain until four" and marks[1] == "Rain until four: left page, part 1 of 4" and len(marks) == 9
    assert pikepdf.open(BytesIO(printed[1])).Root.Lang == "en"


def test_words_can_be_searched(printed):
    document = pypdfium2.PdfDocument(printed[1])
    front, first = words_of(document[0]), words_of(document[1])
    assert "Print at 100 %" in front and "Lay all pieces out before you glue anything." in front
    assert "view-1" in first and "5 × 3 1/2 in" in first and "2 of 9" in first and "100 mm" in first


def test_every_piece_is_named_and_every_page_numbered():
    for name in ("breakfast-on-the-step", "the-long-way-home"):
        plan = template_plan(reading(name), INCH_BENCH, Format.A4)
        document = pypdfium2.PdfDocument(templates(reading(name), INCH_BENCH))
        found = [words_of(page) for page in document]
        assert len(found) == plan.total and all(f"{n} of {plan.total}" in page for n, page in enumerate(found, 1))
        told = " ".join(found)
        assert [each.piece.id for each in plan.placed if each.piece.mark not in told.split()] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_first_page_holds_all_that_it_says_on_paper_that_lies(language):
    def lying(recipe):
        recipe["spread"]["size"], recipe["title"] = ["8 1/2", "11"], "A title of a few more words than usual"
        recipe["sheets"][0]["size"] = ["8 1/2", "11"]

    with speaking(language):
        for paper in Format:
            plan = template_plan(read_recipe(spoilt(lying, SMALL)), INCH_BENCH, paper)
            data = templates(read_recipe(spoilt(lying, SMALL)), INCH_BENCH, paper)
            assert plan.is_lying and len(pypdfium2.PdfDocument(data)) == plan.total


@pytest.mark.parametrize("language", LANGUAGES)
def test_first_page_holds_all_that_it_says_in_every_language(language):
    with speaking(language):
        for paper in Format:
            plan = template_plan(reading("breakfast-on-the-step"), INCH_BENCH, paper)
            data = templates(reading("breakfast-on-the-step"), INCH_BENCH, paper)
            assert len(pypdfium2.PdfDocument(data)) == plan.total


def test_everything_is_at_full_size(printed):
    """A side of 12 in is 864 pt; a mat of 5 by 3 1/2 in is 360 by 252 pt, its photo a quarter of an inch less."""
    found = drawn(pypdfium2.PdfDocument(printed[1])[1])
    for size in ((ALBUM_PAGE_PT, ALBUM_PAGE_PT), (360, 252), (342, 234)):
        assert any(each == pytest.approx(size, abs=0.01) for each in found), size


def test_scale_measures_a_hundred_millimetres_and_four_inches(printed):
    """288 pt are 4 in, 283.46 pt are 100 mm: both have a tick, measured from the one at nought."""
    for page in pypdfium2.PdfDocument(printed[1]):
        marks = next(marks for marks in uprights(page) if marks[-1] - marks[0] == pytest.approx(288, abs=0.01))
        assert any(mark - marks[0] == pytest.approx(100 / 25.4 * 72, abs=0.01) for mark in marks)


def uprights(page):
    """From left to right the places of all points of each path with a hundred strokes or more, points on paper."""
    for each in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
        if pdfium.FPDFPath_CountSegments(each.raw) >= 200:
            yield sorted(each.get_matrix().on_point(*point)[0] for point in points_of(each.raw))


def test_tiles_show_the_page_of_the_album_where_they_say(printed):
    """The outline of the page lies on each printed page as far to the left as its tile begins to the right."""
    plan = template_plan(reading(), INCH_BENCH, printed[0])
    document = pypdfium2.PdfDocument(printed[1])
    corners = [outline_of(document[number]) for number in range(1, 5)]
    for tile, (left, top) in zip(plan.tiling.tiles, corners, strict=True):
        first = plan.tiling.tiles[0].rect
        moved = [(tile.rect.left - first.left) * 72 / 8128, (tile.rect.top - first.top) * 72 / 8128]
        assert [corners[0][0] - left, top - corners[0][1]] == pytest.approx(moved, abs=0.01)


def outline_of(page) -> tuple[float, float]:
    """Left and upper edge of the outline of the album's page, points from the paper's lower left corner."""
    for each in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
        corners = [each.get_matrix().on_point(*point) for point in points_of(each.raw)]
        (left, right), (low, high) = ((min(along), max(along)) for along in zip(*corners, strict=True))
        if right - left == pytest.approx(ALBUM_PAGE_PT, abs=0.01) == high - low:
            return left, high
    raise AssertionError("the page has no outline")


def test_the_same_recipe_gives_the_same_bytes_whatever_the_hashes():
    code = (
        "import sys; from spreadwright.store import Collection; from spreadwright.model import INCH_BENCH\n"
        "from spreadwright.tasks.templates import templates; from spreadwright.tasks.cut_paths import *\n"
        "found = Collection().recipe('breakfast-on-the-step')\n"
        "sys.stdout.buffer.write(templates(found, INCH_BENCH) + cut_paths_zip(cut_paths(found, INCH_BENCH)))"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, check=True, env=os.environ | {"PYTHONHASHSEED": seed}
        )
        for seed in ("1", "2")
    ]
    assert runs[0].stdout == runs[1].stdout and len(runs[0].stdout) > 10_000


def test_page_too_large_for_templates_says_so():
    def huge(recipe):
        recipe["spread"]["size"] = ["70", "70"]
        recipe["sheets"][0]["size"] = ["70", "70"]

    with pytest.raises(InvalidDocument) as caught:
        templates(read_recipe(spoilt(huge)), INCH_BENCH)
    finding = caught.value.findings[0]
    assert (finding.code, finding.where) == ("print-too-large", "/spread/size")
    assert "at most 40" in finding.message and finding.remedy


def test_page_that_fits_on_one_sheet_has_no_joins():
    def small(recipe):
        recipe["spread"]["size"] = recipe["sheets"][0]["size"] = ["6", "6"]

    plan_of = template_plan(read_recipe(spoilt(small, SMALL)), INCH_BENCH, Format.A4)
    assert len(plan_of.tiling.tiles) == 1 and plan_of.total == 2
    document = pypdfium2.PdfDocument(templates(read_recipe(spoilt(small, SMALL)), INCH_BENCH))
    told = " ".join(words_of(page) for page in document)
    assert "Cut here" not in told and "where two printed pages meet" not in told


SMALL = {
    "schema": "recipe/1",
    "title": "One card",
    "unit": "in",
    "spread": {"pages": ["page"], "size": ["6", "6"]},
    "roles": {"background": {"kind": "plain"}, "mat": {"kind": "plain"}},
    "sheets": [
        {"role": "background", "size": ["6", "6"], "piece": "base"},
        {"role": "mat", "size": ["4", "4"], "piece": "panel"},
    ],
    "placements": [
        {"piece": "base", "page": "page", "left": "0", "top": "0"},
        {"piece": "panel", "page": "page", "centre": "0", "middle": "0"},
    ],
}
