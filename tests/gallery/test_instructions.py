import re

import pytest

from spreadwright.gallery.recipe.instructions import can_be_cut, instructions, other_unit
from spreadwright.gallery.recipe.step_view import step_view
from spreadwright.lengths import Unit
from spreadwright.store import Collection
from spreadwright.words import speaking

RECIPE = "rain-until-four"


@pytest.fixture(scope="module")
def reading():
    return Collection().recipe(RECIPE)


@pytest.fixture(scope="module")
def inches(reading):
    return instructions(reading, Collection().bench(), "pictures/rain")


@pytest.fixture(scope="module")
def millimetres(reading):
    return instructions(reading, Collection().bench(unit=Unit.MILLIMETRE))


def test_people_change_between_inches_and_millimetres():
    assert [other_unit(unit) for unit in Unit] == [Unit.MILLIMETRE if unit is Unit.INCH else Unit.INCH for unit in Unit]


def test_readings_of_the_other_bench_are_its_own_marks(inches, millimetres):
    told, files = millimetres
    mark = told.bench.trimmer.graduation
    assert files == {} and all(cut.step.reading % mark == 0 for cut in told.cuts)
    assert any(cut.step.reading % mark for cut in inches[0].cuts)


def test_only_pictures_that_lie_in_files_are_named(inches, millimetres):
    told, files = inches
    named = {each.picture.path for each in (*told.cuts, *told.moves)} | {told.placement.path}
    assert named | {sheet.figure.path for sheet in told.cut_sheets} == set(files)
    assert all(each.picture is None for each in (*millimetres[0].cuts, *millimetres[0].moves))


def test_every_cut_stands_under_its_sheet_in_order(inches):
    numbers = [cut.step.number for cut in inches[0].cuts]
    assert numbers == list(range(1, len(inches[0].cutting.steps) + 1))


def test_sheets_that_stay_whole_are_told(inches):
    assert inches[0].whole_words == "Sheets 1 and 2 stay whole."


def test_a_bench_that_is_too_short_has_no_instructions(reading):
    from dataclasses import replace

    bench = Collection().bench()
    short = replace(bench, trimmer=replace(bench.trimmer, length=bench.trimmer.length // 4))
    assert can_be_cut(reading, bench) and not can_be_cut(reading, short)


def test_screens_count_cuts_and_pieces_together(inches):
    view = step_view(inches[0])
    numbers = [screen.number for screen in (*view.cuts, *view.moves)]
    assert numbers == list(range(1, view.total + 1))
    assert view.cuts[0].large == "7 in" and view.moves[0].large == "A1"


def test_screens_speak_the_language(reading):
    with speaking("de"):
        view = step_view(instructions(reading, Collection().bench())[0])
    assert "Die Skala auf" in view.cuts[0].after[0]
    assert re.search(r"„[a-z0-9-]+“ \(\w+\)", " ".join(view.moves[1].after))
