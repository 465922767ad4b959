from itertools import combinations

import numpy as np
import pytest

from spreadwright.colour.variety import varied


def choice(points, wanted):
    return varied(len(points), wanted, lambda one: np.linalg.norm(points - points[one], axis=1))


def least(points, chosen):
    return min(np.linalg.norm(points[a] - points[b]) for a, b in combinations(chosen, 2))


@pytest.mark.parametrize("seed", range(8))
def test_chosen_ones_are_at_least_half_as_far_apart_as_can_be(seed):
    points = np.random.default_rng(seed).random((12, 2))
    chosen = choice(points, 4)
    possible = max(least(points, (0, *others)) for others in combinations(range(1, 12), 3))
    assert chosen[0] == 0 and len(set(chosen)) == 4
    assert least(points, chosen) >= possible / 2


def test_nothing_is_chosen_twice_for_looking_the_same():
    points = np.array([[0.0, 0], [0, 0], [1, 0], [1, 0], [2, 0]])
    assert choice(points, 5) == [0, 2, 4]


def test_of_equally_far_ones_the_better_is_chosen():
    assert choice(np.array([[0.0, 0], [1, 0], [-1, 0]]), 2) == [0, 1]


def test_nothing_comes_of_nothing():
    assert choice(np.zeros((0, 2)), 3) == [] and choice(np.zeros((2, 2)), 0) == []
