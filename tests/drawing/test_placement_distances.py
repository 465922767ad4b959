from collections import Counter
from itertools import combinations

import pytest
from hypothesis import given, settings

from placing.test_locate import layout, layouts
from spreadwright.drawing.placement import PlacementPlan, _photos_on, _steps_on, placement_picture
from spreadwright.drawing.placement import layout as laid_out
from spreadwright.drawing.placement_distances import Obstacles, distances
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import INCH_BENCH
from spreadwright.placing import EQUAL, place_steps
from spreadwright.store import Collection
from spreadwright.tasks import place


def found_in(plan: PlacementPlan):
    """Per page: the labels, what is drawn, and what the moves name."""
    found = laid_out(plan)
    for page in found.pages:
        steps, photos = _steps_on(page, plan), [photo for _number, photo in _photos_on(page, plan)]
        drawn = list(distances(page, steps, Obstacles.around(page, steps, photos, found.callouts)))
        yield page, found.callouts, drawn, [m for step in steps if len(step.located.moves) > 1 for m in step.measures]


CROWDED = 20
"""With more pieces than this on a page only the table can tell every distance."""


def plan_of(recipe_id: str, bench_id: str) -> PlacementPlan:
    done = place(Collection().recipe(recipe_id), Collection().bench(bench_id))
    return PlacementPlan(done.recipe, done.steps, done.photos, done.bench, done.cautions)


def assert_clear(page, labels, drawn) -> None:
    for distance in drawn:
        assert page.whole.contains(distance.box)
        assert not any(label.box.overlaps(distance.box) or label.box.overlaps(distance.line) for label in labels)
        dots = [Rect(*label.leader[0], 0, 0).inset(-MM // 2) for label in labels if label.leader]
        assert not any(dot.overlaps(distance.box) or dot.overlaps(distance.line) for dot in dots)
    assert not any(one.box.overlaps(two.box) for one, two in combinations(drawn, 2))


@pytest.mark.parametrize("bench_id", ["bench-inch", "bench-metric"])
@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_distances_of_the_collection_are_drawn_clear_of_labels(recipe_id, bench_id):
    for page, labels, drawn, measures in found_in(plan_of(recipe_id, bench_id)):
        assert_clear(page, labels, drawn)
        assert not Counter(each.figure for each in drawn) - Counter(each.figure for each in measures)
        assert len(drawn) * 12 >= len(measures) * (8 if len(labels) <= CROWDED else 3)


def on_edge(rect: Rect, x: int, y: int) -> bool:
    return rect.inset(-1).contains(Rect(x, y, 0, 0)) and not rect.inset(2).contains(Rect(x, y, 0, 0))


@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_every_distance_ends_on_an_edge_that_is_seen(recipe_id):
    plan = plan_of(recipe_id, "bench-inch")
    for page, _labels, drawn, _measures in found_in(plan):
        pieces = [page.rect(step.placed.rect) for step in _steps_on(page, plan)]
        for x, y in (end for distance in drawn for end in (distance.start, distance.end)):
            covers = [index for index, rect in enumerate(pieces) if rect.inset(2).contains(Rect(x, y, 0, 0))]
            owners = [index for index, rect in enumerate(pieces) if on_edge(rect, x, y)]
            assert on_edge(page.whole, x, y) or max(owners) > max(covers, default=-1)


def test_of_equal_distances_both_are_drawn_or_none():
    for recipe_id in Collection().recipes:
        for page, _labels, drawn, measures in found_in(plan_of(recipe_id, "bench-inch")):
            marked = sum(distance.figure == EQUAL for distance in drawn)
            assert marked != 1 and marked <= sum(measure.figure == EQUAL for measure in measures), page.name


@given(layouts())
@settings(deadline=None, max_examples=50)
def test_figures_meet_neither_labels_nor_each_other(rects):
    recipe, placed = layout(rects)
    plan = PlacementPlan(recipe, place_steps(recipe, placed, INCH_BENCH), (), INCH_BENCH)
    for page, labels, drawn, _measures in found_in(plan):
        assert_clear(page, labels, drawn)


def test_no_figure_hides_a_small_piece_that_is_joined_to_another():
    plan = plan_of("buttons-in-a-jar", "bench-inch")
    joined = {step.placed.rect for step in plan.steps if step.placed.piece.name == "button"}
    assert len(joined) == 9
    for page, _labels, drawn, _measures in found_in(plan):
        buttons = [page.rect(step.placed.rect) for step in _steps_on(page, plan) if step.placed.rect in joined]
        assert drawn and buttons
        assert not any(button.overlaps(distance.box) for button in buttons for distance in drawn)


def test_lines_are_as_long_as_what_they_measure():
    for page, _labels, drawn, measures in found_in(plan_of("tent-by-the-lake", "bench-inch")):
        lengths = sorted(max(d.end[0] - d.start[0], d.end[1] - d.start[1]) for d in drawn)
        exact = sorted((m.end - m.start) * page.drawn_width // page.size.width for m in measures)
        assert all(abs(one - two) <= 1 for one, two in zip(lengths, exact, strict=True))


def test_same_picture_every_time():
    first, second = (placement_picture(plan_of("the-long-way-home", "bench-inch")).outline() for _ in range(2))
    assert first == second
