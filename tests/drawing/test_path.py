import re
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.millimetres import scaled
from spreadwright.drawing.path import Path

points = st.lists(st.tuples(st.integers(-9999, 99999), st.integers(-9999, 99999)), min_size=2, max_size=30)


@given(points)
def test_rounding_never_adds_up(corners: list[tuple[int, int]]):
    steps = re.findall(r"([Mlhv])(-?[\d.]+)(?:[ ]?(-?[\d.]+))?", Path().lines(corners).data)
    x = y = Fraction(0)
    for verb, first, second in steps:
        dx, dy = {"h": (first, 0), "v": (0, first)}.get(verb, (first, second))
        x, y = x + Fraction(dx), y + Fraction(dy)
    assert (x * 1000, y * 1000) == (scaled(corners[-1][0], 3), scaled(corners[-1][1], 3))


def test_closing_returns_to_the_start():
    path = Path().move(320, 320).line(640, 320).line(640, 640).close().line(320, 640)
    assert path.data.endswith("zv1")


def test_an_ellipse_is_four_curves():
    assert Path().ellipse(0, 0, 320, 160).data.count("c") == 4
