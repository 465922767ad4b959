from dataclasses import replace
from fractions import Fraction

import pytest

from spreadwright.gallery.paper_set_page import face_words, stock_words, weight_words
from spreadwright.geometry import Size
from spreadwright.model import BLANK, Basis, Face, Paper, Pattern, Texture, Weight, basis_weight

PAPER = Paper("rope", "Rope", Size(97536, 97536), Face(Pattern.STRIPE, ("#ffffff", "#000000"), 3200))


@pytest.mark.parametrize(
    ("face", "words"),
    [
        (BLANK, "bare paper"),
        (Face(Pattern.PLAIN, ("#fdfcf9",), 8128), "plain"),
        (Face(Pattern.LEAF, ("#ffffff",), 3200, is_directional=True), "leaf, one-way"),
        (Face(Pattern.LINEN, ("#ffffff",), 3200, texture=Texture.LINEN), "linen"),
        (Face(Pattern.PLAIN, ("#ffffff",), 3200, texture=Texture.FELT), "plain, felt texture"),
        (Face(Pattern.PICTURE, ("#ffffff",), 3200, is_directional=True), "printed, one-way"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_face_in_words(face: Face, words: str):
    assert face_words(face) == words


def test_weight_is_told_with_that_of_a_sheet():
    assert weight_words(replace(PAPER, weight=Weight(Fraction(216)))) == "216 g/m², 20.1 g a sheet"
    sold = replace(PAPER, weight=basis_weight(Fraction(65), Basis.COVER))
    assert weight_words(sold) == "176 g/m² (65 lb cover), 16.3 g a sheet"


def test_sheets_at_hand_are_told_where_they_are_counted():
    assert [stock_words(replace(PAPER, sheets=count)) for count in (None, 0, 1, 4)] == [
        "",
        "0 sheets at hand",
        "1 sheet at hand",
        "4 sheets at hand",
    ]
