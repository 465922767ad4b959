import numpy as np
import pytest

from looks import every_pick, random_tables
from spreadwright.colour import search
from spreadwright.colour.search import Supply, best

CASES = [(seed, most) for seed in range(12) for most in (1, 4, 50)]


def by_brute_force(tables, sizes, most, allowed=None):
    picks = every_pick(sizes)
    picks = picks if allowed is None else picks[[allowed(pick) for pick in picks]]
    values = tables.values(picks)
    order = np.lexsort((*reversed(picks.T), -values))[:most]
    return picks[order], values[order]


def sizes_of(rng):
    return [int(size) for size in rng.integers(1, 6, rng.integers(1, 6))]


@pytest.mark.parametrize(("seed", "most"), CASES)
@pytest.mark.parametrize("highest", [1, 3, 10**6])
def test_best_are_those_of_brute_force(seed, most, highest):
    rng = np.random.default_rng(seed)
    sizes = sizes_of(rng)
    tables = random_tables(rng, sizes, highest)
    found = best(tables, most)
    picks, values = by_brute_force(tables, sizes, most)
    assert found.is_proved
    assert found.picks.tolist() == picks.tolist() and found.values.tolist() == values.tolist()


@pytest.mark.parametrize("seed", range(12))
def test_no_pick_takes_more_sheets_than_are_at_hand(seed):
    rng = np.random.default_rng(seed)
    sizes = sizes_of(rng)
    tables = random_tables(rng, sizes, 1000)
    supply = Supply(
        tuple(rng.integers(0, 4, size) for size in sizes),
        tuple(int(needed) for needed in rng.integers(1, 4, len(sizes))),
        rng.integers(2, 6, 4),
    )

    def is_enough(pick):
        taken = np.zeros(4, int)
        for role, option in enumerate(pick):
            taken[supply.paper[role][option]] += supply.needed[role]
        used = {int(supply.paper[role][option]) for role, option in enumerate(pick)}
        return all(taken[paper] <= supply.at_hand[paper] for paper in used)

    picks, values = by_brute_force(tables, sizes, 8, is_enough)
    found = best(tables, 8, supply)
    assert found.picks.tolist() == picks.tolist() and found.values.tolist() == values.tolist()


def test_a_million_picks_are_proved_without_walking_through_them():
    rng = np.random.default_rng(7)
    tables = random_tables(rng, [10] * 6, 10**6)
    found = best(tables, 12)
    picks, values = by_brute_force(tables, [10] * 6, 12)
    assert found.is_proved and found.picks.tolist() == picks.tolist() and found.values.tolist() == values.tolist()


def test_a_search_that_gives_up_says_so(monkeypatch):
    monkeypatch.setattr(search, "MOST_WORK", 1000)
    found = best(random_tables(np.random.default_rng(3), [12] * 8, 10**6), 5)
    assert not found.is_proved
    assert found.values.tolist() == sorted(found.values.tolist(), reverse=True)


def test_equal_picks_stand_in_the_order_of_their_options():
    tables = random_tables(np.random.default_rng(1), [3, 3, 3], 1)
    assert best(tables, 5).picks.tolist() == [[0, 0, 0], [0, 0, 1], [0, 0, 2], [0, 1, 0], [0, 1, 1]]
