"""Photographs lie where least is lost, over all of them together."""

from itertools import permutations

import numpy as np
import pytest

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.photos import COARSE, Pixels
from spreadwright.photos.cropping import cropped, per_inch
from spreadwright.photos.matching import AREA, ATTENTION, TOO_COARSE, Shot, laid

INCH = TICKS[Unit.INCH]
EVEN = np.full((20, 20), 1 / 400)


def inches(width: int, height: int) -> Size:
    return Size(width * INCH, height * INCH)


def shot(width: int, height: int) -> Shot:
    return Shot(Pixels(width, height), EVEN)


def cost(each: Shot, mat: Size) -> float:
    crop = cropped(each.size, mat, each.attention)
    missing = max(0.0, 1 - float(per_inch(crop, each.size, mat)) / COARSE)
    return ATTENTION * (1 - crop.kept) + AREA * float(crop.lost) + TOO_COARSE * missing


def test_each_shape_finds_its_own():
    shots = [shot(3000, 2000), shot(2000, 3000), shot(2000, 2000)]
    found = laid(shots, [inches(4, 4), inches(6, 4), inches(4, 6)])
    assert [(each.mat, each.shot) for each in found] == [(0, 2), (1, 0), (2, 1)]
    assert all(each.crop.lost == 0 and each.crop.kept == pytest.approx(1) for each in found)


@pytest.mark.parametrize("seed", range(12))
def test_no_other_arrangement_loses_less(seed):
    random = np.random.default_rng(seed)
    shots = [shot(int(width), int(height)) for width, height in random.integers(300, 3000, (4, 2))]
    mats = [inches(int(width), int(height)) for width, height in random.integers(2, 8, (4, 2))]
    found = sum(cost(shots[each.shot], mats[each.mat]) for each in laid(shots, mats))
    least = min(
        sum(cost(shots[one], mat) for one, mat in zip(order, mats, strict=True)) for order in permutations(range(4))
    )
    assert found == pytest.approx(least, abs=1e-5)


def test_the_largest_mats_are_filled_first():
    found = laid([shot(3000, 2000)], [inches(3, 2), inches(6, 4)])
    assert [each.mat for each in found] == [1]


def test_a_small_photograph_does_not_go_where_it_would_look_soft():
    found = laid([shot(600, 400), shot(3000, 2000)], [inches(9, 6), inches(3, 2)])
    assert [each.shot for each in found] == [1, 0]


def test_more_photographs_than_mats_leave_the_worst_over():
    found = laid([shot(4000, 400), shot(3000, 2000)], [inches(6, 4)])
    assert [each.shot for each in found] == [1]


def test_no_mats_take_no_photographs():
    assert laid([shot(3000, 2000)], []) == ()
