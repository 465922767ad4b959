from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.geometry import Rect
from spreadwright.model import INCH_BENCH, Axis, Edge, Offset, Piece, Side
from spreadwright.placing import PlacedPiece
from spreadwright.tolerance import Deviation, Sides, Source
from spreadwright.tolerance import Side as OneSide
from spreadwright.tolerance.laid import laid
from strategies import INCH

PAGE, LENGTH, OFFSET = 12 * INCH, 5 * INCH, INCH
CUT = Source("cut", 1, INCH // 64)


def placed(across, *, is_turned=False):
    piece = Piece("mat", "mat", "A", "plain", LENGTH, LENGTH)
    rect = Rect(0, 0, LENGTH, LENGTH)
    return PlacedPiece(piece, "page", rect, 1, is_turned, Side.FRONT, across, Offset(Edge.TOP, 0))


def truly(edge, length, ruler):
    """Where the first edge comes to lie: a piece of this length, laid by a ruler that is read so much beside."""
    if edge is Edge.LEFT:
        return OFFSET + ruler
    if edge is Edge.RIGHT:
        return PAGE - OFFSET + ruler - length
    return Fraction(PAGE - length, 2) + OFFSET + ruler


@given(st.sampled_from([Edge.LEFT, Edge.RIGHT, Edge.CENTRE]), st.integers(-127, 127), st.integers(-254, 254))
def test_both_edges_lie_where_ruler_and_length_put_them(edge, cut, ruler):
    (each,) = laid([placed(Offset(edge, OFFSET))], INCH_BENCH)
    found = {"mat": Sides(width=OneSide(Deviation.of(CUT)))}
    errors = {CUT: cut, each.across.terms[0][0]: ruler}
    off = truly(edge, LENGTH + cut, ruler) - truly(edge, LENGTH, 0)
    for twice, true in ((each.twice_near, off), (each.twice_far, off + cut)):
        assert sum(errors[source] * times for source, times in twice(Axis.COLUMNS, found).terms) == 2 * true


@pytest.mark.parametrize(
    ("offset", "bound"), [(Offset(Edge.LEFT, 0), 0), (Offset(Edge.LEFT, INCH), 254), (Offset(Edge.CENTRE, 0), 254)]
)
def test_place_is_off_by_half_a_mark_where_the_ruler_is_read(offset, bound):
    (each,) = laid([placed(offset)], INCH_BENCH)
    assert (each.across.worst, each.down.worst) == (bound, 0)


def test_turned_piece_lies_with_its_height_across():
    (each,) = laid([placed(Offset(Edge.LEFT, 0), is_turned=True)], INCH_BENCH)
    found = {"mat": Sides(height=OneSide(Deviation.of(CUT)))}
    assert each.side(Axis.COLUMNS, found).worst == CUT.bound and each.side(Axis.ROWS, found).worst == 0
