import time
from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations, product
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from placing.layouts import INCH, PAGE, inches, layout
from placing.replay import replayed
from spreadwright.geometry import Rect
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Axis, Ruler, Zero
from spreadwright.placing import MoveKind, PlacedPiece, PlaceStep, cost_of, place_steps
from spreadwright.placing.candidates import moves_along, moves_of_both
from spreadwright.placing.joining import bases
from spreadwright.placing.landing import landed
from spreadwright.placing.locate import easiest_moves, in_order
from spreadwright.placing.table import Table
from spreadwright.store import Collection
from spreadwright.tasks import place

MM = TICKS[Unit.MILLIMETRE]
EIGHTH = INCH // 8
METRIC = replace(INCH_BENCH, unit=Unit.MILLIMETRE, ruler=Ruler(MM, 30 * MM, frozenset({Zero.END, Zero.MIDDLE})))
PLAIN = replace(INCH_BENCH, ruler=Ruler(EIGHTH, 0))


@st.composite
def layouts(draw: st.DrawFn, most: int = 9) -> list[Rect]:
    """Rectangles on a coarse grid with margins and gaps, so that edges meet and groups nest; some anywhere."""
    coarse = st.sampled_from([0, 2, 4, 16, 18, 32, 34, 48, 50, 64, 66, 80, 92, 94, 96])
    marks = st.one_of(coarse, coarse, st.integers(0, 96))
    rects = []
    for _ in range(draw(st.integers(1, most))):
        xs, ys = (sorted((draw(marks), draw(marks))) for _ in range(2))
        if xs[0] < xs[1] and ys[0] < ys[1]:
            rects.append(Rect.between(*(each * EIGHTH for each in (xs[0], ys[0], xs[1], ys[1]))))
        if rects and draw(st.booleans()) and min(rects[-1].size.width, rects[-1].size.height) > 4 * EIGHTH:
            rects.append(rects[-1].inset(draw(st.integers(1, 2)) * EIGHTH))
    return rects


def designed(placed: Sequence[PlacedPiece]) -> dict[str, Rect]:
    return {each.piece.id: each.rect for each in placed}


@given(layouts(), st.sampled_from([INCH_BENCH, PLAIN]))
@settings(max_examples=300, deadline=None)
def test_moves_alone_give_the_place_of_every_piece(rects, bench):
    recipe, placed = layout(rects)
    steps = place_steps(recipe, placed, bench)
    assert replayed(steps, PAGE, bench.ruler.width) == designed(placed)


