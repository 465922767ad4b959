from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from swatches.prints import PRINTS, painted

SHIPPED = Path(__file__).parents[2] / "recipes/paper-sets/potting-bench"
ENCODERS_DIFFER = 1.5
"""By how much versions of the library that writes JPEG may differ, steps of 255 in the mean."""
QUICK = ("marbled.jpg", "shoots.jpg", "washed-stripes.jpg")
"""Painted in a second or two; the others take longer."""


def pixels(data):
    return np.asarray(Image.open(BytesIO(data)).convert("RGB"), dtype=float)


@pytest.mark.parametrize("name", QUICK)
def test_painting_again_gives_the_shipped_picture(name):
    shipped, again = pixels((SHIPPED / name).read_bytes()), pixels(painted(name))
    assert shipped.shape == again.shape
    assert np.abs(shipped - again).mean() < ENCODERS_DIFFER


def test_every_shipped_picture_is_painted():
    assert sorted(PRINTS) == sorted(path.name for path in SHIPPED.iterdir())
