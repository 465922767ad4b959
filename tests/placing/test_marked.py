import pytest

from builder import sound, spoilt
from spreadwright.cutting import is_cut
from spreadwright.document import read_recipe
from spreadwright.model import INCH_BENCH
from spreadwright.tasks import cut, place

CORNERS = {(-1, 1): "at the fence on the left", (-1, -1): "near you on the left"} | {
    (1, -1): "near you on the right",
    (1, 1): "at the fence on the right",
}


def told(data: bytes) -> dict[int, str]:
    """The sentences on pencil marks, by cut, as far as there are any."""
    cutting = cut(read_recipe(data), INCH_BENCH)
    return {step.number: words.mark for step, words in zip(cutting.steps, cutting.words, strict=True) if words.mark}


def heads(data: bytes) -> dict[str, str]:
    return {step.placed.piece.id: step.sentences[0] for step in place(read_recipe(data), INCH_BENCH).steps}


def square_print(document):
    """A print that may be turned; its blocks are square, and one of them lies on its side."""
    document["roles"]["print"]["directional"] = False
    document["sheets"][2]["rows"] = [
        {"height": "6", "columns": [{"width": "6", "piece": "block", "times": 2}]},
        {"height": "3", "piece": "strip", "times": 2},
    ]
    document["placements"][6]["turned"] = True


def test_every_cut_piece_of_a_one_way_print_is_marked_and_no_plain_one():
    marks = " ".join(told(sound()).values())
    assert all(f"“{name}”" in marks for name in ("strip-1", "strip-2", "block-1", "block-2"))
    assert not any(f"“{name}”" in marks for name in ("panel", "mat-1", "tile-1", "base-1"))


def test_mark_is_told_at_the_corner_that_was_the_top_left_one():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    for step, words in zip(cutting.steps, cutting.words, strict=True):
        x, y = -1, 1
        for _ in range(step.quarter_turns_left):
            x, y = -y, x
        assert not words.mark or f"in the corner {CORNERS[x, y]}: that is its top left." in words.mark


def test_marked_piece_is_told_where_its_mark_lies():
    placed = heads(sound())
    assert placed["strip-1"].endswith("The pencilled cross lies beneath its top left corner.")
    assert "cross" not in placed["panel"] + placed["base-1"]


def test_square_piece_of_any_print_is_marked_and_a_turned_one_has_it_at_the_right():
    placed = heads(spoilt(square_print))
    assert "top right corner" in placed["block-1"] and "top left corner" in placed["block-2"]
    assert "cross" not in placed["strip-1"]


@pytest.mark.parametrize(("face", "words"), [("front", "on the back of"), ("back", "on the face of")])
def test_mark_goes_on_the_side_that_is_glued_down(face, words):
    data = spoilt(lambda d: d["placements"][2].update(face=face))
    assert any(f"{words} “strip-1”" in mark for mark in told(data).values())
    assert ("top right corner" in heads(data)["strip-1"]) == (face == "back")


def test_whole_sheet_is_no_cut_piece():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    assert {name for name, is_part in is_cut(cutting.sheets).items() if not is_part} == {"base-1", "base-2"}
