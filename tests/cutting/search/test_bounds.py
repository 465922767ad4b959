from collections import Counter
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from cutting.brute import fewest
from spreadwright.cutting.search.bounds import fewest_sheets, lifted, rounded
from spreadwright.cutting.search.kinds import kind

PIECES = st.lists(st.tuples(st.integers(1, 7), st.integers(1, 7)), min_size=1, max_size=5)


@settings(deadline=None)
@given(PIECES, st.booleans())
def test_bound_never_exceeds_the_truth(pieces, may_turn):
    counts = Counter(kind(w, h, may_turn) for w, h in pieces)
    assert 1 <= fewest_sheets(list(counts.items()), 7, 7) <= fewest(pieces, 7, 7, may_turn=may_turn)


@given(st.lists(st.integers(1, 60), min_size=1, max_size=12), st.integers(1, 30), st.integers(1, 6))
def test_stretched_sides_still_fit(sides, least, k):
    while sum(sides) > 60:
        sides.pop()
    for stretch in (lifted(60, least), rounded(60, k)):
        assert sum((stretch(x) for x in sides), Fraction(0)) <= 1


def test_large_pieces_take_a_sheet_each():
    assert fewest_sheets([(kind(6, 6), 3)], 10, 10) == 3
