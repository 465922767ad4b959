"""Prints, pixels and crop losses against published sizes; the data beside this file names them.

Sizes, names in centimetres and pixels from public tables of print sizes; what a camera's picture loses when it fills a
print is arithmetic on published shapes.
"""

import json
from fractions import Fraction
from pathlib import Path

import pytest

from spreadwright.geometry import Size
from spreadwright.lengths import Unit, ticks
from spreadwright.photos import COARSE, FINE, PRINTS, SHAPES, picture_loss, pixels, trims

PHOTO = json.loads((Path(__file__).parent / "photo.json").read_text())
LOSSES = PHOTO["crop_loss_when_filling_the_print"]


def size(sides) -> Size:
    return Size(*(ticks(str(side), Unit.INCH) for side in sides))


def test_the_table_holds_the_published_sizes_and_names():
    published = [(size(row["inch"]), f"{row['cm_trade_label']} cm".replace("x", "×")) for row in PHOTO["prints"]]
    assert [(each.size, each.metric) for each in PRINTS] == published


@pytest.mark.parametrize("row", PHOTO["prints"], ids=lambda row: row["code"])
def test_size_in_millimetres_and_in_pixels(row):
    whole = size(row["inch"])
    assert [Fraction(side, 320) for side in (whole.width, whole.height)] == [
        Fraction(str(side)) for side in row["mm_exact"]
    ]
    for per_inch, published in ((FINE, row["pixels_300ppi"]), (COARSE, row["pixels_150ppi"])):
        found = pixels(whole, per_inch)
        assert [found.width, found.height] == published


@pytest.mark.parametrize("row", LOSSES, ids=lambda row: f"{row['sensor']} on {row['print']}")
def test_what_a_picture_loses_when_it_fills_a_print(row):
    lost = picture_loss(SHAPES[row["sensor"]], size(row["print"].split("x")))
    assert round(float(lost), 5) == row["share_of_image_lost"]


@pytest.mark.parametrize("row", PHOTO["wider_mat_rule"]["examples_in"], ids=str)
def test_photo_of_a_wide_border_is_a_whole_print(row):
    assert trims(size(row["photo"]))[0].lost == 0
