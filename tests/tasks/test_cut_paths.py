import math
from io import BytesIO, StringIO
from zipfile import ZipFile

import ezdxf
import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.errors import UnknownName
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import cut
from spreadwright.tasks.cut_paths import cut_paths, cut_paths_answer, cut_paths_zip

SPARE = {"height": "rest", "spare": True}
RECIPES = sorted(Collection().recipes)


@pytest.fixture
def found():
    return cut_paths(read_recipe(sound(), "seat"), INCH_BENCH)


@pytest.mark.parametrize("name", RECIPES)
def test_every_cut_of_the_collection_lies_on_a_line_in_its_order(name):
    reading = Collection().recipe(name)
    cutting, paths = cut(reading, INCH_BENCH), cut_paths(reading, INCH_BENCH)
    for sheet, found in zip(cutting.sheets, paths.sheets, strict=True):
        steps = cutting.steps_of(sheet)
        assert len(found.paths.lines) <= len(steps) and bool(steps) == bool(found.paths.lines)
        at = [step.falling.rect for step in steps]
        assert all(touches(line, at) for line in found.paths.lines)


def touches(line, rects) -> bool:
    along = 0 if line.start[0] == line.end[0] else 1
    edges = {edge for rect in rects for edge in ((rect.left, rect.right) if along == 0 else (rect.top, rect.bottom))}
    return line.start[along] in edges


def test_every_part_carries_its_mark_and_name(found):
    assert [label.words for label in found.sheet(4).paths.labels] == [
        "E1 strip-1",
        "E2 strip-2",
        "F1 block-1",
        "F2 block-2",
    ]


def test_piece_that_shows_its_back_and_spare_are_named_as_such():
    def spoil(recipe):
        recipe["placements"][5]["face"] = "back"
        recipe["sheets"][1]["columns"][1]["rows"] = [{"height": "5", "piece": "tile", "times": 2}, SPARE]

    found = cut_paths(read_recipe(spoilt(spoil)), INCH_BENCH).sheet(3)
    assert [label.words for label in found.paths.labels][-3:] == ["D1 tile-1 (back)", "D2 tile-2", "spare"]


@pytest.mark.parametrize("name", RECIPES)
def test_edges_of_all_parts_are_the_outline_and_every_cut_twice_as_read_from_dxf(name):
    for sheet in cut_paths(Collection().recipe(name), INCH_BENCH).sheets:
        space = ezdxf.read(StringIO(sheet.file("dxf").decode("cp1252"))).modelspace()
        cuts = [math.dist(line.dxf.start, line.dxf.end) for line in space.query('LINE[layer=="CUT"]')]
        corners = space.query('LWPOLYLINE[layer=="SHEET"]').first.get_points("xy")
        outline = sum(math.dist(one, two) for one, two in zip(corners, corners[1:] + corners[:1], strict=True))
        edges = sum(2 * (label.rect.width + label.rect.height) for label in sheet.paths.labels) / TICKS[Unit.MILLIMETRE]
        assert edges == pytest.approx(outline + 2 * sum(cuts), abs=1e-6)


def test_sheet_that_is_not_cut_has_an_outline_alone(found):
    assert found.sheet(1).paths.lines == () and len(found.sheet(1).paths.labels) == 1


def test_first_sheet_that_is_cut_is_meant_where_none_is_named(found):
    assert found.sheet(None).number == 3
    with pytest.raises(UnknownName):
        found.sheet(5)


def test_archive_holds_every_sheet_in_both_formats_and_the_table(found):
    archive = ZipFile(BytesIO(cut_paths_zip(found)))
    names = [f"sheet-{number}.{form}" for number in range(1, 5) for form in ("svg", "dxf")]
    assert archive.namelist() == [*names, "pieces.csv"] and archive.testzip() is None
    assert archive.read("sheet-3.dxf") == found.sheet(3).file("dxf")
    assert {info.date_time for info in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_answer_counts_ticks_from_the_top_left_corner(found):
    sheet = cut_paths_answer(found)["sheets"][2]
    assert sheet["size"]["text"] == "12 × 12 in"
    assert {"start": [56896, 0], "end": [56896, 97536]} in sheet["cuts"]
