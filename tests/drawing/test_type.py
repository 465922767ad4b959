import pytest

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.svg import markup
from spreadwright.drawing.theme import BODY
from spreadwright.drawing.type import Align, Style, fitted, outline, width, wrapped, write
from spreadwright.geometry import Size

SANS = Style()
FIGURES = Style(is_tabular=True)


@pytest.mark.parametrize("face", Typeface)
def test_a_fraction_is_narrower_than_its_figures(face: Typeface):
    style = Style(face)
    assert width("1/2", style) < width("1", style) + width("/", style) + width("2", style)


@pytest.mark.parametrize("face", Typeface)
def test_tabular_figures_are_equally_wide(face: Typeface):
    assert len({width(digit, Style(face, is_tabular=True)) for digit in "0123456789"}) == 1


def test_a_date_is_no_fraction():
    assert outline("1/2/3", (0, 0), SANS).data != outline("1/2", (0, 0), SANS).data
    assert width("1/2/3", SANS) > 3 * width("1", SANS)


def test_width_grows_with_size():
    assert width("Low tide", Style(size=2 * BODY)) == pytest.approx(2 * width("Low tide", SANS), abs=1)


def test_fitted_words_run_no_further_than_they_may_and_are_never_set_larger():
    long, room = "Low tide and a bucket of shells", width("Low tide", SANS)
    assert room * 9 // 10 < width(long, fitted(long, SANS, room)) <= room + 1
    assert fitted("Low", SANS, room) == SANS and fitted(long, SANS, 1, least=BODY // 2).size == BODY // 2


def test_pairs_are_kerned():
    assert width("AV", SANS) < width("A", SANS) + width("V", SANS)


@pytest.mark.parametrize("text", ["Łódź", "Ωμέγα", "Привет", "Émile", "½ × ⅜"])
def test_every_shipped_script_has_outlines(text: str):
    assert outline(text, (0, 0), SANS).data != outline("日" * len(text), (0, 0), SANS).data


@pytest.mark.parametrize("text", ["日本", "👍🏽", "\u200d", "\x07", "e\u0301", "مرحبا"])
def test_an_unknown_character_is_shown_as_a_box(text: str):
    assert width(f"a{text}b", SANS) > 0
    assert outline("日", (0, 0), SANS).data.count("z") == 2


def test_alignment_moves_by_the_width():
    start = outline("I", (0, 0), SANS).data
    assert start == outline("I", (width("I", SANS), 0), SANS, align=Align.END).data


def test_words_travel_along():
    canvas = Canvas(Size(32000, 3200), title="Words")
    write(canvas, "11 1/2 in & more", (0, 1600), SANS, turned_deg=-90)
    assert 'aria-label="11 1/2 in &amp; more"' in markup(canvas) and "<text" not in markup(canvas)


def test_lines_keep_within_the_measure():
    lines = wrapped("a long strip anchors the page and crosses from left to right", SANS, 8000)
    assert len(lines) > 2 and all(width(line, SANS) <= 8000 for line in lines)


def test_a_word_longer_than_the_measure_stands_alone():
    assert wrapped("an extraordinarily long word", SANS, 2000)[1] == "extraordinarily"


def test_unbroken_spaces_keep_their_words_together():
    assert wrapped("« abc » : def", SANS, 10) == ("«", "abc", "»", ":", "def")
    assert wrapped("«\u202fabc\u202f»\u00a0: def", SANS, 10) == ("«\u202fabc\u202f»\u00a0:", "def")


def test_narrow_unbroken_space_is_narrower_than_a_space():
    assert width("a", SANS) < width("a\u202f", SANS) < width("a ", SANS)
