"""A hundred thousand simulated makers, beside the formulae."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.model import INCH_BENCH, Axis, Branch, Leaf, Measures, Split, Use
from spreadwright.store import Collection
from spreadwright.tolerance import partings, traced
from spreadwright.tolerance.orders import reorderings
from strategies import INCH, cut_trees, recipe_of
from tolerance.makers import Makers

COUNT = 100_000
COLLECTION = Collection()
SOME = ("rain-until-four", "the-long-way-home", "breakfast-on-the-step", "buttons-in-a-jar", "am-zaun-entlang")
"""Inches and millimetres, few cuts and many; any other tree is drawn at random below."""
FALLING_BENCH = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, measures=Measures.FALLING))


def simulated(sheets, bench, count=COUNT):
    """For each side of each part: what the formulae say, and by how much the makers' lengths differ from the recipe."""
    steps = cut_steps(sheets, bench)
    made = Makers(count, bench.trimmer.accuracy).cut(sheets, steps)
    found = traced(sheets, partings(steps, bench.trimmer))
    rects = {part.id: part.rect for sheet in sheets for part in sheet.parts}
    for part, (widths, heights) in made.items():
        yield found[part].width.deviation, widths - rects[part].width
        yield found[part].height.deviation, heights - rects[part].height


@pytest.mark.parametrize("bench_id", list(COLLECTION.benches))
@pytest.mark.parametrize("recipe_id", SOME)
def test_makers_come_out_as_the_formulae_say(recipe_id, bench_id):
    sheets = cut_sheets(COLLECTION.recipe(recipe_id).model)
    for deviation, off in simulated(sheets, COLLECTION.bench(bench_id)):
        assert np.abs(off).max() <= deviation.worst + 1e-6
        assert abs(off.mean() - deviation.shift) <= 0.02 * deviation.standard + 1e-6
        assert off.std() == pytest.approx(deviation.standard, rel=0.01, abs=1e-6)


@pytest.mark.parametrize("bench_id", list(COLLECTION.benches))
def test_at_least_nine_in_ten_stay_within_what_is_typical(bench_id):
    for recipe_id in SOME:
        for deviation, off in simulated(cut_sheets(COLLECTION.recipe(recipe_id).model), COLLECTION.bench(bench_id)):
            assert np.mean(np.abs(off) <= deviation.typical) > 0.9
            assert np.mean(np.abs(off) <= deviation.expanded) > 0.94


def test_the_worst_case_is_nearly_met_by_somebody():
    sheets = cut_sheets(COLLECTION.recipe("the-long-way-home").model)
    for deviation, off in simulated(sheets, INCH_BENCH):
        if len(deviation.terms) <= 2:
            assert np.abs(off).max() >= 0.99 * deviation.worst


@settings(max_examples=40, deadline=None)
@given(st.lists(cut_trees(), min_size=1, max_size=2), st.sampled_from([INCH_BENCH, FALLING_BENCH]))
def test_no_maker_of_any_recipe_is_further_off_than_the_worst_case(trees, bench):
    for deviation, off in simulated(cut_sheets(recipe_of(*trees)), bench, count=500):
        assert np.abs(off).max() <= deviation.worst + 1e-6


def test_makers_without_error_cut_what_the_scale_says():
    exact = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, accuracy=0))
    for deviation, off in simulated(cut_sheets(COLLECTION.recipe("rain-until-four").model), exact, count=2):
        assert np.all(off == 0) and deviation.worst == deviation.typical == 0


def test_makers_who_cut_in_another_order_come_out_as_was_worked_out_for_it():
    tree = Split(Axis.COLUMNS, tuple(Branch(width * INCH, Leaf(Use.PIECE, f"p{width}")) for width in (5, 4, 2, 1)))
    sheets = cut_sheets(recipe_of(tree))
    cuts = partings(cut_steps(sheets, INCH_BENCH), INCH_BENCH.trimmer)
    others = list(reorderings(sheets, cuts, traced(sheets, cuts), INCH_BENCH.trimmer))
    assert len(others) > 20
    for other in others:
        made = Makers(20_000, INCH_BENCH.trimmer.accuracy).cut_otherwise(sheets, other.cuts)
        for part in sheets[0].parts:
            deviation, off = other.found[part.id].width.deviation, made[part.id][0] - part.rect.width
            assert np.abs(off).max() <= deviation.worst
            assert off.std() == pytest.approx(deviation.standard, rel=0.02)
