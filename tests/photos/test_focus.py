"""Points of photographs, as people write them."""

from fractions import Fraction

import pytest

from spreadwright.photos.cropping import Focus
from spreadwright.photos.focus import focus_points

NAMES = ["beach.jpg", "a=b.jpg", "3"]
MIDDLE = Focus(Fraction(1, 2), Fraction(1, 2))


@pytest.mark.parametrize(
    ("text", "number"),
    [("beach.jpg=50,50", 0), ("1=50,50", 0), ("a=b.jpg = 50 , 50", 1), ("3=50.0,50.00", 2), (" 2 =50,50", 1)],
)
def test_a_photograph_is_meant_by_name_or_number(text, number):
    assert focus_points([text], NAMES) == {number: MIDDLE}


def test_one_photograph_needs_no_name():
    assert focus_points(["50,50"], ["beach.jpg"]) == {0: MIDDLE}


def test_each_photograph_has_its_point():
    assert focus_points(["1=0,0", "2=100,100"], NAMES) == {
        0: Focus(Fraction(0), Fraction(0)),
        1: Focus(Fraction(1), Fraction(1)),
    }


@pytest.mark.parametrize("text", ["", "50", "50;50", "50,101", "-1,5", "50,50,50", "1=a,b", "=", "1e1,5", "9999,1"])
def test_what_is_no_point_is_refused(text):
    with pytest.raises(ValueError, match="is not a point"):
        focus_points([text], ["beach.jpg"])


@pytest.mark.parametrize("text", ["50,50", "sea.jpg=50,50", "0=50,50", "4=50,50", "99999999999=1,1"])
def test_a_point_of_no_photograph_is_refused(text):
    with pytest.raises(ValueError, match=r"none of the photos: 1 beach\.jpg"):
        focus_points([text], NAMES)


def test_two_points_of_one_photograph_are_refused():
    with pytest.raises(ValueError, match="two points"):
        focus_points(["1=1,1", "beach.jpg=2,2"], NAMES)
