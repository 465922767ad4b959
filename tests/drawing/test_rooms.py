from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.rooms import rooms
from spreadwright.geometry import Rect, uncovered
from strategies import rects

PAPER = Rect(0, 0, 8, 8)


@given(st.lists(rects(), max_size=6))
def test_no_cover_hides_any_of_a_room(covers):
    for room in rooms(PAPER, covers):
        assert PAPER.contains(room)
        assert not any(cover.overlaps(room) for cover in covers)


@given(st.lists(rects(), max_size=6))
def test_every_free_rectangle_lies_in_a_room(covers):
    found = rooms(PAPER, covers)
    for free in uncovered(PAPER, covers):
        assert any(room.contains(free) for room in found)


@given(st.lists(rects(), max_size=6))
def test_no_room_lies_in_another(covers):
    found = rooms(PAPER, covers)
    assert len(set(found)) == len(found)
    assert not any(a != b and a.contains(b) for a in found for b in found)


def test_roomiest_comes_first():
    assert rooms(PAPER, [Rect(0, 5, 5, 3)]) == (Rect(0, 0, 8, 5), Rect(5, 0, 3, 8))


def test_hidden_paper_has_no_room():
    assert rooms(PAPER, [Rect(-1, -1, 10, 10)]) == ()