@given(layouts())
@settings(max_examples=300, deadline=None)
def test_on_a_metric_ruler_they_give_it_within_what_is_told(rects):
    recipe, placed = layout(rects)
    steps = place_steps(recipe, placed, METRIC)
    found = replayed(steps, PAGE, METRIC.ruler.width)
    assert found == {step.placed.piece.id: step.located.lands for step in steps}
    for step in steps:
        levels = 1 + depth_of(step, steps)
        assert max(abs(off) for off in step.off) <= levels * (MM // 2 + 1)


def depth_of(step: PlaceStep, steps: Sequence[PlaceStep]) -> int:
    by_id = {each.placed.piece.id: each for each in steps}
    return 0 if step.located.base is None else 1 + depth_of(by_id[step.located.base.piece.id], steps)


@pytest.mark.parametrize("bench_id", ["bench-inch", "bench-inch-falling", "bench-metric"])
@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_collection_is_reproduced_by_its_moves(recipe_id, bench_id):
    bench, reading = Collection().bench(bench_id), Collection().recipe(recipe_id)
    done = place(reading, bench)
    found = replayed(done.steps, done.recipe.spread.size, bench.ruler.width)
    assert found == {step.placed.piece.id: step.located.lands for step in done.steps}
    if bench.unit is reading.model.unit is Unit.INCH:
        assert found == designed(done.placed)
    assert all(abs(off) <= MM for step in done.steps for off in step.off)


@given(layouts())
@settings(deadline=None)
def test_order_is_from_the_page_upward_and_groups_are_joined_first(rects):
    recipe, placed = layout(rects)
    steps = place_steps(recipe, placed, INCH_BENCH)
    number = {step.placed.piece.id: step.number for step in steps}
    base_of = {step.placed.piece.id: step.located.base.piece.id for step in steps if step.located.base}
    assert sorted(number) == sorted(designed(placed))
    for index, upper in enumerate(placed):
        for lower in placed[:index]:
            if lower.rect.overlaps(upper.rect) and lower.piece.id not in chain_of(upper.piece.id, base_of):
                assert number[lower.piece.id] < number[upper.piece.id]
    assert all(number[piece] < number[base] for piece, base in base_of.items())


def chain_of(piece: str, base_of: dict[str, str]) -> list[str]:
    return [base_of[piece], *chain_of(base_of[piece], base_of)] if piece in base_of else []


@given(layouts(most=6))
@settings(deadline=None)
def test_no_combination_of_moves_is_shorter_or_easier(rects):
    _, placed = layout(rects)
    on_page = [each for each in placed if each.piece.id not in bases(placed, PAGE)]
    table = Table("", Rect.at(0, 0, PAGE), INCH_BENCH.ruler)
    for each, moves in in_order(on_page, table):
        across, down = (list(moves_along(axis, each, table)) for axis in Axis)
        all_ways = [*((move,) for move in moves_of_both(each, table)), *product(across, down)]
        assert all(landed(each.rect.size, way, table.lands) == each.rect for way in all_ways)
        assert cost_of(moves) == min(cost_of(way) for way in all_ways)
        table.lay(each, each.rect)


def in_this_order(pieces: Sequence[PlacedPiece]) -> tuple[int, int]:
    """What the moves cost when the pieces are laid one after the other."""
    table, moves = Table("", Rect.at(0, 0, PAGE), INCH_BENCH.ruler), []
    for each in pieces:
        moves += easiest_moves(each, table)
        table.lay(each, each.rect)
    return cost_of(moves)


@pytest.mark.parametrize("seed", range(60))
def test_no_other_order_needs_fewer_moves(seed):
    marks, rng = [0, 2, 16, 18, 32, 34, 48, 50, 64, 66, 80, 94, 96], Random(seed)
    rects: list[Rect] = []
    while len(rects) < 4:
        (left, right), (top, bottom) = (sorted(rng.sample(marks, 2)) for _ in range(2))
        rect = Rect.between(*(each * EIGHTH for each in (left, top, right, bottom)))
        if not any(rect.overlaps(other) for other in rects):
            rects.append(rect)
        elif rng.random() < 0.01:
            rects = []
    _, placed = layout(rects)
    found = [each for each, _moves in laid_in_order(placed)]
    orders = {order: in_this_order(order) for order in permutations(placed)}
    assert in_this_order(found)[0] == min(orders.values())[0]


def laid_in_order(placed: Sequence[PlacedPiece]):
    table = Table("", Rect.at(0, 0, PAGE), INCH_BENCH.ruler)
    for each, moves in in_order(placed, table):
        yield each, moves
        table.lay(each, each.rect)


def moves_of(rects: Sequence[Rect], bench=INCH_BENCH) -> dict[str, list[str]]:
    recipe, placed = layout(rects)
    return {
        s.placed.piece.id: [move.kind.value for move in s.located.moves] for s in place_steps(recipe, placed, bench)
    }


@pytest.mark.parametrize(
    ("rects", "expected"),
    [
        ([inches(0, 0, 12, 12)], {"p-0": ["cover"]}),
        ([inches(0, 3, 12, 2)], {"p-0": ["flush", "offset"]}),
        ([inches(1, 1, 3, 4)], {"p-0": ["spacer", "spacer"]}),
        ([inches(2, 2, 8, 7)], {"p-0": ["centre", "offset"]}),
        ([inches(2, 3, 4, 4), inches(2.25, 3.25, 3.5, 3.5)], {"p-0": ["offset", "offset"], "p-1": ["frame"]}),
        ([inches(0, 0, 4, 4), inches(4, 0, 4, 4)], {"p-0": ["flush", "flush"], "p-1": ["against", "flush"]}),
        ([inches(0, 0, 4, 4), inches(4.25, 1.5, 3, 2.5)], {"p-0": ["flush", "flush"], "p-1": ["gap", "level"]}),
        (
            [inches(0, 0, 2, 2), inches(2.25, 0, 2, 2), inches(4.5, 0, 2, 2)],
            {"p-0": ["flush", "flush"], "p-1": ["gap", "flush"], "p-2": ["equal-gap", "flush"]},
        ),
        (
            [inches(0, 0, 8, 4), inches(8, 0, 4, 8), inches(4, 8, 8, 4), inches(0, 4, 4, 8), inches(4, 4, 4, 4)],
            {"p-4": ["frame"]},
        ),
    ],
)
def test_each_move_is_found_where_it_is_the_easiest(rects, expected):
    found = moves_of(rects)
    assert {piece: found[piece] for piece in expected} == expected


def test_without_a_middle_zero_the_distance_is_told_instead():
    assert moves_of([inches(2, 2, 8, 7)], PLAIN) == {"p-0": ["offset", "offset"]}


def test_hidden_edge_is_no_edge_to_lay_by():
    lower, cover = inches(3, 3, 4, 4), inches(2.5, 2, 1.5, 6)
    _, placed = layout([lower, cover, inches(3, 9, 2, 2)])
    table = Table("", Rect.at(0, 0, PAGE), INCH_BENCH.ruler)
    for each in placed[:2]:
        table.lay(each, each.rect)
    kinds = [move.kind for move in easiest_moves(placed[2], table)]
    assert MoveKind.LEVEL not in kinds


def test_piece_that_also_lies_on_another_is_not_joined_first():
    panel, strip, over = inches(1, 1, 8, 8), inches(0, 3, 12, 1), inches(2, 2, 3, 3)
    _, placed = layout([panel, strip, over])
    assert bases(placed, PAGE) == {}
    _, placed = layout([panel, over, strip])
    assert bases(placed, PAGE) == {"p-1": "p-0"}


def test_deep_nest_is_joined_in_a_few_steps_and_found_again():
    rects = [Rect.at(0, 0, PAGE).inset(INCH // 4 + i * EIGHTH) for i in range(40)]
    recipe, placed = layout(rects)
    steps = place_steps(recipe, placed, INCH_BENCH)
    assert replayed(steps, PAGE, INCH_BENCH.ruler.width) == designed(placed)
    assert max(depth_of(step, steps) for step in steps) <= 8


def test_many_pieces_are_found_again():
    rects = [inches(0.25 + 0.5 * (i % 20), 0.25 + 0.5 * (i // 20), 0.25, 0.25) for i in range(400)]
    recipe, placed = layout(rects)
    steps = place_steps(recipe, placed, INCH_BENCH)
    assert replayed(steps, PAGE, INCH_BENCH.ruler.width) == designed(placed)


def panels_of_tiles(count: int) -> list[Rect]:
    """Panels over one another, each with 49 tiles on it."""
    rects = []
    for panel in range(count // 50):
        left, top = 3 * (panel % 4), 3 * (panel // 4 % 4)
        rects.append(inches(left, top, 2.875, 2.875))
        rects += [inches(left + 0.125 + 0.375 * (i % 7), top + 0.125 + 0.375 * (i // 7), 0.25, 0.25) for i in range(49)]
    return rects


def scattered(count: int) -> list[Rect]:
    """Pieces anywhere, over one another."""
    chance = Random(count)
    sides = [(chance.choice([12, 16, 24]), chance.choice([12, 16, 24])) for _ in range(count)]
    return [
        Rect(*(part * EIGHTH for part in (chance.randrange(97 - w), chance.randrange(97 - h), w, h))) for w, h in sides
    ]


@pytest.mark.parametrize("rects", [panels_of_tiles(1000), scattered(1000)], ids=["panels", "scattered"])
def test_a_thousand_pieces_are_found_again_within_seconds(rects):
    recipe, placed = layout(rects)
    start = time.process_time()
    steps = place_steps(recipe, placed, INCH_BENCH)
    assert time.process_time() - start < 5
    assert replayed(steps, PAGE, INCH_BENCH.ruler.width) == designed(placed)
