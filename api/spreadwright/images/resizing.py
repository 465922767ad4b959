"""Pixels in another size, and a part of them."""

import numpy as np
from PIL import Image

from spreadwright.images.picture import Raster

Box = tuple[float, float, float, float]
"""Left, top, right, bottom, pixels; edges may lie within a pixel."""


def resized(pixels: Raster, width: int, height: int, *, box: Box | None = None) -> Raster:
    """The pixels, or what a box of them shows, as so many across and down.

    Args:
        pixels: What is resized.
        width: Of the outcome, pixels, at least 1.
        height: Likewise.
        box: The part that is wanted; everything when left out.
    """
    image = Image.fromarray(pixels).resize((width, height), Image.Resampling.LANCZOS, box=box, reducing_gap=3.0)
    return np.array(image)
