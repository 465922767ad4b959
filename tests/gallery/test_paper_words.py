from dataclasses import replace
from fractions import Fraction

import pytest

from spreadwright.gallery.overview.paper_words import core_words, face_words, side_words, stock_words, weight_words
from spreadwright.geometry import Size
from spreadwright.model import BLANK, Basis, Core, Face, Paper, Pattern, Side, Texture, Weight, basis_weight
from spreadwright.words import speaking

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


def test_every_pattern_and_texture_has_words_of_its_own():
    faces = [Face(pattern, ("#ffffff",), 3200) for pattern in Pattern]
    faces += [Face(Pattern.PLAIN, ("#ffffff",), 3200, texture=texture) for texture in Texture if texture != "smooth"]
    assert [face_words(face) for face in faces] == [str(face) for face in faces]
    with speaking("fr"):
        assert len({face_words(face) for face in faces}) == len(faces)


def test_papers_are_told_in_the_language_that_is_spoken():
    assert side_words(PAPER, Side.BACK) == "Rope, back: bare paper"
    with speaking("de"):
        assert side_words(PAPER, Side.FRONT) == "Rope, Vorderseite: Streifen"
        assert weight_words(PAPER) == "200 g/m², 18,6 g je Bogen"
        assert core_words(replace(PAPER, core=Core.DYED)) == "durchgefärbt"
