import numpy as np
import pytest

from spreadwright.drawing import PIXELS_PER_MM, face_pixels
from spreadwright.model import Face, Pattern

MM = 320


def test_a_plain_face_is_its_colour_everywhere():
    pixels = face_pixels(Face(Pattern.PLAIN, ("#40505c",), 0))
    assert pixels.dtype == np.uint8 and pixels.shape == (120, 120, 3)
    assert (pixels == (0x40, 0x50, 0x5C)).all()


@pytest.mark.parametrize("pattern", Pattern)
@pytest.mark.parametrize("repeat_mm", [0, 7, 25, 61, 100, 305])
def test_every_face_is_seen_at_one_scale(pattern: Pattern, repeat_mm: int):
    height, width, channels = face_pixels(Face(pattern, ("#f4efe6", "#2f4858"), repeat_mm * MM)).shape
    assert channels == 3 and width == height
    assert 60 * PIXELS_PER_MM <= width <= 160 * PIXELS_PER_MM
    assert width >= min(repeat_mm, 160) * PIXELS_PER_MM


def test_stripes_are_where_they_lie_on_the_sheet():
    pixels = face_pixels(Face(Pattern.STRIPE, ("#ffffff", "#ff0000"), 10 * MM))
    assert (pixels == pixels[:1]).all()  # upright
    assert (pixels[:, :20] == pixels[:, 20:40]).all()  # 10 mm
    assert tuple(pixels[0, 2]) == (255, 0, 0) and tuple(pixels[0, 15]) == (255, 255, 255)


def test_pixels_are_shared_and_not_to_be_written_to():
    face = Face(Pattern.DOTS, ("#ffffff", "#000000"), 9 * MM)
    assert face_pixels(face) is face_pixels(face)
    with pytest.raises(ValueError, match="read-only"):
        face_pixels(face)[0, 0] = 0
