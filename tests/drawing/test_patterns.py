from itertools import pairwise
from xml.etree.ElementTree import fromstring

import pytest
from hypothesis import given
from hypothesis import strategies as st

from letters import letters
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.drawing.patterns.level import levels
from spreadwright.drawing.svg import markup
from spreadwright.geometry import Rect, Size
from spreadwright.model import Face, Pattern

MM = 320
SHEET = Rect(0, 0, 97536, 97536)
INKS = ("#f4efe6", "#2f4858", "#c7583f", "#e3b04b", "#7b9a8c", "#333333")


def drawn(face: Face, area: Rect = SHEET) -> Canvas:
    canvas = Canvas(Size(area.width, area.height), title="Paper", origin=(area.left, area.top))
    draw_face(canvas, face, area)
    return canvas


@pytest.mark.parametrize("pattern", [pattern for pattern in Pattern if pattern is not Pattern.PICTURE])
@pytest.mark.parametrize("count", range(1, 7))
def test_every_print_takes_any_number_of_inks(pattern: Pattern, count: int):
    used = markup(drawn(Face(pattern, INKS[:count], 24 * MM)))
    shown = 2 if pattern in (Pattern.LEAF, Pattern.CONTOUR) else count
    assert pattern.kind.value == "plain" or all(ink in used for ink in INKS[: min(count, shown)])


@pytest.mark.parametrize("pattern", Pattern)
@pytest.mark.parametrize("repeat", [0, 1, MM, 7 * MM, 25 * MM, 305 * MM, 3048 * MM])
def test_no_repeat_makes_an_endless_picture(pattern: Pattern, repeat: int):
    assert len(markup(drawn(Face(pattern, INKS[:3], repeat)))) < 200_000


@pytest.mark.parametrize("pattern", Pattern)
def test_the_same_face_is_drawn_alike(pattern: Pattern):
    face = Face(pattern, INKS[:3], 30 * MM)
    assert markup(drawn(face)) == markup(drawn(face))


@pytest.mark.parametrize("pattern", [Pattern.STRIPE, Pattern.GINGHAM, Pattern.DOTS, Pattern.CHEVRON])
def test_a_print_runs_on_from_piece_to_piece(pattern: Pattern):
    face, half = Face(pattern, ("#ffffff", "#000000"), 16 * MM), 64 * MM
    named = {"w": "#ffffff", "b": "#000000", "g": "#7a7a7a"}
    whole = letters(drawn(face, Rect(0, 0, 2 * half, half)), 64, named)
    left = letters(drawn(face, Rect(0, 0, half, half)), 32, named)
    right = letters(drawn(face, Rect(half, 0, half, half)), 32, named)
    joined = tuple(a + b for a, b in zip(left, right, strict=True))
    differing = sum(a != b for rows in zip(whole, joined, strict=True) for a, b in zip(*rows, strict=True))
    assert differing <= 20  # cells on an edge


@pytest.mark.parametrize("pattern", [Pattern.STRIPE, Pattern.GINGHAM, Pattern.DOTS, Pattern.CHEVRON, Pattern.LEAF])
@pytest.mark.parametrize("repeat", [MM // 2, 2 * MM, 3 * MM, 9 * MM])
def test_small_and_large_pieces_show_a_print_at_one_scale(pattern: Pattern, repeat: int):
    face, part = Face(pattern, ("#ffffff", "#000000"), repeat), Rect(30 * MM, 30 * MM, 20 * MM, 20 * MM)
    window = Canvas(part.size, title="Window", origin=(part.left, part.top))
    draw_face(window, face, SHEET)
    named = {"w": "#ffffff", "b": "#000000", "g": "#7a7a7a"}
    cells = [letters(canvas, size, named) for canvas, size in ((window, 40), (drawn(face, part), 40))]
    differing = sum(a != b for rows in zip(*cells, strict=True) for a, b in zip(*rows, strict=True))
    assert differing <= 0.05 * 1600


@pytest.mark.parametrize("pattern", Pattern)
def test_largest_sheet_is_no_endless_picture(pattern: Pattern):
    largest = Rect(0, 0, 120 * 8128, 120 * 8128)
    assert len(markup(drawn(Face(pattern, INKS[:3], MM // 10), largest))) < 400_000


def test_a_stripe_is_as_wide_as_it_says():
    face = Face(Pattern.STRIPE, ("#ffffff", "#000000"), 10 * MM)
    row = letters(drawn(face, Rect(0, 0, 40 * MM, 10 * MM)), 40, {"w": "#ffffff", "b": "#000000"})[5]
    assert row[:10] * 4 == row and {"w", "b"} <= set(row)


def test_gingham_is_darkest_where_bands_cross():
    face = Face(Pattern.GINGHAM, ("#ffffff", "#000000"), 20 * MM)
    tones = letters(
        drawn(face, Rect(0, 0, 20 * MM, 20 * MM)), 2, {"-": "#ffffff", "+": "#707070", "#": "#303030"}, pixels=40
    )
    assert tones == ("#+", "+-")


def test_a_one_way_print_grows_upward():
    one_way = markup(drawn(Face(Pattern.LEAF, INKS[:2], 40 * MM, is_directional=True)))
    assert one_way != markup(drawn(Face(Pattern.LEAF, INKS[:2], 40 * MM)))


def test_height_lines_meet_at_the_edges_of_the_land():
    canvas = drawn(Face(Pattern.CONTOUR, INKS[:2], 160 * MM), Rect(0, 0, 320 * MM, 160 * MM))
    uses = [element for element in fromstring(markup(canvas)).iter() if element.tag.endswith("use")]
    assert [use.get("transform") for use in uses] == [None, "translate(160 0)"]


def test_a_small_piece_of_a_land_is_a_small_picture():
    face = Face(Pattern.CONTOUR, INKS[:2], 305 * MM)
    assert 6 * len(markup(drawn(face, Rect(32 * MM, 64 * MM, 60 * MM, 60 * MM)))) < len(markup(drawn(face)))


def test_a_hill_has_one_closed_line():
    hill = [[0, 0, 0, 0], [0, 2, 2, 0], [0, 2, 2, 0], [0, 0, 0, 0]]
    ((line,),) = levels(hill, 300, [1.0])
    assert line[0] == line[-1] and len(line) == 9
    assert all(abs(ax - bx) + abs(ay - by) <= 200 for (ax, ay), (bx, by) in pairwise(line))


def test_a_slope_has_a_line_from_edge_to_edge():
    ((line,),) = levels([[0, 1, 2]] * 3, 200, [0.5])
    assert sorted(line) == [(50, 0), (50, 100), (50, 200)]


@given(st.lists(st.lists(st.integers(0, 9), min_size=5, max_size=5), min_size=5, max_size=5))
def test_a_line_ends_at_the_border_or_where_it_began(heights: list[list[int]]):
    (lines,) = levels(heights, 400, [4.5])
    for line in lines:
        assert line[0] == line[-1] or all({x, y} & {0, 400} for x, y in (line[0], line[-1]))
