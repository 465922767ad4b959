import math

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.tolerance import Deviation, Source
from spreadwright.tolerance.deviation import EXACT, total

ONE, TWO, THREE = (Source("cut", number, 127) for number in (1, 2, 3))


@st.composite
def deviations(draw):
    sources = draw(st.lists(st.sampled_from([ONE, TWO, THREE, Source("ruler", 1, 254)]), max_size=6))
    shifts = draw(st.integers(-500, 500))
    signs = draw(st.lists(st.booleans(), min_size=len(sources), max_size=len(sources)))
    parts = [Deviation.of(s) if plus else -Deviation.of(s) for s, plus in zip(sources, signs, strict=True)]
    return total(parts) + Deviation(shifts)


@given(deviations(), deviations(), deviations())
def test_deviations_add_like_numbers(a, b, c):
    assert a + b == b + a and (a + b) + c == a + (b + c)
    assert a - a == EXACT and a - b == -(b - a)


@given(deviations(), deviations())
def test_together_nothing_is_worse_than_both_worst_cases(a, b):
    assert (a + b).worst <= a.worst + b.worst
    assert a.worst == (-a).worst and a.typical == (-a).typical


@given(deviations())
def test_typical_lies_between_the_shift_and_the_worst_case(a):
    assert abs(a.shift) <= a.typical <= a.worst
    assert abs(a.shift) <= a.expanded <= a.worst
    assert max(a.highest, (-a).highest) == a.worst


def test_one_cut_may_be_off_by_the_accuracy():
    assert (Deviation.of(ONE).worst, Deviation.of(ONE).typical) == (127, 127)


def test_independent_cuts_add_as_root_of_squares():
    between = Deviation.of(ONE) - Deviation.of(TWO)
    assert (between.worst, between.typical) == (254, math.ceil(127 * math.sqrt(2)))
    assert math.isclose(between.standard, 127 * math.sqrt(2 / 3))
    assert between.expanded == math.ceil(2 * 127 * math.sqrt(2 / 3))


def test_one_cut_that_counts_twice_is_doubled():
    twice = Deviation.of(ONE) + Deviation.of(ONE)
    assert (twice.worst, twice.typical) == (254, 254)


def test_known_shift_is_no_matter_of_chance():
    shifted = Deviation.of(ONE, 64)
    assert (shifted.worst, shifted.typical, shifted.highest, (-shifted).highest) == (191, 191, 191, 63)
    assert shifted.standard == Deviation.of(ONE).standard
