"""The examples that JCGM 100:2008 works out itself, in its own figures, with a unit small enough for whole numbers."""

import pytest

from spreadwright.tolerance import Deviation, Source
from spreadwright.tolerance.deviation import total


def test_bounds_of_a_copper_coefficient_give_its_standard_uncertainty():
    """4.3.7, example 1: an error of at most 0.40 in the last place but one gives u = 0.23 and a variance of 0.0533."""
    coefficient = Deviation.of(Source("value", 1, 40))
    assert round(coefficient.standard) == 23
    assert coefficient.standard**2 == pytest.approx(533, abs=0.5)


def test_ten_resistors_in_series_add_by_how_they_were_calibrated():
    """5.2.2, example: 100 milliohms each; against one reference they make 1 ohm, independently 0.32 ohm."""
    one = 100 * 3**0.5  # the bound of a uniform error with this standard deviation
    same = total(Deviation.of(Source("reference", 1, round(1000 * one))) for _ in range(10))
    apart = total(Deviation.of(Source("resistor", number, round(1000 * one))) for number in range(10))
    assert same.standard / 1e6 == pytest.approx(1.00, abs=0.005)
    assert apart.standard / 1e6 == pytest.approx(0.32, abs=0.005)
