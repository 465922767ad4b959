import pytest

from bench.dissections import dissection
from cutting.cutter import cut_block
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.filler import Filler, Manner
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.kinds import kind, stock

SMALL = Manner(blocks=60, alike=120, tries=4, last=14, last_blocks=400)


def whole(pieces):
    return sorted((min(p), max(p)) for p in pieces)


@pytest.mark.parametrize("sheets", [1, 2, 4])
@pytest.mark.parametrize("seed", range(4))
def test_plan_cuts_every_piece_and_leaves_nothing(sheets, seed):
    pieces = dissection(sheets, 16, seed)
    found = fit(stock(kind(*p) for p in pieces), [(96, 96)] * sheets)
    assert found.verdict is Verdict.FOUND
    assert whole(p for tree in found.trees for p in cut_block(tree, 96, 96)) == whole(pieces)


@pytest.mark.parametrize("seed", range(4))
def test_filler_cuts_what_it_says(seed):
    pieces = dissection(1, 20, seed)
    filler = Filler(stock(kind(*p) for p in pieces), [(96, 96)], SMALL, seed)
    trees = next((t for t in (filler.attempt(lambda: False) for _ in range(200)) if t), None)
    assert trees and whole(cut_block(trees[0], 96, 96)) == whole(pieces)


def test_pieces_that_may_not_turn_lie_as_they_are():
    pieces = [(24, 60), (24, 60), (48, 36), (48, 96)]
    found = fit(stock(kind(w, h, may_turn=False) for w, h in pieces), [(96, 96)])
    assert sorted(cut_block(found.trees[0], 96, 96)) == sorted(pieces)


def test_sheets_of_several_sizes_keep_their_order():
    pieces = [(10, 4), (5, 4), (5, 4), (6, 8), (6, 4), (6, 4)]
    found = fit(stock(kind(*p) for p in pieces), [(10, 8), (12, 8)])
    assert [tree.size for tree in found.trees] == [(10, 8), (12, 8)]


def test_piece_as_large_as_a_sheet_takes_one():
    pieces = stock(kind(*p) for p in [(96, 96), (96, 48), (96, 48), (96, 96)])
    assert fit(pieces, [(96, 96)] * 3, most_rounds=1).verdict is Verdict.FOUND


def test_same_seed_gives_same_plan():
    pieces = stock(kind(*p) for p in dissection(2, 24, 3))
    assert fit(pieces, [(96, 96)] * 2, seed=5) == fit(pieces, [(96, 96)] * 2, seed=5)


def test_other_area_is_impossible():
    assert fit(stock([kind(3, 3)]), [(3, 4)]).verdict is Verdict.IMPOSSIBLE


def test_stops_when_told():
    found = fit(stock(kind(*p) for p in dissection(1, 55, 1)), [(96, 96)], is_over=lambda: True)
    assert found.verdict is Verdict.STOPPED
