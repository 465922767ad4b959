import re
from dataclasses import replace

import pytest

from builder import sound
from spreadwright.cutting import CutStep
from spreadwright.document import read_recipe
from spreadwright.drawing.booklet.board import WIDTH, CutPicture, blade_of, board_for, cut_picture, lies
from spreadwright.drawing.booklet.tags import Tag
from spreadwright.geometry import Rect
from spreadwright.model import INCH_BENCH, Measures
from spreadwright.tasks import cut


@pytest.fixture(scope="module")
def steps() -> tuple[CutStep, ...]:
    return cut(read_recipe(sound()), INCH_BENCH).steps


def drawn(step: CutStep, steps) -> list[str]:
    picture = CutPicture(step, "7 in", Tag("A", "panel", "7 × 7 in"), Tag(name="set aside"), "", "One cut")
    return list(cut_picture(picture, board_for(steps)).outline())


def test_both_shares_tile_the_part_on_the_board(steps):
    for step in steps:
        kept, falling = lies(step, step.kept.rect), lies(step, step.falling.rect)
        whole = lies(step, step.on_board)
        assert (whole.left, whole.top) == (0, 0)
        assert kept.area + falling.area == whole.area and not kept.overlaps(falling)
        assert blade_of(step) in (kept.right, falling.right)


def test_reading_is_the_width_of_the_measured_share(steps):
    for step in steps:
        measured = step.kept if step.measures is Measures.KEPT else step.falling
        assert lies(step, measured.rect).width == step.exact


def test_arm_and_fence_stand_at_the_same_place_in_every_picture(steps):
    arms = [
        next(line for line in drawn(step, steps) if line.startswith("line") and "#b4472e" in line) for step in steps
    ]
    assert len({re.sub(r"y2=\S+", "", arm) for arm in arms}) == 1
    fences = {
        next(line for line in drawn(step, steps) if line.startswith("rect") and " fill=#2b2a28" in line)
        for step in steps
    }
    assert len(fences) == 1


def test_board_ends_sooner_below_a_short_part(steps):
    board = board_for(steps)
    assert board.height(board.deep // 4) < board.height(board.deep)
    assert board.height(board.deep // 4) == board.height(board.deep // 5)


def test_everything_stays_inside_the_picture(steps):
    board = board_for(steps)
    for step in steps:
        whole = lies(step, step.on_board)
        assert board.blade - board.drawn(blade_of(step)) >= 0
        assert board.blade + board.drawn(whole.width - blade_of(step)) <= WIDTH
        assert board.fence + board.drawn(whole.height) < board.height(whole.height)


def test_what_falls_is_hatched_and_what_stays_is_not(steps):
    shown = "\n".join(drawn(steps[0], steps))
    assert shown.count("opacity=0.5") == 1 and "stroke-dasharray" in shown


@pytest.mark.parametrize(
    ("quarters", "corner"),
    [(0, Rect(0, 0, 10, 20)), (1, Rect(0, 290, 20, 10)), (2, Rect(290, 180, 10, 20)), (3, Rect(180, 0, 20, 10))],
)
def test_turns_to_the_left_take_the_first_corner_round(steps, quarters, corner):
    step = replace(steps[0], on_board=Rect(0, 0, 300, 200), quarter_turns_left=quarters)
    assert lies(step, Rect(0, 0, 10, 20)) == corner
