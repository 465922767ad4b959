from dataclasses import replace
from itertools import product
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cutting.orders import random_tree
from spreadwright.cutting import Arrival, CutStep, Fate, cut_sheets, cut_steps
from spreadwright.geometry import Rect
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Axis, Bench, Branch, Content, Hand, Leaf, Measures, Recipe, Split, Use
from strategies import EIGHTH, INCH, SQUARE, benches, cut_trees, mirrored, recipe_of
from trimmer import SimulatedTrimmer

FALLING_BENCH = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, measures=Measures.FALLING))
LEFT_BENCH = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, hand=Hand.LEFT))


def stacking(count: int) -> Bench:
    return replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, stack=count))


def piece(extent: int | None, name: str, times: int = 1) -> Branch:
    return Branch(extent, Leaf(Use.PIECE, name), is_rest=extent is None, times=times)


def steps_of(tree: Content, bench: Bench = INCH_BENCH, times: int = 1) -> tuple[CutStep, ...]:
    return cut_steps(cut_sheets(recipe_of(tree, times=times)), bench)


def followed(recipe: Recipe, bench: Bench) -> SimulatedTrimmer:
    sheets = cut_sheets(recipe)
    trimmer = SimulatedTrimmer(sheets, bench)
    for step in cut_steps(sheets, bench):
        trimmer.follow(step)
    assert trimmer.board is None and trimmer.aside == []
    return trimmer


def promised(recipe: Recipe) -> dict[str, Rect]:
    return {part.id: part.rect for sheet in cut_sheets(recipe) if len(sheet.parts) > 1 for part in sheet.parts}


@settings(deadline=None)
@given(st.lists(cut_trees(), min_size=1, max_size=3), benches(), st.integers(1, 3))
def test_simulated_trimmer_gets_the_pieces_that_were_promised(trees, bench, times):
    recipe = recipe_of(*trees, times=times)
    assert followed(recipe, bench).done == promised(recipe)


@settings(deadline=None)
@given(st.lists(cut_trees(), min_size=1, max_size=2), benches(metric=True), st.integers(1, 2))
def test_metric_trimmer_cuts_everything_within_half_a_mark_of_its_place(trees, bench, times):
    recipe = recipe_of(*trees, times=times)
    true, mark = followed(recipe, bench).done, bench.trimmer.graduation
    for name, rect in promised(recipe).items():
        for edge in ("left", "top", "right", "bottom"):
            assert 2 * abs(getattr(true[name], edge) - getattr(rect, edge)) <= mark


@settings(deadline=None)
@given(st.lists(cut_trees(), min_size=1, max_size=3), benches())
def test_each_sheet_takes_one_cut_less_than_it_has_parts(trees, bench):
    sheets = cut_sheets(recipe_of(*trees))
    steps = cut_steps(sheets, bench)
    for sheet in sheets:
        assert len([step for step in steps if sheet.number in step.sheets]) == len(sheet.parts) - 1
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))


@settings(deadline=None)
@given(cut_trees(), benches())
def test_both_parts_of_a_cut_make_up_what_was_on_the_board(tree, bench):
    for step in steps_of(tree, bench):
        assert step.kept.rect.area + step.falling.rect.area == step.on_board.area
        assert step.on_board.contains(step.kept.rect) and step.on_board.contains(step.falling.rect)
        assert not step.kept.rect.overlaps(step.falling.rect)


@settings(deadline=None)
@given(cut_trees(), benches(hand=Hand.RIGHT))
def test_left_hand_works_as_in_a_mirror(tree, bench):
    left = replace(bench, trimmer=replace(bench.trimmer, hand=Hand.LEFT))
    for one, other in zip(steps_of(tree, bench), steps_of(mirrored(tree), left), strict=True):
        assert (one.reading, one.arrival, one.axis, one.is_set_now) == (
            other.reading,
            other.arrival,
            other.axis,
            other.is_set_now,
        )
        assert abs(one.turned) == abs(other.turned) and (one.quarter_turns_left + other.quarter_turns_left) % 4 == 0
        assert other.on_board == one.on_board.moved(SQUARE.width - one.on_board.left - one.on_board.right, 0)


