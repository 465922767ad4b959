import numpy
from hypothesis import given, settings
from hypothesis import strategies as st

from cutting.brute import packs
from cutting.cutter import cut_block
from spreadwright.cutting.plan import longest_cut, narrowest_part
from spreadwright.cutting.search import nodes, ruining
from spreadwright.cutting.search.insertion import Request
from spreadwright.cutting.search.kinds import kind
from spreadwright.cutting.search.ruin import Ruiner

PIECES = st.lists(st.tuples(st.integers(1, 8), st.integers(1, 8)), min_size=1, max_size=6)


def first(requests, sheets, restart=0, seed=1, is_over=lambda: False, **limits):
    return next(Ruiner(requests, sheets, **limits).filled(restart, seed, is_over), None)


@settings(deadline=None, max_examples=25)
@given(PIECES, st.booleans())
def test_one_sheet_gives_every_piece_once_and_only_where_that_can_be(pieces, may_turn):
    found = first([Request(kind(w, h, may_turn)) for w, h in pieces], [(10, 9)])
    if found:
        assert packs(pieces, 10, 9, may_turn=may_turn)
        key = (lambda p: (min(p), max(p))) if may_turn else (lambda p: p)
        assert sorted(map(key, cut_block(found.trees[0], 10, 9))) == sorted(map(key, pieces))


@settings(deadline=None, max_examples=30)
@given(st.lists(st.tuples(st.integers(1, 9), st.integers(1, 9)), min_size=2, max_size=30), st.integers(0, 9))
def test_nodes_stay_a_cutting_of_the_sheets_whatever_is_ruined(pieces, seed):
    ruiner = Ruiner([Request(kind(w, h)) for w, h in pieces], [(12, 10)] * 3)
    run = ruiner._ruins(seed)
    for _ in range(20):
        ruining.recreate(run)
        assert_is_a_cutting(run, 3)
        ruining.ruin(run, 6)
        assert_is_a_cutting(run, 3)


def assert_is_a_cutting(run, sheets):
    """Children fill their parent, no two rests lie beside each other, and every piece is in one place or left out."""
    table, seen = run.nodes, []
    todo = list(range(sheets))
    while todo:
        node = todo.pop()
        wide, high, content = (int(table[row, node]) for row in (nodes.WIDE, nodes.HIGH, nodes.CONTENT))
        if content >= 0:
            seen.append(content)
            assert sorted((wide, high)) == sorted((int(run.wide[content]), int(run.high[content])))
        if content != nodes.CUT:
            continue
        children = [int(child) for child in siblings(table, node)]
        along, across = (nodes.WIDE, nodes.HIGH) if table[nodes.AXIS, node] == 0 else (nodes.HIGH, nodes.WIDE)
        assert sum(table[along, child] for child in children) == table[along, node]
        assert {int(table[across, child]) for child in children} == {int(table[across, node])}
        assert sum(table[nodes.CONTENT, child] == nodes.REST for child in children) <= 1
        todo += children
    out = [int(i) for i in run.out[: run.state[nodes.OUT]]]
    assert sorted(seen + out) == list(range(len(run.wide)))


def siblings(table, parent):
    child = table[nodes.FIRST, parent]
    while child >= 0:
        assert table[nodes.PARENT, child] == parent
        yield child
        child = table[nodes.NEXT, child]


def test_a_change_that_is_not_kept_leaves_no_trace():
    ruiner = Ruiner([Request(kind(w, h)) for w, h in [(5, 7), (3, 9), (4, 4), (2, 11), (6, 6)] * 3], [(12, 12)] * 2)
    run, kept = ruiner._ruins(3), ruiner._ruins(3)
    ruining.recreate(run)
    before = run.nodes.copy(), run.where.copy(), int(run.state[nodes.OUT])
    nodes.restore(kept, run)
    ruining.ruin(run, 8)
    ruining.recreate(run)
    nodes.restore(run, kept)
    used = run.state[nodes.USED]
    assert numpy.array_equal(run.nodes[:, :used], before[0][:, :used])
    assert numpy.array_equal(run.where, before[1])
    assert run.state[nodes.OUT] == before[2]


def test_limits_of_the_bench_are_kept():
    requests = [Request(kind(w, h, may_turn=False)) for w, h in [(8, 3), (4, 6), (5, 6), (3, 8), (8, 4)]]
    found = first(requests, [(10, 14)] * 2, longest_cut=10, narrowest=2)
    assert found is not None
    assert all(longest_cut(tree) <= 10 for tree in found.trees)
    assert all(narrowest_part(tree) >= 2 for tree in found.trees)


def test_group_comes_from_one_sheet():
    requests = [Request(kind(12, 5, tag=t), group=t - 1) for t in (1, 2, 1, 2)]
    found = first(requests, [(12, 12)] * 2)
    homes = [{leaf.kind.tag for leaf in tree.leaves() if leaf.kind} for tree in found.trees]
    assert sorted(map(sorted, homes)) == [[1], [2]]


def test_optional_pieces_that_are_worth_more_are_cut_first():
    requests = [Request(kind(12, 8)), Request(kind(12, 4), value=2), Request(kind(11, 4), value=9)]
    last = list(Ruiner(requests, [(12, 12)]).filled(0, 1, lambda: False))[-1]
    assert last.left_out == (1,)


def test_rests_are_gathered_into_ever_larger_ones():
    pieces = [(5, 7), (3, 9), (4, 4), (2, 11), (6, 6), (5, 3), (7, 2), (3, 3)]
    ruiner = Ruiner([Request(kind(w, h)) for w, h in pieces], [(16, 15)])
    largest = [max_rest(found) for found in ruiner.filled(0, 1, lambda: False, larger_than=20)]
    assert largest == sorted(set(largest))
    assert largest[0] > 20 and largest[-1] >= 0.5 * (16 * 15 - sum(w * h for w, h in pieces))


def max_rest(found):
    return max(leaf.wide * leaf.high for leaf in found.trees[0].leaves() if leaf.is_rest)


def test_lengths_in_ticks_give_the_same_cutting_as_small_numbers():
    sizes = [(5, 7), (3, 9), (4, 4), (2, 11), (6, 6)]
    small = first([Request(kind(w, h)) for w, h in sizes], [(14, 13)])
    large = first([Request(kind(w * 8128, h * 8128)) for w, h in sizes], [(14 * 8128, 13 * 8128)])
    parts = [sorted(leaf.size for leaf in found.trees[0].leaves()) for found in (small, large)]
    assert parts[1] == [(w * 8128, h * 8128) for w, h in parts[0]]


def test_same_seed_gives_the_same_sheets_and_time_over_gives_none():
    requests = [Request(kind(w, h)) for w, h in [(5, 7), (3, 9), (4, 4), (2, 11), (6, 6), (5, 5)]]
    assert first(requests, [(12, 14)], seed=5) == first(requests, [(12, 14)], seed=5)
    assert first(requests, [(12, 14)], is_over=lambda: True) is None


def test_sheets_that_are_nearly_full_are_filled():
    pieces = [(49, 59), (49, 40), (50, 29), (50, 70), (33, 50), (33, 49), (66, 24), (66, 75)]
    requests = [Request(kind(w, h)) for w, h in pieces]
    assert any(first(requests, [(100, 100)] * 2, restart) for restart in range(4))
