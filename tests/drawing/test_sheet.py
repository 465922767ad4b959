import re

import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.drawing.sheet import SheetPlan, cut_sheet_picture
from spreadwright.drawing.theme import ACCENT
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import cut


def plans(data: bytes, bench=INCH_BENCH) -> list[SheetPlan]:
    done = cut(read_recipe(data), bench)
    by_id = {piece.id: piece for piece in done.pieces}
    pages = done.recipe.spread.pages
    return [
        SheetPlan(done.recipe.title, s.role, s, done.steps_of(s), by_id, done.page_of, pages, bench.unit)
        for s in done.sheets
    ]


def verbs(plan: SheetPlan) -> list[str]:
    return [line.strip() for line in cut_sheet_picture(plan).outline()]


def words(plan: SheetPlan) -> list[str]:
    return [found[1] for line in verbs(plan) if (found := re.search(r"aria-label=(.*) fill=", line))]


def test_every_cut_is_a_line_with_its_number():
    for plan in plans(sound()):
        lines = [line for line in verbs(plan) if line.startswith("line") and f"stroke={ACCENT}" in line]
        discs = [line for line in verbs(plan) if line.startswith("circle") and f"fill={ACCENT}" in line]
        assert len(lines) == len(discs) == len(plan.steps)
        assert {str(step.number) for step in plan.steps} <= set(words(plan))


def test_every_piece_shows_mark_name_and_size():
    plan = plans(sound())[2]
    for part in plan.sheet.parts:
        assert {plan.pieces[part.id].mark, part.id} <= set(words(plan))
    assert words(plan).count("3 1/2 × 5 in") == 2


def test_dimensions_add_up_to_the_sheet():
    shown = words(plans(sound())[2])
    assert {"12", "7", "5", "3 1/2", "6"} <= set(shown)
    assert shown.count("12") == 2


def test_table_has_a_row_for_each_cut():
    shown = words(plans(sound())[2])
    assert shown.count("as drawn") + shown.count("turned a quarter to the left") == 4
    assert "C2 to the left page" in shown and "Set to (part that stays)" in shown


def test_sheet_that_is_not_cut_says_so():
    assert "It is not cut." in words(plans(sound())[0])


def test_spare_is_hatched_and_named():
    def spoil(document):
        document["sheets"][2]["rows"][1]["columns"][0] = {"width": "6", "piece": "block"}
        document["sheets"][2]["rows"][1]["columns"].append({"width": "6", "spare": True})
        document["placements"][6:8] = [{"piece": "block", "page": "right", "left": "1/2", "top": "1/2"}]

    shown = words(plans(spoilt(spoil))[3])
    assert "spare" in shown and "spare, keep it" in shown


def test_figures_speak_the_unit_of_the_bench():
    plan = plans(sound(), Collection().bench("bench-metric"))[2]
    shown = words(plan)
    assert "dimensions in millimetres" in shown and "177.8" in shown
    assert "178 mm (exactly 177.8 mm)" in shown


@pytest.mark.parametrize("times", [2, 24, 48])
def test_narrow_strips_are_drawn_within_the_picture(times):
    def spoil(document):
        document["sheets"][2] = {
            "role": "print",
            "size": ["12", "12"],
            "columns": [{"width": "rest", "piece": "strip", "times": times}],
        }
        kept = [p for p in document["placements"] if not p["piece"].startswith(("strip", "block"))]
        new = [{"piece": f"strip-{i + 1}", "page": "left", "left": "0", "top": "0"} for i in range(times)]
        document["placements"] = kept + new

    plan = plans(spoilt(spoil))[3]
    canvas = cut_sheet_picture(plan)
    assert len(plan.steps) == times - 1
    assert {"strip-1", f"strip-{times}"} <= {part.id for part in plan.sheet.parts}
    assert canvas.size.height > canvas.size.width
