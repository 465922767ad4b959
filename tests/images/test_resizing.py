"""Pixels in another size, and a part of them."""

import numpy as np

from spreadwright.images import limited, resized

HALVES = np.zeros((40, 60, 3), dtype=np.uint8)
HALVES[:, 30:] = 200


def test_it_has_the_size_that_is_wanted():
    assert resized(HALVES, 7, 11).shape == (11, 7, 3)


def test_pixels_are_limited_on_the_longest_side_and_never_enlarged():
    assert limited(HALVES, 30).shape == (20, 30, 3)
    assert limited(HALVES, 60) is HALVES is limited(HALVES, 999)


def test_the_same_size_changes_nothing():
    assert np.array_equal(resized(HALVES, 60, 40), HALVES)


def test_a_box_shows_that_part_alone():
    right, left = (resized(HALVES, 15, 20, box=box) for box in ((30, 0, 60, 40), (0, 0, 30, 40)))
    assert (right[:, 3:] == 200).all()
    assert not left[:, :-3].any()
