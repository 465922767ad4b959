import pytest

from spreadwright.cutting.problem import MOST_PIECES, Limits, Problem, Stock, Wanted, causes
from spreadwright.geometry import Size

INCH = 8128
NONE = Limits()
SHEET = Stock(Size(12 * INCH, 12 * INCH))


def codes(*pieces, stock=(SHEET,), limits=NONE):
    return [cause.code for cause in causes(Problem(pieces, stock, limits))]


def wanted(width, height, **more):
    return Wanted("mat", Size(int(width * INCH), int(height * INCH)), **more)


def test_sensible_problem_has_no_cause():
    assert codes(wanted(5, 7, count=2)) == []


@pytest.mark.parametrize(
    ("piece", "code"),
    [
        (wanted(13, 2), "piece-larger-than-stock"),
        (wanted(0, 2), "piece-not-positive"),
        (wanted(-1, 2), "piece-not-positive"),
        (wanted(1, 2, count=-1), "piece-not-positive"),
        (wanted(1, 2, count=MOST_PIECES + 1), "too-many-pieces"),
        (wanted(1, 2, paper="print"), "piece-larger-than-stock"),
    ],
)
def test_piece_that_cannot_be_cut_is_named(piece, code):
    assert codes(piece) == [code]


def test_piece_that_may_not_turn_must_fit_upright():
    strip = Stock(Size(12 * INCH, 3 * INCH))
    assert codes(wanted(2, 8), stock=(strip,)) == []
    assert codes(wanted(2, 8, may_turn=False), stock=(strip,)) == ["piece-larger-than-stock"]


def test_group_that_takes_more_than_one_sheet_is_named():
    assert codes(wanted(7, 7, count=3, together="a")) == ["group-larger-than-stock"]
    assert codes(wanted(6, 6, count=4, together="a")) == []
    assert codes(wanted(7, 7, count=3)) == []
    tall, wide = Stock(Size(4 * INCH, 11 * INCH)), Stock(Size(6 * INCH, 6 * INCH))
    apart = wanted(3, 10, together="a"), wanted(5, 6, together="a")
    assert codes(*apart, stock=(tall, wide)) == ["group-larger-than-stock"]


def test_more_area_than_stock_is_refused():
    one = Stock(Size(12 * INCH, 12 * INCH), count=1)
    assert codes(wanted(8, 10, count=2), stock=(one,)) == ["more-area-than-stock"]


def test_side_between_marks_is_refused():
    assert codes(wanted(5.0625, 7), limits=Limits(graduation=INCH // 8)) == ["piece-between-marks"]


def test_strip_narrower_than_can_be_held_is_refused():
    assert codes(wanted(0.25, 7), limits=Limits(narrowest=INCH // 2)) == ["piece-too-narrow"]


def test_optional_piece_may_be_too_large():
    assert codes(wanted(13, 2, value=5)) == []
