"""Pixels in another size, and a part of them."""

import numpy as np
from PIL import Image

from spreadwright.images.picture import Raster

Box = tuple[float, float, float, float]
"""Left, top, right, bottom, pixels; edges may lie within a pixel."""


def fitted(width: float, height: float, longest: int) -> tuple[int, int]:
    """Width and height in whole pixels, made smaller together until neither is more than `longest`.

    >>> fitted(6000, 4000, 1024), fitted(30, 20, 1024), fitted(9000, 1, 100)
    ((1024, 683), (30, 20), (100, 1))
    """
    share = min(1.0, longest / max(width, height))
    return max(1, round(width * share)), max(1, round(height * share))


def limited(pixels: Raster, longest: int) -> Raster:
    """The pixels with at most so many on the longest side; smaller ones as they are."""
    height, width = pixels.shape[:2]
    size = fitted(width, height, longest)
    return pixels if size == (width, height) else resized(pixels, *size)


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
