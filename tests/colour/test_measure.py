import numpy as np
import pytest

from spreadwright.colour.measure import look
from spreadwright.drawing import PIXELS_PER_MM, face_pixels
from spreadwright.model import Face, Pattern

BLACK, WHITE = (0, 0, 0), (255, 255, 255)


def striped(width, one=BLACK, other=WHITE, size=120):
    pixels = np.empty((size, size, 3), np.uint8)
    pixels[:] = np.where((np.arange(size) // width % 2)[:, None], other, one)
    return pixels


def test_average_is_blended_in_light_not_in_numbers():
    assert look(striped(2), 2).colour == "#bcbcbc"  # half the light of white; #808080 has a fifth of it


def test_plain_paper_is_not_busy_at_all():
    plain = look(np.full((60, 60, 3), (201, 111, 86), np.uint8), 2)
    assert plain.busyness == 0 and plain.colour == "#c96f56"


def test_turning_a_print_changes_nothing():
    upright = striped(7)
    assert look(upright, 2) == look(np.ascontiguousarray(upright.swapaxes(0, 1)), 2)


def test_more_contrast_is_busier():
    grades = [look(striped(6, BLACK, (level,) * 3), 2).busyness for level in (0, 30, 60, 90)]
    assert grades == sorted(grades) and len(set(grades)) == 4


def test_wide_bands_are_calmer_than_narrow_ones():
    bands = [look(striped(width, (150, 150, 150), (200, 200, 200), 480), 2).busyness for width in (6, 24, 96)]
    assert bands == sorted(bands, reverse=True)


def test_scale_of_the_pixels_does_not_matter():
    fine, coarse = striped(8, size=240), striped(4)
    assert look(fine, 4).busyness == pytest.approx(look(coarse, 2).busyness, abs=0.01)


def test_a_picture_of_one_pixel_has_a_look():
    assert look(np.full((1, 1, 3), 128, np.uint8), 2).busyness == 0


def face(pattern, *colours):
    return Face(pattern, colours, 16 * 320)


def test_prints_are_busier_than_textures_and_textures_than_nothing():
    colours = ("#ece6d9", "#496373", "#c96f56")
    patterns = (Pattern.PLAIN, Pattern.LINEN, Pattern.CONTOUR, Pattern.GINGHAM, Pattern.CHEVRON)
    busy = [look(face_pixels(face(pattern, *colours)), PIXELS_PER_MM).busyness for pattern in patterns]
    assert busy[0] == 0 and busy == sorted(busy) and busy[1] < 0.05 < 0.4 < busy[-2]
