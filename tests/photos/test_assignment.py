"""The least total cost, against every permutation and against a library."""

from itertools import permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import linear_sum_assignment

from spreadwright.photos import assigned

tables = st.tuples(st.integers(1, 5), st.integers(1, 5)).flatmap(
    lambda size: st.lists(
        st.lists(st.integers(-50, 50), min_size=size[1], max_size=size[1]), min_size=size[0], max_size=size[0]
    )
)


def total(costs: list[list[int]]) -> int:
    return sum(costs[row][column] for row, column in enumerate(assigned(costs)) if column is not None)


def least(costs: list[list[int]]) -> int:
    rows, columns = len(costs), len(costs[0])
    if rows > columns:
        return least([list(each) for each in zip(*costs, strict=True)])
    return min(
        sum(costs[row][column] for row, column in enumerate(each)) for each in permutations(range(columns), rows)
    )


@given(tables)
def test_no_other_assignment_costs_less(costs):
    assert total(costs) == least(costs)


@given(tables)
def test_nobody_shares_and_nobody_waits_in_vain(costs):
    columns = [column for column in assigned(costs) if column is not None]
    assert len(columns) == len(set(columns)) == min(len(costs), len(costs[0]))


@pytest.mark.parametrize("seed", range(20))
def test_a_library_finds_the_same_cost(seed):
    random = np.random.default_rng(seed)
    costs = random.integers(0, 1_000_000, random.integers(1, 30, 2))
    rows, columns = linear_sum_assignment(costs)
    assert total(costs.tolist()) == costs[rows, columns].sum()


def test_nothing_to_assign_is_nothing():
    assert assigned([]) == ()
    assert assigned([[], []]) == (None, None)
