from itertools import cycle

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spreadwright.cutting import CutStep, cut_sheets, cut_steps, rounding, told_rect, told_sizes
from spreadwright.geometry import Rect
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Axis, Branch, Leaf, Measures, Split, Use
from spreadwright.store import Collection
from spreadwright.tasks import cut
from strategies import INCH, benches, cut_trees, recipe_of

MM = TICKS[Unit.MILLIMETRE]
METRIC = Collection().bench("bench-metric")
EVERY = list(zip(sorted(Collection().recipes), cycle(sorted(Collection().benches)), strict=False))
"""Benches take turns: what is told follows from the cuts, not from who designed them."""


def sides(rect: Rect, axis: Axis) -> tuple[int, int]:
    return (rect.width, rect.height) if axis is Axis.COLUMNS else (rect.height, rect.width)


def is_told_so_that_it_adds_up(step: CutStep, trimmer) -> bool:
    whole, falls, stays = (told_rect(each, trimmer) for each in (step.true_board, step.falling.true, step.kept.true))
    (across, along), (fell, one), (stayed, other) = (sides(rect, step.axis) for rect in (whole, falls, stays))
    read = stayed if step.measures is Measures.KEPT else fell
    return fell + stayed == across and one == other == along and read == step.reading


@settings(deadline=None)
@given(cut_trees(), benches(metric=True))
def test_parts_are_told_to_add_up_and_the_measured_one_as_its_reading(tree, bench):
    assert all(
        is_told_so_that_it_adds_up(step, bench.trimmer) for step in cut_steps(cut_sheets(recipe_of(tree)), bench)
    )


@pytest.mark.parametrize(("recipe_id", "bench_id"), EVERY)
def test_no_sentence_tells_what_no_tool_shows(recipe_id, bench_id):
    bench = Collection().bench(bench_id)
    cutting = cut(Collection().recipe(recipe_id), bench)
    for step, words in zip(cutting.steps, cutting.words, strict=True):
        assert is_told_so_that_it_adds_up(step, bench.trimmer)
        told = " ".join((words.caution, words.board, words.setting, words.falls, words.stays))
        assert "." not in told.replace(". ", " ").removesuffix(".")


def test_strips_of_four_inches_are_told_in_whole_millimetres_that_make_the_sheet():
    thirds = Split(Axis.COLUMNS, (Branch(4 * INCH, Leaf(Use.PIECE, "strip"), times=3),))
    sizes = told_sizes(cut_sheets(recipe_of(thirds)), METRIC)
    assert [size.width // MM for size in sizes.values()] == [102, 101, 102]
    assert {size.height // MM for size in sizes.values()} == {305}


@given(st.integers(0, 40 * INCH), st.integers(1, 400))
def test_what_is_told_lies_within_half_a_mark(left, marks):
    true = Rect(left, 0, marks * MM, MM)
    told = told_rect(true, METRIC.trimmer)
    assert told.width == true.width and 2 * abs(told.left - true.left) <= MM


def test_sizes_that_the_scale_shows_are_told_as_designed():
    recipe = Collection().recipe("rain-until-four").model
    sheets = cut_sheets(recipe)
    inch = Collection().bench("bench-inch")
    assert rounding(sheets, inch) == ""
    assert all(
        told_sizes(sheets, inch)[part.id] == part.rect.size
        for sheet in sheets
        for part in sheet.parts
        if part.use == "piece"
    )


def test_sizes_that_it_does_not_show_are_announced_with_the_largest_error():
    sheets = cut_sheets(Collection().recipe("rain-until-four").model)
    assert rounding(sheets, METRIC).endswith("parts come out up to 0.4 mm larger or smaller than designed.")
    whole = [sheet for sheet in sheets if len(sheet.parts) == 1]
    assert rounding(whole, METRIC) == "Sizes are told to the nearest mark of your scale."
