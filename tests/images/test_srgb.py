import numpy as np

from spreadwright.images.srgb import average_colour, encoded, encoded_of, hex_of, light_of, linear


def test_every_step_comes_back_from_its_light():
    steps = np.arange(256, dtype=np.uint8)
    assert (np.rint(encoded(light_of(steps)) * 255) == steps).all()


def test_the_light_of_pixels_is_that_of_their_colour():
    assert (light_of(np.array([[4, 52, 250]], np.uint8)) == linear(encoded_of("#0434fa"))).all()


def test_light_beyond_a_screen_is_clipped():
    assert hex_of(encoded((-0.2, 0.5, 1.7))) == "#00bcff"


def test_average_is_that_of_the_light():
    halves = np.zeros((2, 2, 3), dtype=np.uint8)
    halves[0] = 255
    assert average_colour(halves) == "#bcbcbc"  # half of the light of white, not half of its number
    assert average_colour(np.full((3, 3, 3), 77, dtype=np.uint8)) == "#4d4d4d"
