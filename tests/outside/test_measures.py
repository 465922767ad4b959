"""Lengths against published measures; the data beside this file names its sources.

The inch is 25.4 mm exactly (international yard and pound agreement, 1959). Sheet sizes of the A and B series are those
of ISO 216:2007, table 1. United States sheet sizes and the decimals of sixteenths follow from the exact inch.
"""

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.lengths import TICKS, Unit, nearest, text, ticks
from spreadwright.model import INCH_BENCH, Axis, Branch, Hand, Leaf, Measures, Split, Use
from strategies import recipe_of
from trimmer import SimulatedTrimmer

HERE = Path(__file__).parent
MEASURE = json.loads((HERE / "measure.json").read_text())
PAPER = json.loads((HERE / "paper.json").read_text())
SIXTEENTH = TICKS[Unit.INCH] // 16


def exact_mm(length: int) -> Fraction:
    return Fraction(length, TICKS[Unit.MILLIMETRE])


def test_inch_is_25_4_millimetres_exactly():
    assert exact_mm(ticks("1", Unit.INCH)) == Fraction(str(MEASURE["inch_mm"]))


@pytest.mark.parametrize("row", MEASURE["sixteenths"], ids=lambda row: row["inch"])
def test_sixteenths_in_inches_decimals_and_millimetres(row):
    length = ticks(row["inch"], Unit.INCH)
    assert length == row["sixteenths"] * SIXTEENTH == ticks(str(row["decimal"]), Unit.INCH)
    assert exact_mm(length) == Fraction(str(row["mm_exact"]))
    assert text(length, Unit.INCH) == row["inch"]


@pytest.mark.parametrize("row", MEASURE["lengths"], ids=lambda row: row["inch"])
def test_common_lengths_in_millimetres(row):
    length = ticks(row["inch"], Unit.INCH)
    assert exact_mm(length) == Fraction(str(row["mm_exact"]))
    assert text(length, Unit.MILLIMETRE) == f"{row['mm_exact']:g}"


@pytest.mark.parametrize("row", MEASURE["nearest_sixteenth"], ids=lambda row: f"{row['mm']} mm")
def test_nearest_sixteenth_of_a_metric_length(row):
    length = ticks(str(row["mm"]), Unit.MILLIMETRE)
    mark = nearest(length, SIXTEENTH)
    assert text(mark, Unit.INCH) == row["inch"]
    assert exact_mm(mark - length) == Fraction(str(row["error_mm"]))


def test_rounding_to_a_graduation_errs_by_half_a_step_at_most():
    bounds = MEASURE["bounds"]
    assert exact_mm(SIXTEENTH) / 2 == Fraction(str(bounds["max_error_rounding_to_1_16_in_mm"]))
    assert exact_mm(2 * SIXTEENTH) / 2 == Fraction(str(bounds["max_error_rounding_to_1_8_in_mm"]))
    assert exact_mm(TICKS[Unit.MILLIMETRE]) / 2 == Fraction(str(bounds["max_error_rounding_to_1_mm"]))


@pytest.mark.parametrize("case", MEASURE["closure"], ids=lambda case: " + ".join(case["cuts_in"]))
def test_widths_rounded_one_by_one_miss_the_sheet_but_rounded_positions_do_not(case):
    millimetre = TICKS[Unit.MILLIMETRE]
    widths = [ticks(cut, Unit.INCH) for cut in case["cuts_in"]]
    sheet = ticks(case["sheet_in"], Unit.INCH)
    assert sum(widths) == sheet
    assert (
        sum(nearest(width, millimetre) for width in widths) == case["sum_mm_if_each_piece_rounded_to_1_mm"] * millimetre
    )
    positions = [nearest(sum(widths[: i + 1]), millimetre) for i in range(len(widths))]
    assert abs(positions[-1] - sheet) <= millimetre // 2


@pytest.mark.parametrize("measures", Measures)
@pytest.mark.parametrize("hand", Hand)
@pytest.mark.parametrize("case", MEASURE["closure"], ids=lambda case: " + ".join(case["cuts_in"]))
def test_metric_trimmer_cuts_inch_strips_that_add_up_to_their_sheet(case, hand, measures):
    trimmer = replace(INCH_BENCH.trimmer, graduation=TICKS[Unit.MILLIMETRE], hand=hand, measures=measures)
    widths = [ticks(cut, Unit.INCH) for cut in case["cuts_in"]]
    strips = Split(Axis.COLUMNS, tuple(Branch(width, Leaf(Use.PIECE, "strip")) for width in widths))
    maker = SimulatedTrimmer(sheets := cut_sheets(recipe_of(strips)), bench := replace(INCH_BENCH, trimmer=trimmer))
    for step in cut_steps(sheets, bench):
        maker.follow(step)
    assert sum(rect.width for rect in maker.done.values()) == ticks(case["sheet_in"], Unit.INCH)
    places = [sum(widths[:i]) for i in range(len(widths))]
    off = [abs(rect.left - place) for rect, place in zip(sorted(maker.done.values()), places, strict=True)]
    assert max(off) <= TICKS[Unit.MILLIMETRE] // 2


@pytest.mark.parametrize("name", sorted(PAPER["iso216_mm"]))
def test_iso_216_sheets_are_whole_millimetres(name):
    width, height = PAPER["iso216_mm"][name]
    assert text(ticks(str(width), Unit.MILLIMETRE), Unit.MILLIMETRE) == str(width)
    assert ticks(f"{height} mm", Unit.INCH) == height * TICKS[Unit.MILLIMETRE]


@pytest.mark.parametrize("name", sorted(PAPER["us_sheets_in"]))
def test_united_states_sheets_in_millimetres(name):
    for inches, mm in zip(PAPER["us_sheets_in"][name], PAPER["us_sheets_mm_exact"][name], strict=True):
        assert exact_mm(ticks(str(inches), Unit.INCH)) == Fraction(str(mm))


def test_square_sheet_of_the_trade():
    square = PAPER["square_sheet_12in"]
    assert [exact_mm(ticks(str(side), Unit.INCH)) for side in square["inch"]] == [
        Fraction(str(mm)) for mm in square["mm_exact"]
    ]
