from io import BytesIO

import pikepdf
import pypdfium2
import pytest

from builder import PAPERS, sound, spoilt
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.errors import InvalidDocument, NoColourway
from spreadwright.tasks.contact_answers import contact_answer
from spreadwright.tasks.contact_sheet import (
    Format,
    colourways_sheet,
    recipes_sheet,
    sheet_pdf,
    sheet_png,
    sheet_svg,
)
from spreadwright.tasks.ranking import propose
from spreadwright.words import LANGUAGES, speaking

READING = read_recipe(sound(), "window-seat")
SET = read_paper_set(spoilt(lambda _: None, PAPERS), "two").model
PLAIN = read_paper_set(spoilt(lambda d: d.update(title="Plain", papers=d["papers"][:2]), PAPERS), "plain").model
BROKEN = read_recipe(spoilt(lambda recipe: recipe["placements"].pop()), "broken")


def single(recipe):
    recipe["title"] = "One page"
    recipe["spread"]["pages"] = ["right"]


def words_of(pdf):
    return [" ".join(page.get_textpage().get_text_bounded().split()) for page in pypdfium2.PdfDocument(pdf)]


@pytest.fixture(scope="module")
def sheet():
    return colourways_sheet(READING, [SET, PLAIN], 7)


@pytest.fixture(scope="module")
def printed(sheet):
    return sheet_pdf(sheet)


def test_frames_are_the_ranked_colourways(sheet):
    ranked = propose(READING.model, [SET, PLAIN], 7).colourways
    assert [frame.id for frame in sheet.frames] == [each.colourway.id for each in ranked]
    assert [frame.number for frame in sheet.frames] == [str(number) for number in range(1, 8)]
    assert [frame.points for frame in sheet.frames] == [each.score for each in ranked]


def test_a_frame_names_papers_score_and_reason(sheet):
    first = sheet.frames[0]
    assert [role for role, _ in first.papers] == ["background", "plain", "print"]
    assert first.reason.startswith("The best of 75") and first.score == f"{first.points:.1f} of 100"
    assert sheet.about == "7 of 75 colourways, different ones, the best first"


def test_sets_that_do_not_fit_are_named_with_the_reason(sheet):
    (left,) = sheet.left_out
    assert left.name == "Plain" and "“print”" in left.reason and "no patterned face" in left.reason


def test_fewer_colourways_than_were_asked_for_are_owned_up_to():
    two = read_paper_set(spoilt(lambda d: d.update(papers=[d["papers"][0], d["papers"][2]]), PAPERS), "few").model
    sheet = colourways_sheet(READING, [two], 24)
    assert 1 <= len(sheet.frames) < 24
    assert sheet.notes[0].startswith("24 were asked for; beside th")


@pytest.mark.parametrize("wanted", [0, 25, -1])
def test_numbers_out_of_range_are_refused(wanted):
    with pytest.raises(ValueError, match="1 to 24"):
        colourways_sheet(READING, [SET], wanted)


def test_a_recipe_that_no_set_fits_has_no_sheet():
    with pytest.raises(NoColourway, match="no patterned face"):
        colourways_sheet(READING, [PLAIN], 3)


def test_recipes_stand_in_their_best_colourways_and_others_are_named():
    plain = spoilt(lambda r: (r.update(title="Needs more"), r["roles"]["print"].update(kind="plain")))
    sheet = recipes_sheet([READING, BROKEN, read_recipe(plain, "more")], SET)
    assert [frame.id for frame in sheet.frames[:1]] == [propose(READING.model, [SET], 1).colourways[0].colourway.id]
    assert [left.name for left in sheet.left_out] == ["Window seat"]
    assert "1 error" in sheet.left_out[0].reason


def test_recipes_none_of_which_can_be_laid_are_refused():
    with pytest.raises(NoColourway, match="print"):
        recipes_sheet([READING, BROKEN], PLAIN)
    with pytest.raises(InvalidDocument, match="Window seat"):
        recipes_sheet([BROKEN], SET)


def test_what_the_spreads_share_is_in_the_picture_once():
    few, many = (len(sheet_svg(colourways_sheet(READING, [SET], n))) for n in (2, 12))
    assert many < 3 * few


def test_the_same_sheet_gives_the_same_bytes(sheet, printed):
    again = colourways_sheet(READING, [SET, PLAIN], 7)
    assert sheet_svg(sheet) == sheet_svg(again)
    assert printed == sheet_pdf(again)
    assert sheet_png(sheet, 400)[:4] == b"\x89PNG"


def test_printed_words_are_found_as_words(sheet, printed):
    told = " ".join(words_of(printed))
    for frame in sheet.frames:
        assert frame.score in told and frame.id in told.replace(". ", ".")
        assert all(f"{role}: {paper}" in told for role, paper in frame.papers)


def test_every_spread_has_a_bookmark(sheet, printed):
    with pikepdf.open(BytesIO(printed)) as pdf:
        named = [str(item.title) for top in pdf.open_outline().root for item in top.children]
    assert [name.split()[0] for name in named[: len(sheet.frames)]] == [frame.number for frame in sheet.frames]


@pytest.mark.parametrize(("paper", "size"), [(Format.A4, (595, 842)), (Format.LETTER, (612, 792))])
def test_pages_have_the_size_of_the_paper_and_are_numbered(sheet, paper, size):
    pdf = sheet_pdf(sheet, paper)
    pages = pypdfium2.PdfDocument(pdf)
    assert all(page.get_size() == pytest.approx(size, abs=1) for page in pages)
    assert all(f"{number} / {len(pages)}" in words for number, words in enumerate(words_of(pdf), 1))
    assert len(pages) > 1


@pytest.mark.parametrize("language", LANGUAGES)
def test_sheets_speak_every_language(language):
    with speaking(language):
        sheet = colourways_sheet(READING, [SET, PLAIN], 2)
        answer = contact_answer(sheet)
    assert answer["language"] == language and len(answer["frames"]) == 2
    assert ("colourways" in sheet.about) == (language == "en")
