"""Files are read back with a plain XML parser and with the library for DXF."""

from dataclasses import replace
from io import StringIO
from itertools import pairwise
from xml.etree.ElementTree import fromstring

import ezdxf
import pytest
from hypothesis import given

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.drawing.cut_paths import (
    CUT,
    LABEL,
    SHEET,
    CutLine,
    CutPaths,
    PathLabel,
    cut_lines,
    cut_paths_svg,
)
from spreadwright.drawing.cut_paths_dxf import cut_paths_dxf
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit, ticks
from spreadwright.model import INCH_BENCH, Axis, Branch, Leaf, Split, Use
from strategies import benches, cut_trees, recipe_of

SVG = "{http://www.w3.org/2000/svg}"
INCH = TICKS[Unit.INCH]
SIXTY_FOURTH = ticks("1/64", Unit.INCH)
PATHS = CutPaths(
    "One sheet",
    Size(12 * INCH, 12 * INCH),
    (CutLine((SIXTY_FOURTH, 0), (SIXTY_FOURTH, 12 * INCH)), CutLine((SIXTY_FOURTH, INCH), (12 * INCH, INCH))),
    (PathLabel("A panel", Rect(SIXTY_FOURTH, INCH, 11 * INCH, 11 * INCH)),),
)


def svg_layers(data: bytes):
    return {group.get("id"): list(group) for group in fromstring(data).findall(f"{SVG}g")}


def dxf(data: bytes):
    return ezdxf.read(StringIO(data.decode("cp1252")))


def between(rects) -> set[tuple[int, int, int, int]]:
    """Every stretch along which two parts touch, cut to unit pieces by all corners."""
    xs, ys = (
        sorted({x for r in rects for x in (r.left, r.right)}),
        sorted({y for r in rects for y in (r.top, r.bottom)}),
    )
    edges = set()
    for one in rects:
        for other in rects:
            if one.right == other.left:
                edges |= pieces_of(one.right, max(one.top, other.top), min(one.bottom, other.bottom), ys, is_down=True)
            if one.bottom == other.top:
                edges |= pieces_of(
                    one.bottom, max(one.left, other.left), min(one.right, other.right), xs, is_down=False
                )
    return edges


def pieces_of(at: int, start: int, end: int, marks, *, is_down: bool):
    inside = [mark for mark in marks if start <= mark <= end]
    spans = pairwise(inside)
    return {(at, low, at, high) if is_down else (low, at, high, at) for low, high in spans}


def split(line: CutLine, rects):
    is_down = line.start[0] == line.end[0]
    marks = sorted({c for r in rects for c in ((r.top, r.bottom) if is_down else (r.left, r.right))})
    along = 1 if is_down else 0
    return pieces_of(line.start[1 - along], line.start[along], line.end[along], marks, is_down=is_down)


@given(cut_trees(), benches())
def test_lines_run_between_all_parts_and_none_on_another(tree, bench):
    sheets = cut_sheets(recipe_of(tree, times=2))
    steps = cut_steps(sheets, bench)
    for sheet in sheets:
        rects = [part.rect for part in sheet.parts]
        found = [split(line, rects) for line in cut_lines(step for step in steps if sheet.number in step.sheets)]
        assert set().union(*found) == between(rects)
        assert sum(map(len, found)) == len(set().union(*found))


def test_lines_that_meet_end_to_end_are_one():
    leaf = Leaf(Use.PIECE, "tile")
    row = Split(Axis.COLUMNS, (Branch(5 * INCH, leaf), Branch(7 * INCH, leaf)))
    tree = Split(Axis.ROWS, (Branch(4 * INCH, row), Branch(8 * INCH, row)))
    sheets = cut_sheets(recipe_of(tree))
    upright = CutLine((5 * INCH, 0), (5 * INCH, 12 * INCH))
    assert cut_lines(cut_steps(sheets, INCH_BENCH)) == (CutLine((0, 4 * INCH), (12 * INCH, 4 * INCH)), upright)


def test_svg_is_at_full_size_and_exact():
    root = fromstring(cut_paths_svg(PATHS))
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("304.8mm", "304.8mm", "0 0 304.8 304.8")
    layers = svg_layers(cut_paths_svg(PATHS))
    assert [line.get("x1") for line in layers[CUT]] == ["0.396875", "0.396875"]
    assert [rect.get("width") for rect in layers[SHEET]] == ["304.8"]
    assert [words.text for words in layers[LABEL]] == ["A panel"]


def test_dxf_is_at_full_size_in_millimetres():
    document = dxf(cut_paths_dxf(PATHS))
    assert document.units == ezdxf.units.MM and not document.audit().errors
    assert tuple(document.header["$EXTMAX"]) == (304.8, 304.8, 0)
    corners = document.modelspace().query(f'LWPOLYLINE[layer=="{SHEET}"]').first.get_points("xy")
    assert set(corners) == {(0, 0), (304.8, 0), (304.8, 304.8), (0, 304.8)}
    lines = document.modelspace().query(f'LINE[layer=="{CUT}"]')
    assert [tuple(line.dxf.start)[:2] for line in lines] == [(0.396875, 304.8), (0.396875, pytest.approx(279.4))]


def test_dxf_has_one_layer_for_each_purpose():
    document = dxf(cut_paths_dxf(PATHS))
    assert {entity.dxf.layer for entity in document.modelspace()} == {CUT, SHEET, LABEL}
    assert [words.dxf.text for words in document.modelspace().query("TEXT")] == ["A panel"]


def test_both_formats_hold_the_same_cuts_in_the_same_order():
    drawn = [
        [float(line.get(key)) for key in ("x1", "y1", "x2", "y2")] for line in svg_layers(cut_paths_svg(PATHS))[CUT]
    ]
    lines = dxf(cut_paths_dxf(PATHS)).modelspace().query("LINE")
    turned = [[*line.dxf.start.vec2, *line.dxf.end.vec2] for line in lines]
    assert [[x1, 304.8 - y1, x2, 304.8 - y2] for x1, y1, x2, y2 in turned] == [pytest.approx(each) for each in drawn]


def test_label_of_a_tall_narrow_part_is_turned_alike_in_both_formats():
    tall = replace(PATHS, labels=(PathLabel("AB12 a-long-name", Rect(0, 0, INCH // 2, 6 * INCH)),))
    assert svg_layers(cut_paths_svg(tall))[LABEL][0].get("transform") == "rotate(-90 6.35 76.2)"
    assert dxf(cut_paths_dxf(tall)).modelspace().query("TEXT").first.dxf.rotation == 90


def test_label_stays_inside_its_part():
    narrow = PathLabel("AB12 a-long-name", Rect(0, 0, INCH // 2, 6 * INCH))
    assert narrow.is_upright and narrow.height == 4 * TICKS[Unit.MILLIMETRE]
    flat = PathLabel("AB12 a-long-name", Rect(0, 0, INCH, INCH // 2))
    assert not flat.is_upright and flat.height * 7 // 10 * len(flat.words) <= INCH
    assert PathLabel("A", Rect(0, 0, 6 * INCH, 6 * INCH)).height == 4 * TICKS[Unit.MILLIMETRE]
