"""Pixels go out as PNG and JPEG, and come back."""

import numpy as np

from spreadwright.images import encode_jpeg, encode_png, read

PIXELS = (np.indices((40, 60)).sum(axis=0)[..., None] * [1, 2, 0] + [20, 0, 90]).astype(np.uint8)


def test_png_loses_nothing():
    assert np.array_equal(read(encode_png(PIXELS)).pixels, PIXELS)


def test_jpeg_loses_little():
    assert np.abs(read(encode_jpeg(PIXELS)).pixels.astype(int) - PIXELS).mean() < 3


def test_the_same_pixels_give_the_same_bytes():
    assert encode_png(PIXELS) == encode_png(PIXELS.copy())
    assert encode_jpeg(PIXELS) == encode_jpeg(PIXELS.copy())


def test_better_quality_takes_more_bytes():
    assert len(encode_jpeg(PIXELS, 95)) > len(encode_jpeg(PIXELS, 40))
