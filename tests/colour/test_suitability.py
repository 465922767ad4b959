"""How well papers suit photographs: laws, and papers that everybody would choose."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.colour.palette import Tone
from spreadwright.colour.spaces import lab
from spreadwright.colour.suitability import NEUTRAL, face_fit, likeness, loudest, set_fit
from spreadwright.images.srgb import encoded_of, linear


def tone(colour: str, share: float = 1.0) -> Tone:
    first, second, third = lab(linear(encoded_of(colour))).tolist()
    return Tone(colour, share, (first, second, third))


def fit(paper: str, *photograph: Tone) -> float:
    return face_fit([tone(paper)], photograph).value


SEA = (tone("#2d6f95", 0.45), tone("#86b3de", 0.35), tone("#e2ca9d", 0.19), tone("#cd2c28", 0.01))
WOOD = (tone("#46592c", 0.6), tone("#673f26", 0.4))
SNOW = (tone("#e9edf2", 0.7), tone("#9aa3ad", 0.3))
colours = st.tuples(*[st.integers(0, 255)] * 3).map(lambda rgb: tone("#{:02x}{:02x}{:02x}".format(*rgb)))
tones = st.lists(colours, min_size=1, max_size=5)


@given(tones, tones)
def test_everything_fits_from_nought_to_one(face, photograph):
    assert 0 <= face_fit(face, photograph).value <= 1
    assert 0 <= set_fit([face, photograph], photograph) <= 1


@given(colours)
def test_a_colour_is_wholly_like_itself(colour):
    assert likeness([colour], [colour])[0, 0] == pytest.approx(1)


@given(tones, tones)
def test_the_nearest_colour_is_one_of_the_photographs(face, photograph):
    found = face_fit(face, photograph)
    assert found.nearest in photograph and 0 <= found.likeness <= 1


@given(colours)
def test_a_paper_of_the_photographs_only_colour_fits_wholly(colour):
    assert face_fit([colour], [colour]).value == pytest.approx(1)


@pytest.mark.parametrize(
    ("photograph", "better", "worse"),
    [
        (SEA, "#496373", "#c46a52"),
        (SEA, "#2d6f95", "#46592c"),
        (SEA, "#e2ca9d", "#b02a90"),
        (WOOD, "#5a6146", "#4a5672"),
        (WOOD, "#8a5a38", "#e08ab0"),
        (SNOW, "#cfcdd3", "#e0781e"),
    ],
)
def test_papers_of_its_hues_suit_a_photograph_better(photograph, better, worse):
    assert fit(better, *photograph) > fit(worse, *photograph) + 0.1


def test_a_tint_suits_better_than_another_hue():
    assert fit("#bcd6e6", tone("#1f5f8a")) > fit("#8a3a1f", tone("#1f5f8a"))


@pytest.mark.parametrize("photograph", [SEA, WOOD, SNOW, (tone("#ff0000"),)])
def test_papers_of_no_hue_suit_everything(photograph):
    assert fit("#d8d8d8", *photograph) > 0.9 * NEUTRAL


def test_what_is_louder_than_the_photographs_loses():
    assert fit("#ff2a10", *SNOW, tone("#c8958c", 0.01)) < fit("#c8958c", *SNOW, tone("#c8958c", 0.01))
    assert loudest(SNOW) < 10


def test_a_set_that_has_all_colours_suits_better_than_one_that_has_some():
    everything = [[tone("#2d6f95")], [tone("#e2ca9d")], [tone("#cd2c28")]]
    assert set_fit(everything, SEA) > set_fit([everything[0]] * 3, SEA)


def test_a_print_fits_as_its_colours_do_by_their_shares():
    sea, magenta = tone("#2d6f95", 0.75), tone("#b02a90", 0.25)
    both = face_fit([sea, magenta], SEA).value
    assert both == pytest.approx(0.75 * face_fit([sea], SEA).value + 0.25 * face_fit([magenta], SEA).value)