def test_parallel_cuts_are_made_without_moving_the_sheet():
    steps = steps_of(Split(Axis.COLUMNS, (piece(2 * INCH, "strip", times=6),)))
    assert [step.exact // INCH for step in steps] == [10, 8, 6, 4, 2]
    assert [step.arrival for step in steps] == [Arrival.NEW_SHEET] + [Arrival.STAYS] * 4
    assert not any(step.is_turned_now for step in steps)


def test_scale_of_the_falling_part_stays_set_for_equal_strips():
    steps = steps_of(Split(Axis.COLUMNS, (piece(2 * INCH, "strip", times=6),)), FALLING_BENCH)
    assert {step.exact for step in steps} == {2 * INCH}
    assert [step.is_set_now for step in steps] == [True, False, False, False, False]


def test_rows_are_cut_with_the_sheet_turned():
    split = Split(Axis.ROWS, (piece(3 * INCH, "head"), piece(None, "foot")))
    (step,) = steps_of(split)
    assert (step.turned, step.quarter_turns_left) == (1, 1)
    assert (step.exact, step.kept.id, step.falling.id) == (3 * INCH, "head", "foot")
    (left,) = steps_of(split, LEFT_BENCH)
    assert (left.turned, left.quarter_turns_left) == (-1, 3)
    assert (left.exact, left.kept.id, left.falling.id) == (3 * INCH, "head", "foot")


def test_equal_strips_are_cut_one_after_the_other_with_the_same_setting():
    thirds = Split(Axis.ROWS, (piece(4 * INCH, "third", times=3),))
    steps = steps_of(Split(Axis.COLUMNS, (Branch(4 * INCH, thirds, times=3),)))
    assert [step.reading // INCH for step in steps] == [8, 4, 8, 8, 8, 4, 4, 4]
    assert [step.axis for step in steps] == [Axis.COLUMNS] * 2 + [Axis.ROWS] * 6


def test_equal_sheets_are_cut_together_as_far_as_the_bench_takes_them():
    halves = Split(Axis.COLUMNS, (piece(6 * INCH, "half", times=2),))
    steps = steps_of(halves, stacking(2), times=3)
    assert [step.sheets for step in steps] == [(1, 2), (3,)]
    assert steps[0].falling.ids == ("half-2", "half-4") and steps[0].kept.ids == ("half-1", "half-3")


def test_sheets_whose_pieces_differ_are_not_cut_together():
    one, other = (Split(Axis.COLUMNS, (piece(6 * INCH, name, times=2),)) for name in ("half", "side"))
    steps = cut_steps(cut_sheets(recipe_of(one, other)), stacking(2))
    assert [step.sheets for step in steps] == [(1,), (2,)]
    assert [step.is_set_now for step in steps] == [True, False]


def test_what_is_set_aside_knows_when_its_turn_comes():
    halves = Split(Axis.ROWS, (piece(6 * INCH, "half", times=2),))
    steps = steps_of(Split(Axis.COLUMNS, (Branch(4 * INCH, halves, times=3),)))
    aside = [share for step in steps for share in (step.falling, step.kept) if share.fate is Fate.SET_ASIDE]
    assert sorted(share.until for share in aside) == [
        step.number for step in steps if step.arrival is Arrival.PICKED_UP
    ]
    assert all(steps[share.until - 1].on_board == share.rect for share in aside)


def test_reading_between_marks_is_the_nearest_mark():
    (step,) = steps_of(Split(Axis.COLUMNS, (piece(3 * INCH + INCH // 64, "a"), piece(None, "b"))))
    assert (step.exact, step.reading) == (3 * INCH + INCH // 64, 3 * INCH)


def test_finished_piece_inside_a_split_of_one_is_put_on_its_pile():
    single = Split(Axis.ROWS, (piece(12 * INCH, "tall"),))
    first, second = steps_of(
        Split(Axis.COLUMNS, (Branch(4 * INCH, single), Branch(4 * INCH, single), piece(None, "rest-of-it")))
    )
    assert [first.falling.id, second.falling.id, second.kept.id] == ["rest-of-it", "tall-2", "tall-1"]
    assert (first.kept.fate, second.kept.fate) == (Fate.ON_BOARD, Fate.PIECE)


def test_kept_part_is_everything_before_the_cut():
    split = Split(Axis.COLUMNS, (piece(INCH, "a"), piece(2 * INCH, "b"), piece(3 * INCH, "c"), piece(None, "d")))
    kept = [step.kept for step in steps_of(split)]
    assert [share.rect.width // INCH for share in kept] == [6, 3, 1]
    assert [share.id for share in kept] == ["", "", "a"]


def test_split_with_one_part_takes_no_cut():
    inner = Split(Axis.ROWS, (piece(None, "top"), piece(6 * INCH, "bottom")))
    steps = steps_of(Split(Axis.COLUMNS, (Branch(SQUARE.width, inner),)))
    assert [step.arrival for step in steps] == [Arrival.NEW_SHEET]
    assert steps[0].length == 12 * INCH and SQUARE.width == EIGHTH * 96


def metric(measures: Measures, hand: Hand = Hand.RIGHT) -> Bench:
    trimmer = replace(INCH_BENCH.trimmer, graduation=TICKS[Unit.MILLIMETRE], measures=measures, hand=hand)
    return replace(INCH_BENCH, unit=Unit.MILLIMETRE, trimmer=trimmer)


@pytest.mark.parametrize(("measures", "hand"), list(product(Measures, Hand)))
def test_cuts_counted_from_either_end_lie_within_half_a_mark_of_their_places(measures, hand):
    for seed in range(60):
        chance = Random(seed)
        recipe = recipe_of(random_tree(chance, 96, 96, chance.choice(list(Axis)), chance.randint(2, 8)))
        true = followed(recipe, metric(measures, hand)).done
        for name, rect in promised(recipe).items():
            for edge in ("left", "top", "right", "bottom"):
                assert 2 * abs(getattr(true[name], edge) - getattr(rect, edge)) <= TICKS[Unit.MILLIMETRE]


@pytest.mark.parametrize("measures", Measures)
def test_narrow_first_column_falls_where_marks_do_not_meet_the_sheet(measures):
    split = Split(Axis.COLUMNS, (piece(3 * EIGHTH, "thread"), piece(7 * INCH, "panel"), piece(None, "rest")))
    first, second = steps_of(split, metric(measures))
    assert [first.falling.id, second.falling.id, second.kept.id] == ["thread", "panel", "rest"]


def test_no_part_is_lost_between_marks_so_that_a_strip_may_fall():
    mark = TICKS[Unit.MILLIMETRE]
    inner = Split(Axis.COLUMNS, (piece(None, "wide"), piece(mark // 2, "hair")))
    rows = Split(Axis.ROWS, (Branch(6 * INCH, inner), piece(None, "low")))
    split = Split(Axis.COLUMNS, (piece(3 * mark, "thread"), Branch(7 * INCH, rows), piece(None, "end")))
    true = followed(recipe_of(split), metric(Measures.KEPT)).done
    assert all(rect.width > 0 for rect in true.values())


THREE_STRIPS = Split(Axis.COLUMNS, (piece(4 * INCH, "strip", times=3),))


def test_metric_readings_are_positions_from_one_edge():
    readings = [step.reading // TICKS[Unit.MILLIMETRE] for step in steps_of(THREE_STRIPS, metric(Measures.KEPT))]
    assert readings == [203, 102]


def test_error_of_one_falling_part_is_made_good_by_the_next():
    steps = steps_of(THREE_STRIPS, metric(Measures.FALLING))
    assert [step.reading // TICKS[Unit.MILLIMETRE] for step in steps] == [102, 101]


def test_metric_left_hand_counts_from_the_right_edge():
    steps = steps_of(THREE_STRIPS, metric(Measures.KEPT, Hand.LEFT))
    assert [step.reading // TICKS[Unit.MILLIMETRE] for step in steps] == [203, 102]
    assert [step.falling.id for step in steps] == ["strip-1", "strip-2"]
