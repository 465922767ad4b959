"""Photo sizes against published examples of mats; the data beside this file names them.

Public guides to matting photos: with an edge of 1/8 in the photo is 1/4 in smaller than its mat each way, with an edge
of 1/4 in it is 1/2 in smaller. Common practice of the trade.
"""

import json
from pathlib import Path

import pytest

from spreadwright.geometry import Size
from spreadwright.lengths import Unit, ticks
from spreadwright.photos import photo_size

PHOTO = json.loads((Path(__file__).parent / "photo.json").read_text())


def size(pair: list[float]) -> Size:
    return Size(*(ticks(str(side), Unit.INCH) for side in pair))


@pytest.mark.parametrize("row", PHOTO["mat_rule"]["examples_in"], ids=str)
def test_photo_on_a_mat_with_a_narrow_edge(row):
    assert photo_size(size(row["mat"]), ticks("1/8", Unit.INCH)) == size(row["photo"])


@pytest.mark.parametrize("row", PHOTO["wider_mat_rule"]["examples_in"], ids=str)
def test_photo_on_a_mat_with_a_wide_edge(row):
    assert photo_size(size(row["mat"]), ticks("1/4", Unit.INCH)) == size(row["photo"])
