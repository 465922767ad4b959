from dataclasses import replace
from itertools import accumulate, product
from random import Random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from cutting.orders import least_effort, random_tree
from spreadwright.cutting import cut_sheets, cut_steps, effort
from spreadwright.cutting.measured import Gauge
from spreadwright.cutting.order import LEAST_TRIED, Lying, Rules, State, _walk, best_order
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Axis, Branch, Content, Hand, Leaf, Measures, Split, Use
from strategies import EIGHTH, INCH, benches, cut_trees, recipe_of


def measured(tree, bench=INCH_BENCH):
    (sheet,) = cut_sheets(recipe_of(tree))
    return Gauge(bench.trimmer).sheet(sheet)


def grid(columns: int, rows: int) -> Split:
    cells = Split(Axis.ROWS, (Branch(96 // rows * EIGHTH, Leaf(Use.PIECE, "tile"), times=rows),))
    return Split(Axis.COLUMNS, (Branch(96 // columns * EIGHTH, cells, times=columns),))


def least_held(content: Content, shortest: int) -> int:
    """How many cuts keep a narrow strip if each part is cut from the end that keeps fewer."""
    if isinstance(content, Leaf):
        return 0
    extents = [branch.extent for branch in content.branches]
    ways = [list(accumulate(each))[:-1] for each in (extents, extents[::-1])]
    own = min(sum(kept < shortest for kept in way) for way in ways)
    return own + sum(least_held(branch.content, shortest) for branch in content.branches)


@settings(max_examples=300, deadline=None)
@given(cut_trees(depth=5), benches())
def test_order_of_up_to_eight_pieces_is_the_best_of_all(tree, bench):
    sheet = measured(tree, bench)
    assume(1 < len(list(sheet.leaves())) <= 8)
    found = best_order(sheet, bench.trimmer, most_tried=LEAST_TRIED)
    assert found.is_best and found.rank[0] == least_effort(sheet, bench.trimmer)


@pytest.mark.parametrize("pieces", [5, 6, 7, 8])
def test_no_order_of_a_random_sheet_takes_less_effort_than_the_one_found(pieces):
    for seed in range(60):
        chance = Random(100 * pieces + seed)
        marks, hand = chance.choice([EIGHTH, TICKS[Unit.MILLIMETRE]]), chance.choice(list(Hand))
        trimmer = replace(INCH_BENCH.trimmer, graduation=marks, hand=hand, measures=chance.choice(list(Measures)))
        sheet = measured(
            random_tree(chance, 96, 96, chance.choice(list(Axis)), pieces), replace(INCH_BENCH, trimmer=trimmer)
        )
        found = best_order(sheet, trimmer, most_tried=LEAST_TRIED)
        assert found.is_best and found.rank[0] == least_effort(sheet, trimmer), seed


@settings(max_examples=40, deadline=None)
@given(cut_trees(depth=5), benches())
def test_order_is_never_worse_than_cutting_each_part_to_its_end(tree, bench):
    sheet = measured(tree, bench)
    assume(sheet.children)
    rules = Rules({part.shape: part for part in sheet.splits()}, bench.trimmer)
    plain = _walk(rules, State(Lying(sheet.shape), (), -1))
    assert best_order(sheet, bench.trimmer, most_tried=2_000).rank <= plain.rank


@settings(deadline=None)
@given(st.lists(cut_trees(), min_size=1, max_size=2), benches())
def test_steps_cost_what_their_order_promised(trees, bench):
    sheets = cut_sheets(recipe_of(*trees[:1]))
    steps = cut_steps(sheets, bench)
    assume(steps)
    order = best_order(Gauge(bench.trimmer).sheet(sheets[0]), bench.trimmer)
    assert effort(steps, bench.trimmer).rank == order.rank[:3]


@pytest.mark.parametrize(("measures", "hand"), list(product(Measures, Hand)))
@pytest.mark.parametrize("marks", [EIGHTH, TICKS[Unit.MILLIMETRE]])
def test_no_strip_is_held_that_would_fall_if_the_other_end_were_kept(marks, measures, hand):
    trimmer = replace(INCH_BENCH.trimmer, graduation=marks, measures=measures, hand=hand)
    for seed in range(60):
        chance = Random(seed)
        tree = random_tree(chance, 96, 96, chance.choice(list(Axis)), chance.randint(2, 8))
        steps = cut_steps(cut_sheets(recipe_of(tree)), replace(INCH_BENCH, trimmer=trimmer))
        assert effort(steps, trimmer).narrow == least_held(tree, trimmer.shortest), seed


def test_largest_sheets_are_ordered_too():
    many = measured(grid(16, 32))
    found = best_order(many, INCH_BENCH.trimmer)
    assert len(found.moves) == 511


def test_all_strips_of_a_grid_share_their_settings():
    steps = cut_steps(cut_sheets(recipe_of(grid(4, 3))), INCH_BENCH)
    assert sum(step.is_set_now for step in steps) == 5


def test_setting_is_carried_from_one_sheet_to_the_next():
    halves = Split(Axis.COLUMNS, (Branch(6 * INCH, Leaf(Use.PIECE, "half"), times=2),))
    steps = cut_steps(cut_sheets(recipe_of(halves, halves)), INCH_BENCH)
    assert [step.is_set_now for step in steps] == [True, False]


@pytest.mark.parametrize("hand", Hand)
def test_narrow_strip_falls_rather_than_being_held(hand):
    bench = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, hand=hand))
    parts = (Branch(INCH // 4, Leaf(Use.PIECE, "edge")), Branch(None, Leaf(Use.PIECE, "panel"), is_rest=True))
    for axis in Axis:
        for branches in (parts, parts[::-1]):
            (step,) = cut_steps(cut_sheets(recipe_of(Split(axis, branches))), bench)
            assert step.falling.id == "edge"
