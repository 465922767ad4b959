import re

import pytest

from spreadwright.drawing.contact.picture import id_lines
from spreadwright.drawing.theme import MM
from spreadwright.store import Collection
from spreadwright.tasks.contact_sheet import colourways_sheet, recipes_sheet, sheet_svg

COLLECTION = Collection()
READING = COLLECTION.recipe("rain-until-four")
SETS = COLLECTION.sound_paper_sets()


@pytest.mark.parametrize("room", [5, 30, 60, 500])
def test_an_id_in_lines_is_the_id(room):
    name = "windfall.moss.mustard~back.brick-gingham"
    lines = id_lines(name, room * MM)
    assert "".join(lines) == name and all(line.endswith(".") for line in lines[:-1])


def test_twenty_four_spreads_weigh_less_than_a_megabyte():
    assert len(sheet_svg(colourways_sheet(READING, SETS, 24))) < 1_000_000


def test_each_photograph_is_in_the_picture_once():
    drawn = sheet_svg(colourways_sheet(READING, [COLLECTION.paper_set("windfall")], 6)).decode()
    jpegs = re.findall(r"data:image/jpeg;base64,[^\"]+", drawn)
    assert len(jpegs) == len(set(jpegs)) == len(READING.model.photos)


def test_words_are_said_for_those_who_cannot_see_them():
    drawn = sheet_svg(recipes_sheet([READING], COLLECTION.paper_set("windfall"))).decode()
    said = re.findall(r'aria-label="([^"]+)"', drawn)
    assert "Rain until four" in said and "windfall.moss.mustard~back.bramble~back" in said


def test_no_words_leave_the_picture():
    for n in (1, 2, 5, 10):
        drawn = sheet_svg(colourways_sheet(COLLECTION.recipe("the-long-way-home"), SETS, n)).decode()
        wide, high = (float(each) for each in re.search(r'viewBox="0 0 (\S+) (\S+)"', drawn).groups())
        starts = re.findall(r'<g aria-label="[^"]*" transform="translate\((\S+) (\S+)\)"', drawn)
        assert starts and all(0 < float(x) < wide and 0 < float(y) < high for x, y in starts)
