from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Adhesive, Wetness
from spreadwright.placing import Stick, sticking
from spreadwright.placing.adhesive import MARGIN, SMALLEST_MARGIN, WIDEST_FREE, adhesive_findings, runs_on, volume_of
from spreadwright.tasks import check, place

INCH, MM = TICKS[Unit.INCH], TICKS[Unit.MILLIMETRE]
TAPE = Adhesive(Wetness.DRY, INCH // 4)
GLUE = Adhesive(Wetness.LIQUID, INCH // 16)
BENCH = replace(INCH_BENCH, adhesives=(TAPE, GLUE))


def inches(width: float, height: float) -> Size:
    return Size(round(width * INCH), round(height * INCH))


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        (inches(3, 4), TAPE),
        (inches(0.375, 6), TAPE),
        (inches(0.25, 6), GLUE),
        (inches(6, 0.1875), GLUE),
        (inches(0.125, 6), None),
    ],
)
def test_tape_where_it_fits_and_glue_where_it_does_not(size, expected):
    assert sticking(Stick("a", size), BENCH).adhesive == expected


@pytest.mark.parametrize(
    ("size", "runs", "length"),
    [
        (inches(0.5, 6), 1, 5.75),
        (inches(3, 4), 4, 2 * 3.75 + 2 * 2.25),
        (inches(5, 7), 5, 2 * 6.75 + 2 * 4.25 + 6.25),
        (inches(11, 11), 7, 2 * 10.75 + 2 * 10.25 + 3 * 10.25),
    ],
)
def test_runs_along_the_edges_and_rows_between_add_up(size, runs, length):
    assert runs_on(size, TAPE) == (runs, round(length * INCH))


@given(st.integers(1, 90), st.integers(1, 90), st.sampled_from([TAPE, GLUE]))
def test_no_more_than_is_said_lies_free(wide, high, adhesive):
    size = Size(wide * INCH // 8, high * INCH // 8)
    runs, _ = runs_on(size, adhesive)
    inside = min(size.width, size.height) - 2 * MARGIN - 2 * adhesive.width
    rows = runs - 4
    if rows >= 0:
        assert inside - rows * adhesive.width <= (rows + 1) * WIDEST_FREE[adhesive.wetness]
    if rows > 0:
        assert inside - (rows - 1) * adhesive.width > rows * WIDEST_FREE[adhesive.wetness]


def test_bead_is_half_round():
    assert volume_of(100 * MM, 2 * MM) == 158  # pi / 2 square millimetres times 100 mm, rounded up


def test_whole_page_takes_no_adhesive_and_photographs_are_counted():
    held = place(read_recipe(sound()), INCH_BENCH).adhesive
    assert not {"base-1", "base-2"} & {each.stick.id for each in held.pieces}
    assert [each.stick.id for each in held.photos] == ["panel", "mat-1", "mat-2"]
    assert held.tape == sum(each.length for each in (*held.pieces, *held.photos)) and held.bead == held.volume == 0


def test_photographs_count_with_no_adhesive_that_is_too_wide_for_them():
    wide = replace(INCH_BENCH, adhesives=(replace(TAPE, width=8 * INCH),))
    counted = "The photographs are counted with them; photo corners hold them without any adhesive."
    assert counted in place(read_recipe(sound()), INCH_BENCH).adhesive.words
    told = place(read_recipe(sound()), wide).adhesive.words
    assert counted not in told and "Photo corners hold the photographs without any adhesive." in told


def test_words_tell_what_is_safe_for_photographs_and_what_libraries_say():
    told = " ".join(place(read_recipe(sound()), INCH_BENCH).adhesive.words)
    assert "ISO 18902" in told and "ISO 18916" in told and "photo corners" in told and "archival" not in told


def test_adhesive_wider_than_every_piece_names_the_widest_one():
    bench = replace(BENCH, adhesives=(replace(TAPE, width=8 * INCH), GLUE))
    (found,) = [each for each in check(read_recipe(sound()), bench).findings if each.code == "adhesive-too-wide"]
    assert "tape of 8 in" in found.message and "panel" in found.message and "at most 1/2 in" in found.remedy


def test_piece_that_nothing_holds_is_named():
    def spoil(document):
        document["sheets"][1]["columns"][0]["rows"][1]["columns"][0]["width"] = "3 7/16"
        document["sheets"][1]["columns"][0]["rows"][1]["columns"].append({"width": "1/8", "piece": "thread"})
        document["placements"].append({"piece": "thread", "page": "left", "left": "6", "top": "1"})

    (found,) = [each for each in check(read_recipe(spoilt(spoil)), BENCH).findings if each.code == "adhesive-too-wide"]
    assert "thread" in found.message and "brush" in found.remedy and found.where == "/placements/11"


def test_pieces_that_nothing_holds_are_told_together_by_the_narrowest():
    threads = [Stick(f"thread-{i}", Size(INCH * i // 64, 6 * INCH), f"/placements/{i}") for i in (10, 8, 9)]
    (found,) = adhesive_findings(threads, replace(BENCH, adhesives=(TAPE,)))
    assert found.where == "/placements/8" and "“thread-8”" in found.message and "2 more pieces" in found.message


def test_no_wider_adhesive_is_advised_than_is_usual():
    bench = replace(BENCH, adhesives=(replace(TAPE, width=5 * INCH),))
    (found,) = adhesive_findings([Stick("wide", inches(4, 4))], bench)
    assert found.remedy == "Use liquid glue with a bead of at most 1/8 in for it, or cut the piece wider."


def test_bench_with_too_wide_a_glue_only_says_how_fine_it_should_be():
    narrow = Stick("thread", Size(INCH // 4, 6 * INCH), "/placements/0")
    bench = replace(BENCH, adhesives=(TAPE,))
    (found,) = adhesive_findings([narrow, Stick("wide", inches(4, 4))], bench)
    assert "at most 1/8 in" in found.remedy and narrow.size.width - 2 * SMALLEST_MARGIN == INCH // 8
