from itertools import combinations, groupby

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import box
from shapely.ops import unary_union

from spreadwright.colour.scene import NARROW, PAGE, PHOTO, Patch, Surface, scene
from spreadwright.geometry import Rect, Size
from spreadwright.model import Side

UNIT = NARROW // 2
SHEET = Size(9 * UNIT, 9 * UNIT)
SURFACES = [Surface("mat"), Surface("print"), Surface("print", Side.BACK), PHOTO]


def patch(surface, left, top, width, height, page="left"):
    return Patch(page, surface, Rect(left * UNIT, top * UNIT, width * UNIT, height * UNIT))


@st.composite
def patches(draw):
    small = st.integers(-1, 8)
    side = st.integers(1, 6)
    places = draw(st.lists(st.tuples(st.sampled_from(SURFACES), small, small, side, side), max_size=6))
    return [patch(*place) for place in places]


def in_sight(lying):
    """Each patch with the polygon of what is seen of it, by shapely; the page first."""
    page = box(0, 0, SHEET.width, SHEET.height)
    shapes = [(PAGE, page)]
    shapes += [
        (each.surface, box(each.rect.left, each.rect.top, each.rect.right, each.rect.bottom).intersection(page))
        for each in lying
    ]
    return [
        (surface, shape.difference(unary_union([above for _, above in shapes[number + 1 :]])))
        for number, (surface, shape) in enumerate(shapes)
    ]


def added_up(pairs):
    sums = {}
    for key, amount in pairs:
        if amount:
            sums[key] = sums.get(key, 0) + amount
    return sums


@given(patches())
def test_areas_are_those_of_polygons(lying):
    expected = added_up((surface, round(shape.area)) for surface, shape in in_sight(lying)) if lying else {}
    assert scene(SHEET, lying, []).areas == expected


@given(patches())
def test_edges_are_those_of_polygons(lying):
    pairs = (
        (tuple(sorted((one, other))), round(shape.boundary.intersection(above.boundary).length))
        for (one, shape), (other, above) in combinations(in_sight(lying), 2)
    )
    assert scene(SHEET, lying, []).edges == (added_up(pairs) if lying else {})


def topmost(lying, x, y):
    found = 0
    for number, each in enumerate(lying, 1):
        if each.rect.left <= x < each.rect.right and each.rect.top <= y < each.rect.bottom:
            found = number
    return found


def facing_in(lying, turned):
    """By walking over every unit of the page."""
    surfaces = [PAGE, *(each.surface for each in lying)]
    for line in range(9):
        places = [(line, step) if turned else (step, line) for step in range(9)]
        cells = [topmost(lying, x * UNIT, y * UNIT) for x, y in places]
        runs = [(cell, len(list(run))) for cell, run in groupby(cells)]
        for (before, _), (_, wide), (after, _) in zip(runs, runs[1:], runs[2:], strict=False):
            pair = tuple(sorted((surfaces[before], surfaces[after])))
            if wide <= 2 and before != after and PHOTO not in pair:
                yield pair, UNIT


@given(patches())
def test_pieces_face_each_other_across_narrow_gaps(lying):
    expected = added_up([*facing_in(lying, False), *facing_in(lying, True)]) if lying else {}
    assert scene(SHEET, lying, []).facing == expected


def test_pages_add_up_and_do_not_meet():
    one = [patch(SURFACES[0], 0, 0, 9, 9)]
    both = [*one, patch(SURFACES[1], 0, 0, 9, 9, page="right")]
    found = scene(SHEET, both, [SURFACES[0], SURFACES[0]])
    assert found.areas == {SURFACES[0]: SHEET.area, SURFACES[1]: SHEET.area}
    assert found.edges == {} and found.captions == {SURFACES[0]: 2}


@pytest.mark.parametrize("apart,faces", [(2, True), (3, False)])
def test_half_an_inch_is_beside_and_more_is_not(apart, faces):
    lying = [patch(SURFACES[0], 0, 0, 3, 3), patch(SURFACES[1], 3 + apart, 0, 3, 3)]
    assert ((SURFACES[0], SURFACES[1]) in scene(SHEET, lying, []).facing) is faces
