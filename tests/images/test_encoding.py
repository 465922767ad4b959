"""Pixels go out as PNG, JPEG and WebP, and come back."""

from io import BytesIO

import numpy as np
from PIL import Image

from spreadwright.images import encode_few_colours, encode_jpeg, encode_png, encode_webp, read

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


def test_webp_keeps_what_shows_through():
    opacity = np.full((40, 60, 1), 255, np.uint8)
    opacity[:, :30] = 40
    back = np.asarray(Image.open(BytesIO(encode_webp(np.dstack([PIXELS, opacity])))))
    assert back.shape == (40, 60, 4) and np.abs(back[:, :, 3:].astype(int) - opacity).max() < 12
    assert np.abs(back[:, 30:, :3].astype(int) - PIXELS[:, 30:]).mean() < 4
    assert encode_webp(PIXELS) == encode_webp(PIXELS.copy())


def test_few_colours_are_few_and_near():
    back = read(encode_few_colours(PIXELS, 32)).pixels
    assert len(np.unique(back.reshape(-1, 3), axis=0)) <= 32
    assert np.abs(back.astype(int) - PIXELS).mean() < 8
