"""What a doubt says of pieces that are laid one by the other."""

import pytest

from spreadwright.geometry import Rect
from spreadwright.lengths import Unit
from spreadwright.model import INCH_BENCH, Axis, Edge, Offset, Piece, Side
from spreadwright.placing import PAGE, End, Line, Located, Move, MoveKind, PlacedPiece, PlaceStep
from spreadwright.tolerance import Deviation, Sides, Source
from spreadwright.tolerance import Side as OneSide
from spreadwright.tolerance.doubts import PastEdge
from spreadwright.tolerance.laid import Layout
from strategies import INCH

PAGE_RECT = Rect(0, 0, 12 * INCH, 12 * INCH)
WHOLE = Move(MoveKind.FLUSH, Axis.ROWS, End.START, (Line(Axis.ROWS, End.START),))


def laid(name, number, left, width, move):
    piece = Piece(name, name, name.upper(), "plain", width, INCH)
    rect = Rect(left, 0, width, INCH)
    placed = PlacedPiece(piece, "page", rect, 1, False, Side.FRONT, Offset(Edge.LEFT, left), Offset(Edge.TOP, 0))
    return PlaceStep(number, Located(placed, None, PAGE_RECT, (), (move, WHOLE), rect), ())


def chain(free):
    """Two pieces from left to right: the first by an offset, the second by the gap to it; so much is free beyond."""
    width = 12 * INCH - 7 * INCH - free
    by_page = Move(MoveKind.OFFSET, Axis.COLUMNS, End.START, (Line(Axis.COLUMNS, End.START, PAGE),), INCH, INCH)
    by_piece = Move(MoveKind.GAP, Axis.COLUMNS, End.START, (Line(Axis.COLUMNS, End.END, "a"),), INCH, INCH)
    steps = [laid("a", 1, INCH, 5 * INCH, by_page), laid("b", 2, 7 * INCH, width, by_piece)]
    layout = Layout([step.placed for step in steps], steps, INCH_BENCH)
    sources = {name: Source("cut", number, INCH // 64) for number, name in enumerate("ab", start=1)}
    found = {name: Sides(width=OneSide(Deviation.of(source))) for name, source in sources.items()}
    return PastEdge(layout.pieces["b"], Axis.COLUMNS, End.END, 12 * INCH, layout), found


def test_two_readings_and_two_cuts_add_up_at_the_end_of_a_chain():
    doubt, found = chain(INCH // 16)
    assert doubt.reach(found) == 2 * INCH // 32 + 2 * INCH // 64
    assert doubt.reach(found) > doubt.limit == INCH // 16


@pytest.mark.parametrize(
    ("free", "remedy"), [(INCH // 16, "Measure it from the right edge"), (INCH // 64, "Leave more room")]
)
def test_one_reading_from_the_edge_is_told_where_it_would_do(free, remedy):
    doubt, found = chain(free)
    finding = doubt.finding(doubt.reach(found), doubt.remedy, Unit.INCH)
    assert finding.remedy.startswith(remedy) and "3/32 in further, over the edge" in finding.message


def test_piece_that_should_lie_flush_is_not_told_to_be_laid_flush():
    doubt, found = chain(0)
    finding = doubt.finding(doubt.reach(found), doubt.remedy, Unit.INCH)
    assert "should lie flush with the right edge" in finding.message and "flush" not in finding.remedy
