"""Crops have the shape of what they fill, lose no more than they must, and keep what matters."""

import json
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.photos import SHAPES, Pixels, picture_loss
from spreadwright.photos.cropping import Crop, Focus, cropped, per_inch

OUTSIDE = Path(__file__).parents[1] / "outside" / "photo.json"
LOSSES = json.loads(OUTSIDE.read_text())["crop_loss_when_filling_the_print"]
EVEN = np.full((40, 60), 1 / 2400)
sides = st.integers(1, 9000)
pictures = st.builds(Pixels, sides, sides)
shapes = st.builds(Size, sides, sides)
shares = st.fractions(0, 1, max_denominator=1000)


def spot(x: float, y: float, height: int = 40, width: int = 60) -> np.ndarray:
    """All attention about one point, shares from the top left."""
    down, across = (np.arange(count) / count for count in (height, width))
    seen = np.exp(-((down[:, None] - y) ** 2 + (across[None, :] - x) ** 2) / 0.002)
    return seen / seen.sum()


@given(pictures, shapes)
def test_the_crop_has_the_shape_of_what_it_fills(picture, shape):
    crop = cropped(picture, shape, EVEN)
    assert crop.width * picture.width * shape.height == crop.height * picture.height * shape.width


@given(pictures, shapes, st.one_of(st.none(), st.builds(Focus, shares, shares)))
def test_the_crop_lies_within_the_photograph_and_is_the_largest(picture, shape, focus):
    crop = cropped(picture, shape, EVEN, focus)
    assert 0 <= crop.left <= 1 - crop.width and 0 <= crop.top <= 1 - crop.height
    assert 1 in (crop.width, crop.height)


@given(pictures, shapes)
def test_what_is_lost_is_exact(picture, shape):
    one, other = Fraction(picture.width, picture.height), Fraction(shape.width, shape.height)
    assert cropped(picture, shape, EVEN).lost == 1 - min(one, other) / max(one, other)


@pytest.mark.parametrize("name", SHAPES)
def test_losses_agree_with_those_of_the_shapes_of_cameras(name):
    ratio = SHAPES[name]
    size = Size(5, 7)
    lying, upright = Pixels(ratio.numerator, ratio.denominator), Pixels(ratio.denominator, ratio.numerator)
    assert cropped(upright, size, EVEN).lost == picture_loss(ratio, size) == cropped(lying, size.turned(), EVEN).lost


@pytest.mark.parametrize("published", LOSSES, ids=lambda each: f"{each['sensor']} on {each['print']}")
def test_published_losses_are_met(published):
    across, down = (int(each) for each in published["sensor"].split(":"))
    short, long = (int(2 * float(each)) for each in published["print"].split("x"))
    lost = cropped(Pixels(across, down), Size(long, short), EVEN).lost
    assert float(lost) == pytest.approx(published["share_of_image_lost"], abs=5e-6)


@pytest.mark.parametrize(("x", "y"), [(0.1, 0.5), (0.5, 0.5), (0.85, 0.5), (0.5, 0.1), (0.5, 0.9)])
@pytest.mark.parametrize("shape", [Size(1, 1), Size(2, 3), Size(4, 1)])
def test_what_draws_attention_stays_whole(x, y, shape):
    crop = cropped(Pixels(600, 400), shape, spot(x, y))
    assert crop.kept > 0.99


def test_nothing_in_particular_keeps_the_middle():
    crop = cropped(Pixels(600, 400), Size(1, 1), EVEN)
    assert (crop.left, crop.top, crop.height) == (Fraction(1, 6), 0, 1)
    assert crop.kept == pytest.approx(2 / 3)


@given(shares, shares)
def test_a_focus_overrides_attention(x, y):
    crop = cropped(Pixels(600, 400), Size(1, 1), spot(0.9, 0.5), Focus(x, y))
    assert crop.left <= x <= crop.left + crop.width
    middle = crop.left + crop.width / 2
    assert middle == x or crop.left in (0, 1 - crop.width)


def test_the_mirrored_photograph_is_cropped_in_the_mirror():
    crop, other = (cropped(Pixels(600, 400), Size(1, 1), seen) for seen in (spot(0.2, 0.5), spot(0.2, 0.5)[:, ::-1]))
    assert other.left == 1 - crop.width - crop.left


def test_pixels_to_the_inch_follow_from_the_crop():
    whole = Crop(Fraction(0), Fraction(0), Fraction(1), Fraction(1), 1.0)
    inch = TICKS[Unit.INCH]
    assert per_inch(whole, Pixels(1800, 1200), Size(6 * inch, 4 * inch)) == 300
    half = Crop(Fraction(0), Fraction(0), Fraction(1, 2), Fraction(1), 1.0)
    assert per_inch(half, Pixels(1200, 600), Size(4 * inch, 4 * inch)) == 150
