from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.pencil import free_room, write_lines
from spreadwright.geometry import Rect, Size, area, uncovered
from strategies import rects

MM = 320


def written(room: Rect, ground: str = "#ffffff") -> tuple[str, ...]:
    canvas = Canvas(Size(100 * MM, 100 * MM), title="Caption")
    write_lines(canvas, room, ground, "low-tide/strip")
    return canvas.outline()[1:]


@given(rects(), st.lists(rects(), max_size=4))
def test_free_room_is_inside_and_covered_by_nothing(paper: Rect, covers: list[Rect]):
    room = free_room(paper, covers)
    if room is None:
        assert area(uncovered(paper, covers)) == 0
    else:
        assert paper.contains(room) and not any(cover.overlaps(room) for cover in covers)


@given(rects(), st.lists(rects(), max_size=4))
def test_free_room_is_no_smaller_than_any_part_left(paper: Rect, covers: list[Rect]):
    room = free_room(paper, covers)
    assert all(rest.area <= (room.area if room else 0) for rest in uncovered(paper, covers))


def test_too_small_a_room_is_left_empty():
    assert not written(Rect(0, 0, 60 * MM, 6 * MM)) and not written(Rect(0, 0, 12 * MM, 60 * MM))


def test_a_larger_room_gets_more_lines():
    low, high = (written(Rect(0, 0, 90 * MM, tall * MM))[0] for tall in (10, 40))
    assert len(low) < len(high)


def test_pencil_is_white_on_dark_paper():
    room = Rect(0, 0, 90 * MM, 20 * MM)
    assert "stroke=#f4efe4" in written(room, "#2f4858")[0] and "stroke=#4a4540" in written(room, "#f4efe6")[0]
