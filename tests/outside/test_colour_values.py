"""Colour formulas against published values; where each comes from is said in the two files."""

import json
from pathlib import Path

import numpy as np
import pytest

from spreadwright.colour.contrast import ratio
from spreadwright.colour.deficiency import Deficiency, seen_with
from spreadwright.colour.difference import ciede2000
from spreadwright.colour.spaces import D50, chroma, lab, luminance, oklab, oklab_of_xyz
from spreadwright.images.srgb import encoded, encoded_of, hex_of, linear

HERE = Path(__file__).parent
PAIRS = json.loads((HERE / "ciede2000.json").read_text())
KNOWN = json.loads((HERE / "colour.json").read_text())


def light(colour):
    return linear(encoded_of(colour))


@pytest.mark.parametrize("pair", PAIRS["pairs"], ids=lambda pair: pair["pair"])
@pytest.mark.parametrize("one,other", [("lab1", "lab2"), ("lab2", "lab1")])
def test_difference_is_the_published_one(pair, one, other):
    found = float(ciede2000(pair[one], pair[other]))
    accepted = [pair["de00"], *(PAIRS["boundary_alternatives"].get(str(pair["pair"]), pair["de00"]),)]
    assert min(abs(found - value) for value in accepted) <= PAIRS["tolerance"]


def test_all_pairs_are_there_and_go_through_at_once():
    ones, others = (np.array([pair[name] for pair in PAIRS["pairs"]]) for name in ("lab1", "lab2"))
    table = ciede2000(ones[:, None], others[None, :])
    assert table.shape == (34, 34)
    assert np.diagonal(table) == pytest.approx(ciede2000(ones, others), abs=0)
    assert ciede2000(ones, ones) == pytest.approx(0, abs=0)


@pytest.mark.parametrize("pair", KNOWN["wcag"]["pairs"], ids=lambda pair: f"{pair['a']} {pair['b']}")
def test_contrast_is_the_published_one(pair):
    one, other = luminance(light(pair["a"])), luminance(light(pair["b"]))
    assert ratio(one, other) == ratio(other, one) == pytest.approx(pair["ratio"], rel=5e-5)


def test_luminance_of_grey_is_the_published_one():
    assert luminance(light("#808080")) == pytest.approx(KNOWN["wcag"]["luminance_808080"], abs=5e-8)


@pytest.mark.parametrize("sample", KNOWN["oklab"]["published_xyz_to_oklab"], ids=str)
def test_oklab_of_xyz_is_the_published_one(sample):
    found = oklab_of_xyz(sample["xyz"])
    assert found == pytest.approx(sample["oklab"], abs=KNOWN["oklab"]["published_tolerance"])


@pytest.mark.parametrize("sample", KNOWN["oklab"]["srgb_samples"], ids=lambda sample: sample["hex"])
def test_oklab_of_srgb_is_the_published_one(sample):
    found = oklab(light(sample["hex"]))
    assert found == pytest.approx(sample["oklab"], abs=1e-4)
    lightness, colourful, hue = sample["oklch"]
    assert (found[0], chroma(found)) == pytest.approx((lightness, colourful), abs=1e-4)
    if hue is not None:
        assert np.degrees(np.arctan2(found[2], found[1])) % 360 == pytest.approx(hue, abs=0.01)


@pytest.mark.parametrize("sample", KNOWN["cielab_d65_samples"], ids=lambda sample: sample["hex"])
def test_cielab_is_the_published_one(sample):
    assert lab(light(sample["hex"])) == pytest.approx(sample["lab"], abs=0.02)


def test_cielab_for_prints_has_another_white():
    assert lab(light("#ff0000"), D50) == pytest.approx((54.291, 80.805, 69.891), abs=0.01)
    assert lab(light("#ffffff"), D50) == pytest.approx((100, 0, 0), abs=0.001)


SEEN = [
    (Deficiency(name), colour, expected)
    for name, table in KNOWN["cvd"]["expected_hex"]["machado_1.0"].items()
    for colour, expected in table.items()
]


@pytest.mark.parametrize(("deficiency", "colour", "expected"), SEEN)
def test_deficient_sight_is_the_published_one(deficiency, colour, expected):
    found = encoded_of(hex_of(encoded(seen_with(deficiency, light(colour)))))
    assert np.abs(found - encoded_of(expected)).max() * 255 <= 1.001


@pytest.mark.parametrize("deficiency", Deficiency)
def test_matrices_are_the_published_ones(deficiency):
    published = np.array(KNOWN["cvd"]["machado2009"]["severity"][deficiency.value]["1.0"])
    dim = np.eye(3) * 0.05 + 0.3  # so that nothing is clipped
    assert seen_with(deficiency, dim) == pytest.approx(dim @ published.T, abs=1e-9)


@pytest.mark.parametrize("colour", ["#000000", "#010203", "#7f8081", "#c96f56", "#ffffff"])
def test_every_colour_comes_back(colour):
    assert hex_of(encoded(light(colour))) == colour
