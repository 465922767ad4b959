import numpy as np
import pytest

from spreadwright.images import read
from spreadwright.images.joins import meets_across, meets_down
from spreadwright.shipped import folder

WAVE = 128 + 100 * np.sin(2 * np.pi * np.arange(90) / 90)
ACROSS = np.repeat(np.repeat(WAVE[None, :, None], 40, axis=0), 3, axis=2).astype(np.uint8)
SHIPPED = sorted(file for file in folder("recipes").glob("paper-sets/*/*") if file.is_file())


def test_a_whole_wave_meets_itself_and_a_part_of_it_does_not():
    assert meets_across(ACROSS) and not meets_across(ACROSS[:, :60])
    assert meets_down(ACROSS.transpose(1, 0, 2)) and not meets_down(ACROSS.transpose(1, 0, 2)[:60])


def test_steps_of_a_print_are_no_joints():
    stripes = np.zeros((30, 64, 3), dtype=np.uint8)
    stripes[:, 16:32] = stripes[:, 48:] = 255
    assert meets_across(stripes) and meets_down(stripes)


@pytest.mark.parametrize("shape", [(1, 1, 3), (1, 9, 3), (9, 1, 3)])
def test_the_smallest_pictures_meet_themselves(shape):
    assert meets_across(np.full(shape, 9, dtype=np.uint8)) and meets_down(np.full(shape, 9, dtype=np.uint8))


@pytest.mark.parametrize("file", SHIPPED, ids=lambda file: file.name)
def test_shipped_prints_meet_themselves_and_parts_of_them_do_not(file):
    pixels = read(file.read_bytes()).pixels
    assert meets_across(pixels) and meets_down(pixels)
    assert not (meets_across(pixels[:, :450]) and meets_down(pixels[:450]))
