"""Palettes: shares add up, colours are the photograph's own, and an independent k-means in CIELAB agrees."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from skimage import data
from skimage.color import rgb2lab
from sklearn.cluster import KMeans
from sklearn.datasets import load_sample_image

import photographs
from spreadwright.colour.palette import MOST, MOST_ACCENTS, Tone, palette, tally, together
from spreadwright.images import Raster, resized

PHOTOGRAPHS = {
    "astronaut": data.astronaut,
    "chelsea": data.chelsea,
    "coffee": data.coffee,
    "rocket": data.rocket,
    "china": lambda: load_sample_image("china.jpg"),
    "flower": lambda: load_sample_image("flower.jpg"),
}


def small(pixels: Raster, longest: int = 120) -> Raster:
    scale = longest / max(pixels.shape[:2])
    return resized(np.ascontiguousarray(pixels), round(pixels.shape[1] * scale), round(pixels.shape[0] * scale))


def of(pixels: Raster) -> tuple[Tone, ...]:
    return palette(tally(pixels))


def stripes(*parts: tuple[tuple[int, int, int], int]) -> Raster:
    return np.concatenate([np.full((count, 10, 3), colour, dtype=np.uint8) for colour, count in parts])


def mean_distance(lab: np.ndarray, middles: np.ndarray) -> float:
    return float(np.linalg.norm(lab[:, None, :] - middles[None, :, :], axis=-1).min(axis=1).mean())


@pytest.mark.parametrize("name", PHOTOGRAPHS)
def test_it_is_nearly_as_near_to_every_pixel_as_k_means(name):
    pixels = small(PHOTOGRAPHS[name]())
    own, lab = of(pixels), rgb2lab(pixels).reshape(-1, 3)
    rival = KMeans(len(own), n_init=2, random_state=0).fit(lab).cluster_centers_
    assert mean_distance(lab, np.array([tone.lab for tone in own])) < 1.25 * mean_distance(lab, rival)


@pytest.mark.parametrize("name", PHOTOGRAPHS)
def test_the_largest_colours_of_k_means_are_among_them(name):
    pixels = small(PHOTOGRAPHS[name]())
    lab = rgb2lab(pixels).reshape(-1, 3)
    rival = KMeans(3, n_init=2, random_state=0).fit(lab).cluster_centers_
    own = np.array([tone.lab for tone in of(pixels)])
    assert np.linalg.norm(rival[:, None, :] - own[None, :, :], axis=-1).min(axis=1).max() < 16


@pytest.mark.parametrize("name", [*PHOTOGRAPHS, *photographs.ALL])
def test_shares_add_up_and_colours_are_few(name):
    make = PHOTOGRAPHS.get(name) or photographs.ALL[name]
    found = of(small(np.asarray(make())))
    assert sum(tone.share for tone in found) == pytest.approx(1)
    assert 2 <= len(found) <= MOST + MOST_ACCENTS
    assert [tone.share for tone in found] == sorted((tone.share for tone in found), reverse=True)


def test_flat_colours_come_back_as_they_are():
    found = of(stripes(((200, 30, 40), 60), ((20, 40, 160), 30), ((240, 230, 210), 10)))
    assert [(tone.hex, round(tone.share, 6)) for tone in found] == [
        ("#c81e28", 0.6),
        ("#1428a0", 0.3),
        ("#f0e6d2", 0.1),
    ]


@given(st.tuples(*[st.integers(0, 255)] * 3))
def test_one_colour_is_a_palette_of_one(colour):
    (tone,) = of(np.full((4, 4, 3), colour, dtype=np.uint8))
    assert tone.hex == "#{:02x}{:02x}{:02x}".format(*colour) and tone.share == 1


def test_colours_that_are_alike_are_one():
    assert len(of(stripes(((120, 120, 120), 10), ((126, 126, 126), 10)))) == 1


def test_a_small_vivid_spot_is_not_lost():
    reds = [tone for tone in of(np.asarray(photographs.beach())) if tone.lab[1] > 40]
    assert len(reds) == 1 and 0.005 < reds[0].share < 0.03


def test_a_few_pixels_of_chance_are_no_colour():
    pixels = stripes(((120, 140, 110), 400))
    pixels[0, 0] = (255, 0, 255)
    assert len(of(pixels)) == 1


def test_where_a_pixel_lies_does_not_matter():
    pixels = small(data.coffee())
    mixed = np.random.default_rng(2).permutation(pixels.reshape(-1, 3)).reshape(pixels.shape)
    assert [tone.hex for tone in of(mixed)] == [tone.hex for tone in of(pixels)]


def test_several_photographs_count_alike_whatever_their_size():
    red, blue = stripes(((200, 30, 40), 10)), stripes(((20, 40, 160), 500))
    found = palette(together([tally(red), tally(blue)]))
    assert {tone.hex: tone.share for tone in found} == {"#c81e28": 0.5, "#1428a0": 0.5}


def test_noise_of_every_colour_has_a_palette():
    noise = np.random.default_rng(1).integers(0, 256, (200, 200, 3), dtype=np.uint8)
    assert len(of(noise)) <= MOST + MOST_ACCENTS
