import json
from functools import cache
from itertools import product
from pathlib import Path
from unittest import mock

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cutting.cutter import cut_block
from spreadwright.cutting.search import knapsack_grid
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.kinds import kind
from spreadwright.cutting.search.knapsack import Effort, Item, all_fit, most_valuable

PUBLISHED = Path(__file__).parents[2] / "benchmarks" / "knapsack_limited.json"

ITEMS = st.lists(
    st.tuples(st.integers(1, 6), st.integers(1, 6), st.integers(1, 2), st.integers(1, 40), st.booleans()),
    min_size=1,
    max_size=4,
)


def by_every_cut(items, width, height):
    """The most value when every cut is tried with every way of dealing out the pieces."""

    @cache
    def worth(w, h, counts):
        best = 0
        for (x, y, _, value, may_turn), count in zip(items, counts, strict=True):
            if count and ((x <= w and y <= h) or (may_turn and y <= w and x <= h)):
                best = max(best, value)
        for some in product(*(range(n + 1) for n in counts)):
            if not any(some) or some == counts:
                continue
            others = tuple(n - m for n, m in zip(counts, some, strict=True))
            for x in range(1, w):
                best = max(best, worth(x, h, some) + worth(w - x, h, others))
            for y in range(1, h):
                best = max(best, worth(w, y, some) + worth(w, h - y, others))
        return best

    return worth(width, height, tuple(n for _, _, n, _, _ in items))


def asked(items):
    return [Item(kind(w, h, may_turn, tag), n, value) for tag, (w, h, n, value, may_turn) in enumerate(items)]


def value_of(answer, items, sheets):
    """The value of the trees, each cut by the checker; fails where a piece is cut more often than there are."""
    sizes = [size for tree, sheet in zip(answer.trees, sheets, strict=True) for size in cut_block(tree, *sheet)]
    kinds = [leaf.kind for tree in answer.trees for leaf in tree.leaves() if leaf.kind]
    assert all(size in k.sides() for size, k in zip(sizes, kinds, strict=True))
    assert all(kinds.count(item.kind) <= item.count for item in items)
    return sum(item.value * kinds.count(item.kind) for item in items)


def published(name, may_turn):
    """A case of the file, see the README beside it for its source: items, sheet, known optimum."""
    record = next(r for r in json.loads(PUBLISHED.read_text()) if r["name"] == name)
    items = [Item(kind(w, h, may_turn, tag), n, value) for tag, (w, h, n, value) in enumerate(record["items"])]
    best = next(case["known_optimum"] for case in record["cases"] if case["rotation"] == may_turn)
    return items, tuple(record["sheet"]), best


@settings(deadline=None, max_examples=80)
@given(ITEMS, st.integers(1, 8), st.integers(1, 8))
def test_agrees_with_every_cut_and_every_deal(items, width, height):
    best = by_every_cut(tuple(items), width, height)
    answer = most_valuable(asked(items), [(width, height)])
    assert (answer.value, answer.bound) == (best, best)
    assert value_of(answer, asked(items), [(width, height)]) == best


@settings(deadline=None, max_examples=40)
@given(ITEMS, st.integers(1, 8), st.integers(1, 8), st.integers(2, 5))
def test_rounded_lengths_bound_and_keep_the_best(items, width, height, most_sums):
    best = by_every_cut(tuple(items), width, height)
    with mock.patch.object(knapsack_grid, "MOST_SUMS", most_sums):
        answer = most_valuable(asked(items), [(width, height)])
    assert value_of(answer, asked(items), [(width, height)]) == answer.value == best <= answer.bound


@settings(deadline=None, max_examples=60)
@given(ITEMS, st.integers(1, 8), st.integers(1, 8))
def test_search_that_stops_early_bounds_from_both_sides(items, width, height):
    best = by_every_cut(tuple(items), width, height)
    answer = most_valuable(asked(items), [(width, height)], effort=Effort(blocks=3, rounds=1, weighings=1))
    assert value_of(answer, asked(items), [(width, height)]) == answer.value <= best <= answer.bound


