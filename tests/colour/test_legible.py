import numpy as np
import pytest

from spreadwright.colour.legible import TOLD_APART, Sight, in_sight, meets
from spreadwright.colour.measure import Look
from spreadwright.colour.scene import PAGE, PHOTO, Patch, Surface, scene
from spreadwright.geometry import Rect, Size
from spreadwright.images.srgb import encoded_of, linear

ONE, OTHER, THIRD = (Surface(name) for name in ("a", "b", "c"))
SIZE = Size(1000, 1000)


def look(colour, busyness=0.0):
    red, green, blue = linear(encoded_of(colour)).tolist()
    return Look((red, green, blue), busyness)


def side_by_side(*surfaces):
    patches = [Patch("left", each, Rect(number * 100, 0, 100, 1000)) for number, each in enumerate(surfaces)]
    return scene(Size(100 * len(surfaces), 1000), patches, ())


def only(one, other, sight):
    (found,) = meets(side_by_side(ONE, OTHER), {ONE: one, OTHER: other}, sight)
    return found


def test_black_and_white_have_the_greatest_contrast_in_every_sight():
    for sight in Sight:
        met = only(look("#000000"), look("#ffffff"), sight)
        assert met.contrast == pytest.approx(21, abs=1e-4) and met.difference == pytest.approx(100, abs=0.1)


def test_greys_are_the_same_in_every_sight():
    greys = linear(np.repeat(np.linspace(0, 1, 9)[:, None], 3, axis=1))
    for sight in Sight:
        assert in_sight(sight, greys) == pytest.approx(greys, abs=1e-5)


def test_red_and_green_of_one_luminance_are_lost_in_grey():
    red, green = look("#d03030"), look("#37802f")
    assert only(red, green, Sight.COLOUR).is_told_apart
    grey = only(red, green, Sight.GREY)
    assert not grey.is_told_apart and grey.difference < TOLD_APART and grey.contrast < 1.1


def test_red_and_green_are_closer_without_cones_for_either():
    red, green = look("#c0603c"), look("#7d8a2e")
    usual = only(red, green, Sight.COLOUR).difference
    assert only(red, green, Sight.DEUTAN).difference < usual / 2
    assert only(red, green, Sight.TRITAN).difference > usual / 2


def test_a_print_is_told_from_a_plain_paper_of_its_colour():
    assert not only(look("#708050"), look("#718151"), Sight.GREY).is_told_apart
    assert only(look("#708050"), look("#718151", 0.7), Sight.GREY).is_told_apart


def test_papers_meet_once_and_the_longest_meeting_comes_first():
    looks = {ONE: look("#111111"), OTHER: look("#555555"), THIRD: look("#999999")}
    found = meets(side_by_side(ONE, OTHER, THIRD, OTHER), looks, Sight.COLOUR)
    assert found[0].surfaces == (OTHER, THIRD)
    assert len({met.surfaces for met in found}) == len(found)


def test_photographs_and_papers_that_look_alike_are_passed_over():
    found = scene(SIZE, [Patch("left", ONE, Rect(0, 0, 500, 1000)), Patch("left", PHOTO, Rect(500, 0, 500, 1000))], ())
    assert meets(found, {ONE: look("#111111")}, Sight.COLOUR) == ()
    same = {ONE: look("#111111"), OTHER: look("#111111"), PAGE: look("#ffffff")}
    assert meets(side_by_side(ONE, OTHER), same, Sight.COLOUR) == ()
