import re
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.millimetres import mm, ratio, scaled

any_ticks = st.integers(-(10**7), 10**7)


@given(any_ticks)
def test_written_millimetres_are_the_nearest_thousandth(length: int):
    assert abs(Fraction(mm(length)) - Fraction(length, 320)) <= Fraction(1, 2000)


@given(any_ticks)
def test_a_number_is_written_in_the_shortest_way(length: int):
    assert re.fullmatch(r"0|-?(0|[1-9]\d*)(\.\d{0,2}[1-9])?", mm(length)) and mm(length) != "-0"


@given(any_ticks, any_ticks)
def test_rounding_keeps_the_order(a: int, b: int):
    assert (scaled(min(a, b), 3)) <= scaled(max(a, b), 3)


def test_a_tiny_negative_ratio_is_nought():
    assert ratio(-0.0004) == "0"