def by_every_deal(items, sheets):
    """The most value of two sheets when the pieces are dealt out to them in every way."""
    first, second = sheets

    def worth(counts, sheet):
        return by_every_cut(tuple((w, h, n, v, t) for (w, h, _, v, t), n in zip(items, counts, strict=True)), *sheet)

    def others(counts):
        return tuple(item[2] - n for item, n in zip(items, counts, strict=True))

    deals = product(*(range(item[2] + 1) for item in items))
    return max(worth(counts, first) + worth(others(counts), second) for counts in deals)


@settings(deadline=None, max_examples=12)
@given(ITEMS, st.tuples(st.integers(1, 6), st.integers(1, 6)), st.tuples(st.integers(1, 6), st.integers(1, 6)))
def test_two_sheets_are_bounded_from_both_sides(items, first, second):
    for sheets in ([first, first], [first, second]):
        best = by_every_deal(items, sheets)
        answer = most_valuable(asked(items), sheets, effort=Effort(rounds=2))
        assert value_of(answer, asked(items), sheets) == answer.value <= best <= answer.bound


@pytest.mark.parametrize("sheets", [2, 3])
def test_so_many_sheets_as_pieces_need_hold_all_of_them(sheets):
    items = [Item(kind(7, 5, may_turn=False), 2 * sheets, 3), Item(kind(4, 4, tag=1), sheets, 2)]
    answer = most_valuable(items, [(11, 10)] * sheets)
    assert (answer.value, answer.bound) == (8 * sheets, 8 * sheets)


@settings(deadline=None, max_examples=60)
@given(ITEMS, st.integers(2, 9), st.integers(2, 9))
def test_all_fit_agrees_with_every_cut_and_every_deal(items, width, height):
    by_area = tuple((w, h, n, w * h, may_turn) for w, h, n, _, may_turn in items)
    best = by_every_cut(by_area, width, height)
    wanted = sum(w * h * n for w, h, n, _, _ in items)
    answer = all_fit([(item.kind, item.count) for item in asked(items)], width, height)
    assert answer.verdict is (Verdict.FOUND if best == wanted else Verdict.IMPOSSIBLE)
    if answer.tree:
        assert sum(w * h for w, h in cut_block(answer.tree, width, height)) == wanted


@pytest.mark.parametrize("may_turn", [False, True])
@pytest.mark.parametrize("name", ["cgcut1", "cgcut3", "wang20", "okp1", "OF1", "A5", "CU1", "CW2", "gcut4", "ngcut12"])
def test_published_optima_are_reached_and_proved(name, may_turn):
    items, sheet, best = published(name, may_turn)
    answer = most_valuable(items, [sheet])
    assert (answer.value, answer.bound) == (best, best)
    assert value_of(answer, items, [sheet]) == best


def test_same_seed_gives_the_same_trees():
    items, sheet, _ = published("CW1", False)
    short = Effort(blocks=1000, rounds=3, weighings=3)
    assert most_valuable(items, [sheet], effort=short, seed=4) == most_valuable(items, [sheet], effort=short, seed=4)


def test_progress_only_gets_better():
    items, sheet, best = published("OF2", False)
    heard = []
    most_valuable(items, [sheet], on_better=lambda value, bound: heard.append((value, bound)))
    assert heard == sorted(heard, key=lambda pair: (pair[0], -pair[1]))
    assert heard[-1] == (best, best)


def test_time_that_is_over_leaves_a_valid_answer():
    items, sheet, best = published("CW3", False)
    answer = most_valuable(items, [sheet], is_over=lambda: True)
    assert value_of(answer, items, [sheet]) == answer.value <= best <= answer.bound


@pytest.mark.parametrize("sheets", [[(5, 5)], [(5, 5), (3, 9)], []])
def test_pieces_too_large_for_every_sheet_are_worth_nothing(sheets):
    answer = most_valuable([Item(kind(10, 10), 3, 7)], sheets)
    assert (answer.value, answer.bound) == (0, 0)
    assert [tree.size for tree in answer.trees] == sheets


def test_values_decide_beyond_any_area():
    must, wish = Item(kind(4, 4, tag=1), 1, 10**9), Item(kind(6, 3, tag=2), 2, 1)
    answer = most_valuable([must, wish], [(6, 6)])
    assert answer.value == 10**9
