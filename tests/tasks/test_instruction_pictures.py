from xml.etree import ElementTree

import pytest

from spreadwright.store import Collection
from spreadwright.tasks import cut, place
from spreadwright.tasks.draw import cut_sheets_svg, placement_svg
from spreadwright.tasks.instruction_pictures import (
    cut_pictures,
    inline_placement,
    inline_sheets,
    move_pictures,
    placement_file,
    sheet_files,
)

NS = {"svg": "http://www.w3.org/2000/svg"}
RECIPE = "rain-until-four"


@pytest.fixture(scope="module")
def cutting():
    collection = Collection()
    return cut(collection.recipe(RECIPE), collection.bench())


@pytest.fixture(scope="module")
def placing():
    collection = Collection()
    return place(collection.recipe(RECIPE), collection.bench())


def named(markup):
    groups = ElementTree.fromstring(markup).findall(".//*[@data-piece]")
    return {name for group in groups for name in group.attrib["data-piece"].split()}


def test_every_piece_is_named_on_its_sheet_and_nowhere_else(cutting):
    found = inline_sheets(cutting)
    assert set(found) == {sheet.number for sheet in cutting.sheets if cutting.steps_of(sheet)}
    for number, markup in found.items():
        assert named(markup) == {part.id for part in cutting.sheets[number - 1].parts}


def test_every_piece_is_named_in_the_placement(placing):
    assert named(inline_placement(placing)) == {each.piece.id for each in placing.placed}


def test_there_is_a_picture_for_every_step(cutting, placing):
    cuts, moves = cut_pictures(cutting), move_pictures(placing)
    assert (len(cuts), len(moves)) == (len(cutting.steps), len(placing.steps))
    assert all(each.alt and each.inline and b"<path" in each.file for each in (*cuts, *moves))


def test_without_files_the_same_lies_in_the_page(cutting, placing):
    for made, given in ((cut_pictures, cutting), (move_pictures, placing)):
        bare = made(given, has_files=False)
        assert [each.inline for each in bare] == [each.inline for each in made(given)]
        assert not any(each.file for each in bare)


def test_no_two_pictures_of_a_page_share_an_id(cutting, placing):
    markups = [
        *inline_sheets(cutting).values(),
        inline_placement(placing),
        *(each.inline for each in cut_pictures(cutting)),
    ]
    markups += [each.inline for each in move_pictures(placing)]
    ids = [element.attrib["id"] for each in markups for element in ElementTree.fromstring(each).findall(".//*[@id]")]
    assert len(ids) == len(set(ids))


def test_inline_pictures_say_what_they_show_without_a_tip(cutting, placing):
    cuts = [each.inline for each in cut_pictures(cutting)]
    for each in (*inline_sheets(cutting).values(), inline_placement(placing), *cuts):
        root = ElementTree.fromstring(each)
        assert root.attrib["aria-label"] and root.find("svg:title", NS) is None


def test_readings_stand_in_the_pictures_as_words(cutting):
    words = "".join(ElementTree.fromstring(cut_pictures(cutting)[0].inline).itertext()).replace("\u2009", " ")
    assert "7 in" in words


def test_inline_is_a_quarter_of_the_outlines_and_files_are_half(cutting, placing):
    before = sum(map(len, set(cut_sheets_svg(cutting)))) + len(placement_svg(placing))
    files = sum(map(len, sheet_files(cutting).values())) + len(placement_file(placing))
    inline = sum(map(len, inline_sheets(cutting).values())) + len(inline_placement(placing))
    assert inline < before / 4 and files < before / 2
