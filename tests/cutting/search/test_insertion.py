from hypothesis import given, settings
from hypothesis import strategies as st

from cutting.cutter import cut_block
from spreadwright.cutting.search.insertion import Inserter, Request
from spreadwright.cutting.search.kinds import kind

PIECES = st.lists(st.tuples(st.integers(1, 12), st.integers(1, 12)), min_size=1, max_size=15)


def last_packing(requests, sheets):
    return list(Inserter(requests, sheets, 1).packings(len(sheets), 50, lambda: False))[-1]


@settings(deadline=None, max_examples=60)
@given(PIECES, st.booleans())
def test_every_piece_is_cut_once(pieces, may_turn):
    packing = last_packing([Request(kind(w, h, may_turn)) for w, h in pieces], [(12, 12)] * len(pieces))
    cut = [p for tree in packing.trees for p in cut_block(tree, 12, 12)]
    assert not packing.left_out
    key = (lambda p: (min(p), max(p))) if may_turn else (lambda p: p)
    assert sorted(map(key, cut)) == sorted(map(key, pieces))


def test_what_finds_no_place_is_named():
    packing = last_packing([Request(kind(8, 8)), Request(kind(7, 7))], [(12, 12)])
    assert len(packing.left_out) == 1


def test_group_comes_from_one_sheet():
    requests = [Request(kind(12, 5, tag=t), group=t - 1) for t in (1, 2, 1, 2)]
    packing = last_packing(requests, [(12, 12)] * 3)
    homes = [{leaf.kind.tag for leaf in tree.leaves() if leaf.kind} for tree in packing.trees]
    assert sorted(map(sorted, homes)) == [[1], [2]]


def test_optional_piece_opens_no_sheet():
    packing = last_packing([Request(kind(12, 8)), Request(kind(12, 5), value=9)], [(12, 12)] * 2)
    assert (len(packing.trees), packing.left_out) == (1, (1,))
