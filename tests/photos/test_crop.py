from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit, ticks
from spreadwright.photos import COARSE, FINE, PRINTS, SHAPES, picture_loss, pixels, share_text, trims

SIDES = st.integers(1, 13 * 8128)
SIZES = st.builds(Size, SIDES, SIDES)


def inches(width: str, height: str) -> Size:
    return Size(ticks(width, Unit.INCH), ticks(height, Unit.INCH))


@given(SIZES)
def test_photo_fits_on_every_print_that_is_offered_one_way_round_or_the_other(size):
    offered = [trim.print for trim in trims(size)]
    assert all(each.size.fits(size) or each.size.fits(size.turned()) for each in offered)
    assert not any(each.size.fits(size) or each.size.fits(size.turned()) for each in PRINTS if each not in offered)


@given(SIZES)
def test_what_is_lost_and_what_is_kept_make_the_print(size):
    for trim in trims(size):
        assert trim.lost * trim.print.size.area + size.area == trim.print.size.area


@given(SIZES)
def test_prints_come_with_the_least_loss_first_and_turning_changes_nothing(size):
    found = trims(size)
    assert [trim.lost for trim in found] == sorted(trim.lost for trim in found)
    assert found == trims(size.turned())


@given(SIZES, st.sampled_from([FINE, COARSE]))
def test_pixels_are_the_fewest_that_are_enough(size, per_inch):
    found = pixels(size, per_inch)
    assert found.width == ceil(Fraction(size.width * per_inch, TICKS[Unit.INCH]))
    assert (found.height - 1) * TICKS[Unit.INCH] < size.height * per_inch <= found.height * TICKS[Unit.INCH]


@given(SIZES, st.sampled_from(sorted(SHAPES.values())))
def test_picture_of_the_very_shape_loses_nothing_and_any_other_something(size, shape):
    sides = sorted((size.width, size.height))
    lost = picture_loss(shape, size)
    assert 0 <= lost < 1 and (lost == 0) == (Fraction(sides[1], sides[0]) == shape)


def test_photo_that_no_print_covers():
    assert trims(inches("8 1/8", "9 1/8")) == ()
    assert trims(inches("12", "8"))[0].lost == 0


@pytest.mark.parametrize(
    ("share", "text"), [("1/1000", "0.1 %"), ("1/2001", "0 %"), ("1/2000", "0.1 %"), ("1", "100 %")]
)
def test_share_in_words(share, text):
    assert share_text(Fraction(share)) == text
