import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cutting.brute import fills
from cutting.cutter import cut_block
from spreadwright.cutting.search.exact import Verdict, settled
from spreadwright.cutting.search.kinds import kind, stock

PINWHEEL = [(70, 30), (26, 60), (60, 36), (36, 66), (34, 30)]


def partitions(area, largest, width, height):
    """Every multiset of rectangles that fit and have this area together."""
    if area == 0:
        yield ()
    sizes = [(w, h) for w in range(1, width + 1) for h in range(1, height + 1)]
    for size in sizes:
        if size <= largest and size[0] * size[1] <= area:
            for rest in partitions(area - size[0] * size[1], size, width, height):
                yield (size, *rest)


def verdict(pieces, width, height, may_turn):
    answer = settled(stock(kind(w, h, may_turn) for w, h in pieces), width, height, 10_000, 10_000)
    return answer.verdict is Verdict.FOUND, answer


@pytest.mark.parametrize("may_turn", [True, False])
@pytest.mark.parametrize(("width", "height"), [(3, 3), (4, 2), (4, 3)])
def test_agrees_with_brute_force_on_all_small_instances(width, height, may_turn):
    for pieces in partitions(width * height, (width, height), width, height):
        found, answer = verdict(pieces, width, height, may_turn)
        assert found == fills(pieces, width, height, may_turn=may_turn), pieces
        assert found or answer.verdict is Verdict.IMPOSSIBLE


@settings(deadline=None, max_examples=150)
@given(st.lists(st.tuples(st.integers(1, 5), st.integers(1, 5)), min_size=4, max_size=7), st.booleans())
def test_agrees_with_brute_force_where_pieces_are_larger(pieces, may_turn):
    area = sum(w * h for w, h in pieces)
    for width in range(2, 12):
        if area % width == 0:
            found, _ = verdict(pieces, width, area // width, may_turn)
            assert found == fills(pieces, width, area // width, may_turn=may_turn)


def test_plan_cuts_every_piece():
    pieces = [(4, 12), (8, 6), (4, 6), (4, 6)]
    _, answer = verdict(pieces, 12, 12, may_turn=False)
    assert sorted(cut_block(answer.tree, 12, 12)) == sorted(pieces)


@pytest.mark.parametrize("may_turn", [True, False])
def test_pinwheel_is_proved_impossible(may_turn):
    assert not fills(PINWHEEL, 96, 96, may_turn=may_turn)
    assert verdict(PINWHEEL, 96, 96, may_turn)[1].verdict is Verdict.IMPOSSIBLE


def test_small_table_does_not_prove():
    answer = settled(stock(kind(*p) for p in PINWHEEL), 96, 96, 1, 1)
    assert answer.verdict is Verdict.STOPPED
