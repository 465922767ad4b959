import re
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spreadwright.cutting import cut_sheets, cut_steps, pieces, sentences
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.labels import Label, Pile, part_label, part_labels
from spreadwright.drawing.sheet import SheetPlan, cut_sheet_picture
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size
from spreadwright.model import INCH_BENCH
from strategies import cut_trees, recipe_of

LABEL = Label("D2", "date", "4 × 1 1/4 in", Pile(("left", "right"), "left"))


def words(canvas: Canvas) -> list[str]:
    return [found[1] for line in canvas.outline() if (found := re.search(r"aria-label=(.*) fill=", line))]


def labelled(drawn: Rect, label: Label = LABEL, obstacles: tuple[Rect, ...] = ()) -> Canvas:
    canvas = Canvas(Size(200 * MM, 200 * MM), title="A part")
    part_label(canvas, label, drawn, obstacles)
    return canvas


@given(st.integers(10, 140), st.integers(10, 140), st.lists(st.integers(0, 140), max_size=4))
def test_mark_is_never_left_out(wide, high, at):
    discs = tuple(Rect(each * MM, each * MM, 5 * MM, 5 * MM) for each in at)
    assert "D2" in words(labelled(Rect(0, 0, wide * MM // 2, high * MM // 2), obstacles=discs))


@pytest.mark.parametrize("is_upright", [True, False])
def test_marks_of_narrow_neighbours_hide_one_another_nowhere(is_upright):
    canvas, boxes = Canvas(Size(200 * MM, 200 * MM), title="Strips"), []
    for index in range(6):
        upright = Rect(index * 3 * MM // 2, 0, 3 * MM // 2, 90 * MM)
        strip = upright if is_upright else Rect(0, upright.left, upright.height, upright.width)
        boxes.append(part_label(canvas, Label(f"D{index}", "strip", "1/4 × 12 in"), strip, boxes))
    assert not any(one.overlaps(two) for one, two in combinations(boxes, 2))


@given(st.integers(6, 140), st.integers(44, 140), st.booleans())
def test_name_and_size_are_shown_where_a_line_has_room(narrow, long, is_upright):
    sides = (narrow, long) if is_upright else (long, narrow)
    assert words(labelled(Rect(0, 0, sides[0] * MM, sides[1] * MM))) == ["D2", "date", "4 × 1 1/4 in"]


@given(st.integers(22, 140), st.integers(22, 140))
def test_name_and_size_are_shown_where_a_stack_has_room(wide, high):
    assert words(labelled(Rect(0, 0, wide * MM, high * MM))) == ["D2", "date", "4 × 1 1/4 in"]


@pytest.mark.parametrize("size", [(45, 14), (34, 14), (57, 17), (13, 136)])
def test_part_beside_numbers_shows_all_its_words(size):
    drawn = Rect(0, 0, size[0] * MM, size[1] * MM)
    discs = (Rect(drawn.right - 3 * MM, drawn.bottom - 6 * MM, 6 * MM, 6 * MM), Rect(MM, -3 * MM, 5 * MM, 6 * MM))
    assert words(labelled(drawn, obstacles=discs)) == ["D2", "date", "4 × 1 1/4 in"]


def test_label_makes_way_for_the_number_of_a_cut():
    drawn, disc = Rect(0, 0, 60 * MM, 60 * MM), Rect(25 * MM, 25 * MM, 10 * MM, 10 * MM)
    moved = labelled(drawn, obstacles=(disc,)).outline()
    assert moved != labelled(drawn).outline()
    at = re.search(r"translate\(([\d.]+) ([\d.]+)\)", "\n".join(moved))
    assert at is not None and max(abs(float(at[1]) - 30), abs(float(at[2]) - 30)) > 5


@given(st.lists(st.tuples(st.integers(0, 90), st.integers(0, 20)), max_size=5), st.integers(8, 24))
def test_equal_parts_keep_equal_words_and_read_alike(at, high):
    parts = [(LABEL, Rect(0, index * high * MM, 22 * MM, high * MM)) for index in range(4)]
    discs = [Rect(x * MM // 4, y * MM, 5 * MM, 5 * MM) for y, x in at]
    placed = part_labels(parts, discs)
    assert len(placed) == 4
    assert (
        len({(len(each.form.lines), bool(each.form.pile), each.form.look.is_turned) for each in placed.values()}) == 1
    )


def test_pile_comes_before_name_and_size():
    for side in range(9, 40):
        form = part_labels([(LABEL, Rect(0, 0, side * MM, side * MM))])[0].form
        assert form.pile == LABEL.pile


def test_spare_without_room_stays_without_words():
    spare = Label("", "spare", "4 × 1 1/4 in")
    assert words(labelled(Rect(0, 0, 4 * MM, 4 * MM), spare)) == []
    assert words(labelled(Rect(0, 0, 60 * MM, 6 * MM), spare)) == ["spare", "4 × 1 1/4 in"]


@given(cut_trees())
@settings(deadline=None, max_examples=40)
def test_every_piece_of_a_random_sheet_shows_its_mark(tree):
    recipe = recipe_of(tree)
    sheet = cut_sheets(recipe)[0]
    by_id = {piece.id: piece for piece in pieces((sheet,))}
    steps = cut_steps((sheet,), INCH_BENCH)
    page_of = dict.fromkeys(by_id, "page")
    told = tuple(sentences(step, "plain", INCH_BENCH, by_id, page_of) for step in steps)
    shown = words(cut_sheet_picture(SheetPlan("R", "plain", sheet, steps, told, by_id, page_of, ("page",), INCH_BENCH)))
    assert {piece.mark for piece in by_id.values()} <= set(shown)
