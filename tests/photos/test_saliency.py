"""Attention adds up, goes where something is, and follows faces."""

import numpy as np
import pytest
from skimage import data

import photographs
from spreadwright.colour.spaces import oklab
from spreadwright.geometry import Size
from spreadwright.images import Raster, resized
from spreadwright.images.srgb import light_of
from spreadwright.photos import Pixels
from spreadwright.photos.cropping import cropped
from spreadwright.photos.faces import FaceSpot, can_find_faces, faces
from spreadwright.photos.saliency import LONGEST, attention


def small(pixels: Raster, longest: int = LONGEST) -> Raster:
    scale = longest / max(pixels.shape[:2])
    return resized(pixels, round(pixels.shape[1] * scale), round(pixels.shape[0] * scale))


def seen(pixels: Raster, found: tuple[FaceSpot, ...] = ()) -> np.ndarray:
    return attention(oklab(light_of(small(pixels))), found)


def share_within(shares: np.ndarray, left: float, top: float, right: float, bottom: float) -> float:
    height, width = shares.shape
    return float(shares[int(top * height) : int(bottom * height), int(left * width) : int(right * width)].sum())


@pytest.mark.parametrize("name", photographs.ALL)
def test_all_shares_add_up_to_one(name):
    shares = seen(np.asarray(photographs.ALL[name]()))
    assert shares.sum() == pytest.approx(1) and shares.min() >= 0


def test_nothing_to_see_is_seen_evenly():
    shares = attention(np.zeros((20, 30, 3)))
    assert np.allclose(shares, 1 / 600)


@pytest.mark.parametrize("size", [(1, 1), (1, 90), (90, 1), (2, 3)])
def test_the_smallest_pictures_are_looked_at(size):
    shares = attention(oklab(np.random.default_rng(1).random((*size, 3))))
    assert shares.shape == size and shares.sum() == pytest.approx(1)


@pytest.mark.parametrize("x", [0.2, 0.5, 0.8])
def test_a_flower_before_leaves_draws_most(x):
    shares = seen(np.asarray(photographs.flower(at=(x, 0.5))))
    assert share_within(shares, x - 0.18, 0.27, x + 0.18, 0.73) > 0.6


KITE = (0.73, 0.14, 0.83, 0.39)


def test_a_kite_draws_more_than_the_shore_that_runs_through():
    assert share_within(seen(np.asarray(photographs.beach())), *KITE) > 0.6


@pytest.mark.parametrize("shape", [Size(5, 2), Size(2, 5), Size(3, 1), Size(1, 1)])
def test_strips_keep_a_small_figure_whole(shape):
    pixels = np.asarray(photographs.beach())
    for upright, box in ((pixels, KITE), (pixels[::-1, ::-1], tuple(1 - KITE[side] for side in (2, 3, 0, 1)))):
        crop = cropped(Pixels(900, 600), shape, seen(upright))
        assert crop.left <= box[0] and crop.left + crop.width >= box[2]
        assert crop.top <= box[1] and crop.top + crop.height >= box[3]


def test_the_mirrored_picture_is_seen_in_the_mirror():
    pixels = np.asarray(photographs.flower())
    assert np.allclose(seen(pixels[:, ::-1]), seen(pixels)[:, ::-1], atol=1e-4)


def test_faces_draw_most_of_all():
    face = FaceSpot(0.3, 0.3, 0.2, 0.25)
    assert share_within(seen(np.asarray(photographs.beach()), (face,)), 0.2, 0.17, 0.4, 0.43) > 0.55


def test_a_face_is_found_where_it_is():
    assert can_find_faces()
    found = faces(small(data.astronaut(), 400))
    assert any(abs(each.x - 0.44) < 0.05 and abs(each.y - 0.2) < 0.08 for each in found)


def test_a_coffee_has_no_face():
    assert faces(small(data.coffee(), 400)) == ()


def test_without_the_extra_no_face_is_found(monkeypatch):
    monkeypatch.setattr("spreadwright.photos.faces.can_find_faces", lambda: False)
    assert faces(small(data.astronaut(), 400)) == ()
