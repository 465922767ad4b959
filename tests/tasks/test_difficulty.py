import json
import re
from dataclasses import replace

import pytest

from builder import SOUND
from spreadwright import shipped
from spreadwright.cutting.effort import NARROW, PICK_UP, QUARTER_TURN, SETTING
from spreadwright.document import read_recipe
from spreadwright.store import Collection
from spreadwright.tasks import cut
from spreadwright.tasks.difficulty import CUT, GLUED, SIZE, UP_TO, Difficulty, Level, difficulty, level_words

COLLECTION = Collection()


@pytest.fixture(scope="module")
def cutting():
    return cut(read_recipe(json.dumps(SOUND).encode(), "window-seat"), COLLECTION.bench("bench-inch"))


def test_points_are_what_the_page_says(cutting):
    turns = sum(abs(step.turned) for step in cutting.steps)
    picked = sum(step.arrival == "picked-up" for step in cutting.steps)
    settings = sum(step.is_set_now for step in cutting.steps)
    narrow = sum(step.axis.along(step.kept.rect) < cutting.bench.trimmer.shortest for step in cutting.steps)
    sizes = {frozenset((piece.size.width, piece.size.height)) for piece in cutting.pieces}
    counted = 2 * len(cutting.steps) + 4 * settings + 12 * narrow + 3 * picked + 2 * turns + 3 * 11 + len(sizes)
    assert len(SOUND["placements"]) == 11 and difficulty(cutting).points == counted


def test_more_to_glue_asks_for_more(cutting):
    fewer = replace(cutting, recipe=replace(cutting.recipe, placements=cutting.recipe.placements[:-1]))
    assert difficulty(cutting).points == difficulty(fewer).points + GLUED


def test_levels_rise_with_the_points():
    levels = [Difficulty(points).level for points in range(0, 250, 5)]
    assert levels == sorted(levels, key=list(Level).index) and set(levels) == set(Level)
    assert [Difficulty(most).level for most in UP_TO.values()] == list(UP_TO)
    assert len({level_words(level) for level in Level}) == len(Level)


def test_page_states_the_weights_that_count():
    text = (shipped.folder("site") / "docs" / "difficulty.md").read_text(encoding="utf-8")
    stated = {line: int(points) for line, points in re.findall(r"^\| (each .*?) \| (\d+) \|$", text, re.M)}
    assert list(stated.values()) == [CUT, SETTING, NARROW, PICK_UP, QUARTER_TURN, GLUED, SIZE]
    assert [int(most) for most in re.findall(r"^\| (?:up to |\d+ to )(\d+) \|", text, re.M)] == list(UP_TO.values())


def test_shipped_layouts_are_told_apart():
    levels = {
        name: difficulty(cut(reading, COLLECTION.bench(unit=reading.model.unit))).level
        for name, reading in COLLECTION.recipes.items()
        if name in ("breakfast-on-the-step", "tent-by-the-lake", "the-long-way-home")
    }
    assert list(levels.values()) == [Level.GENTLE, Level.STEADY, Level.EXACTING]
