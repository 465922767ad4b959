"""Whatever the planner says is proved, against trying everything."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cutting import brute
from spreadwright.cutting.planner import Effort, plan
from spreadwright.cutting.problem import Limits, Problem, Stock, Wanted
from spreadwright.errors import NoPlan, PlanTooLong
from spreadwright.geometry import Size
from spreadwright.model import Leaf

LITTLE = Effort(rounds=2, changes=100, sets=40, blocks=5000)
SIDES = st.tuples(st.integers(1, 5), st.integers(1, 5))
STOCK = st.lists(st.tuples(st.integers(2, 6), st.integers(2, 6), st.integers(0, 3)), min_size=1, max_size=3)


def problem(pieces, stock, may_turn, words=(), values=()):
    wanted = tuple(
        Wanted(f"p{i}", Size(*p), 1, may_turn, together=words[i] if words else "", value=values[i] if values else 0)
        for i, p in enumerate(pieces)
    )
    return Problem(wanted, tuple(Stock(Size(w, h), 1, cost=cost) for w, h, cost in stock))


def assert_true(asked, truth):
    """A plan never beats the truth, a proof never contradicts it."""
    try:
        made = plan(asked, effort=LITTLE)
    except NoPlan:
        assert truth is None
        return None
    except PlanTooLong:
        return None
    ((_, certificate),) = made.certificates
    assert truth is not None and certificate.lower_bound <= truth <= certificate.cost
    assert not made.is_optimal or certificate.cost == truth
    return made


@settings(deadline=None, max_examples=150)
@given(st.lists(SIDES, min_size=1, max_size=4), STOCK, st.booleans())
def test_sheets_of_several_sizes_and_costs(pieces, stock, may_turn):
    assert_true(problem(pieces, stock, may_turn), brute.least_cost(pieces, stock, may_turn=may_turn))


@settings(deadline=None, max_examples=100)
@given(st.lists(st.tuples(SIDES, st.sampled_from(("", "a", "b"))), min_size=2, max_size=4), STOCK)
def test_pieces_that_stay_together(grouped, stock):
    pieces, words = zip(*grouped, strict=True)
    groups = [{"": -1, "a": 0, "b": 1}[word] for word in words]
    truth = brute.least_cost(pieces, stock, may_turn=True, together=groups)
    assert_true(problem(pieces, stock, True, words), truth)


@settings(deadline=None, max_examples=100)
@given(
    st.lists(SIDES, min_size=1, max_size=2),
    st.lists(st.tuples(SIDES, st.integers(1, 4)), min_size=1, max_size=3),
    STOCK,
)
def test_optional_pieces_are_worth_what_is_proved(musts, optional, stock):
    pieces = [*musts, *(size for size, _ in optional)]
    values = [0] * len(musts) + [value for _, value in optional]
    made = assert_true(problem(pieces, stock, True, values=values), brute.least_cost(musts, stock, may_turn=True))
    if made:
        ((_, certificate),) = made.certificates
        truth = brute.most_value(musts, optional, stock, certificate.cost, may_turn=True)
        assert certificate.value <= truth
        assert certificate.gap or truth <= certificate.most_value
        assert not made.is_optimal or certificate.value == truth


@settings(deadline=None, max_examples=150)
@given(
    st.lists(SIDES, min_size=1, max_size=3),
    st.tuples(st.integers(2, 6), st.integers(2, 6)),
    st.booleans(),
    st.integers(2, 6),
    st.integers(0, 2),
)
def test_one_sheet_within_the_limits_of_a_bench(pieces, sheet, may_turn, longest, narrowest):
    is_possible = brute.packs_within(tuple(sorted(pieces)), *sheet, may_turn, longest, narrowest)
    asked = replace(problem(pieces, [(*sheet, 1)], may_turn), limits=Limits(longest, narrowest))
    assert_true(asked, 1 if is_possible else None)


def names(content):
    if isinstance(content, Leaf):
        return [content.name] if content.name else []
    return [name for branch in content.branches for _ in range(branch.times) for name in names(branch.content)]


@settings(deadline=None, max_examples=100)
@given(
    st.lists(st.tuples(SIDES, st.sampled_from(("", "a", "b")), st.integers(0, 2)), min_size=2, max_size=4),
    STOCK,
)
def test_optional_pieces_stay_with_their_group_too(wanted, stock):
    pieces, words, values = zip(*wanted, strict=True)
    try:
        made = plan(problem(pieces, stock, True, words, values), effort=LITTLE)
    except (NoPlan, PlanTooLong):
        return
    homes = {name: number for number, sheet in enumerate(made.sheets) for name in names(sheet.content)}
    assert sorted([*homes, *made.left_out]) == [f"p{i}" for i in range(len(pieces))]
    for word in ("a", "b"):
        assert len({homes[f"p{i}"] for i, w in enumerate(words) if w == word and f"p{i}" in homes}) <= 1


def test_value_beside_what_must_be_cut_is_proved_where_sheets_are_left():
    made = plan(problem([(7, 7), (6, 6), (6, 6)], [(12, 12, 1)] * 3, True, values=(0, 5, 3)))
    ((_, certificate),) = made.certificates
    assert made.is_optimal and (certificate.value, certificate.most_value) == (0, 0)


def test_a_sheet_that_costs_nothing_is_opened_for_an_optional_piece():
    made = plan(problem([(4, 4), (4, 4)], [(4, 4, 0)] * 2, True, values=(0, 5)))
    assert made.is_optimal and made.left_out == ()


def test_nothing_is_cut_where_optional_pieces_only_are_out_of_the_trimmers_reach():
    asked = replace(problem([(5, 5)], [(12, 12, 1)], True, values=(1,)), limits=Limits(longest_cut=6))
    made = plan(asked, effort=LITTLE)
    assert made.sheets == () and made.left_out == ("p0",)


@pytest.mark.parametrize(
    ("pieces", "stock", "is_proved"),
    [
        ([(5, 5), (3, 5)], [(12, 5, 1)], True),
        ([(5, 5), (3, 5)], [(12, 5, 1), (13, 5, 1)], False),
        ([(5, 5), (3, 5)], [(12, 5, 0)], False),
    ],
)
def test_the_largest_spare_is_proved_only_where_all_plans_leave_as_much(pieces, stock, is_proved):
    ((_, certificate),) = plan(problem(pieces, stock, True), effort=LITTLE).certificates
    assert certificate.is_gathered == is_proved


@settings(deadline=None, max_examples=60)
@given(
    st.lists(st.tuples(SIDES, st.integers(1, 4)), min_size=1, max_size=4),
    st.tuples(st.integers(2, 6), st.integers(2, 6)),
)
def test_one_sheet_with_optional_pieces_only_gives_the_most_value(optional, sheet):
    pieces, values = [size for size, _ in optional], [value for _, value in optional]
    made = plan(problem(pieces, [(*sheet, 1)], True, values=values), effort=LITTLE)
    ((_, certificate),) = made.certificates
    assert made.is_optimal
    assert certificate.value == brute.most_value([], optional, [(*sheet, 1)], 1, may_turn=True)
