import re
from dataclasses import replace
from itertools import combinations

import pytest

from builder import Document, sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.drawing.booklet import cuts as booklet
from spreadwright.drawing.leaves import LEAF_HEIGHT, NO_END
from spreadwright.drawing.marks import number_box
from spreadwright.drawing.sheet import (
    SheetPlan,
    _cut_ends,
    _frame,
    _label,
    _labels,
    _longest_for,
    cut_sheet_leaves,
    cut_sheet_picture,
)
from spreadwright.drawing.theme import ACCENT, MM
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Bench
from spreadwright.store import Collection
from spreadwright.tasks import cut
from spreadwright.tasks.draw import sheet_plans


def plans(data: bytes, bench=INCH_BENCH) -> list[SheetPlan]:
    return sheet_plans(cut(read_recipe(data), bench))


def strips(document: Document, times: int, sheets: int = 1) -> None:
    """Cut the last sheet, or that many, into equal strips; of several sheets nothing else is cut."""
    document["sheets"][2] = {
        "role": "print",
        "size": ["12", "12"],
        "times": sheets,
        "columns": [{"width": "rest", "piece": "strip", "times": times}],
    }
    kept = [p for p in document["placements"] if not p["piece"].startswith(("strip", "block"))]
    new = [{"piece": f"strip-{i + 1}", "page": "left", "left": "0", "top": "0"} for i in range(times * sheets)]
    document["placements"] = kept + new


def stacking(count: int) -> Bench:
    return replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, stack=count))


def verbs(plan: SheetPlan) -> list[str]:
    return [line.strip() for line in cut_sheet_picture(plan).outline()]


def words(plan: SheetPlan) -> list[str]:
    return [found[1] for line in verbs(plan) if (found := re.search(r"aria-label=(.*?) fill=", line))]


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
    assert [each for each in shown if each.startswith(("new sheet", "stays", "fell at"))] == [
        "new sheet",
        "stays, 7 × 12 in, top edge left",
        "fell at cut 1, 5 × 12 in, top edge left",
        "fell at cut 2, 7 × 5 in, upright",
    ]
    assert {"C2 to the left page", "Scale (part that stays)", "as before, 7 in", "aside until cut 3"} <= set(shown)


def test_sheets_cut_together_share_one_drawing():
    (plan,) = plans(spoilt(lambda d: strips(d, 4, sheets=2)), stacking(2))[3:]
    shown = words(plan)
    assert plan.numbers == (4, 5) and "Sheets 4 and 5, cut together" in shown
    assert {"E1, E5", "E4 + E8 to the left page"} <= set(shown)


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
    assert "dimensions in millimetres" in shown and "178" in shown
    assert "178 mm" in shown and not any("177.8" in each for each in shown)


def test_cautions_stand_before_the_cuts_with_their_sign():
    plan = plans(sound())[2]
    told = " ".join(words(plan))
    assert told.count("caution") == 1
    assert all(sentence in told for sentence in plan.cautions)
    assert told.index(plan.cautions[0]) < told.index("On the board")


def test_bench_is_named_beside_its_readings():
    assert any("“12 in arm trimmer with an inch scale”" in each for each in words(plans(sound())[2]))


def test_narrow_strip_carries_the_sign_in_its_row():
    def spoil(document):
        document["sheets"][1]["columns"][1]["rows"] = [
            {"height": "rest", "piece": "tile", "times": 2},
            {"height": "1/4", "spare": True},
        ]

    plan = plans(spoilt(spoil))[2]
    assert sum(bool(each.caution) for each in plan.words) == 1
    assert words(plan).count("caution") == 2


def test_the_picture_counts_in_proper_words():
    described = [cut_sheet_picture(plan).outline()[1] for plan in plans(sound())]
    assert "The sheet is not cut; the whole of it is base-1." in described[0]
    assert "4 cuts give the parts panel, mat-1" in described[2]
    halves = plans(spoilt(lambda document: strips(document, 2)))[3]
    assert "1 cut gives the parts strip-1, strip-2." in cut_sheet_picture(halves).outline()[1]


def test_numbers_of_near_cuts_lie_apart():
    plan = plans(spoilt(lambda document: strips(document, 48)))[3]
    found = re.findall(rf"circle cx=([\d.]+) cy=([\d.]+) r=2.5 fill={ACCENT}", "\n".join(verbs(plan)))
    assert len(found) == 47
    middles = [(float(x), float(y)) for x, y in found]
    assert all(max(abs(a[0] - b[0]), abs(a[1] - b[1])) >= 5 for a, b in combinations(middles, 2))


@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_every_part_of_the_collection_is_labelled_in_full(recipe_id):
    """What is smaller than two inches both ways may have no room for more than its mark."""
    for plan in sheet_plans(cut(Collection().recipe(recipe_id), INCH_BENCH)):
        shown = words(plan)
        for part in plan.sheet.parts:
            piece = plan.pieces.get(part.id)
            assert piece is None or piece.mark in shown
            assert piece is None or piece.id in shown or max(piece.width, piece.height) < 2 * TICKS[Unit.INCH]


def test_leaves_for_the_printer_are_no_higher_than_paper():
    plan = plans(spoilt(lambda document: strips(document, 48)))[3]
    leaves = cut_sheet_leaves(plan)
    assert len(leaves) > 1
    assert all(leaf.size.height <= 265 * MM for leaf in leaves)
    assert "Sheet 4, continued" in "\n".join(leaves[1].outline())
    rows = [line for leaf in leaves for line in leaf.outline() if "to the left page" in line]
    assert len(rows) == sum("to the left page" in line for line in cut_sheet_picture(plan).outline())


@pytest.mark.parametrize("times", [2, 24, 48])
def test_narrow_strips_are_drawn_within_the_picture(times):
    plan = plans(spoilt(lambda document: strips(document, times)))[3]
    canvas = cut_sheet_picture(plan)
    assert len(plan.steps) == times - 1
    assert {"strip-1", f"strip-{times}"} <= {part.id for part in plan.sheet.parts}
    assert {piece.mark for piece in plan.pieces.values() if piece.name == "strip"} <= set(words(plan))
    assert canvas.size.height > canvas.size.width


def test_sheet_is_drawn_smaller_where_its_table_then_ends_on_the_same_leaf():
    plan = plans(spoilt(lambda recipe: strips(recipe, 12)))[3]
    [leaf], whole = cut_sheet_leaves(plan), cut_sheet_picture(plan)
    assert leaf.size.height <= 265 * MM < whole.size.height
    rows = [sum("to the left page" in line for line in canvas.outline()) for canvas in (leaf, whole)]
    assert rows[0] == rows[1] > 5


def drawn_sizes(plan: SheetPlan) -> set[int]:
    """How long the longer side of a sheet is drawn: in the picture, on leaves for the printer, in the booklet."""
    return {_longest_for(plan, NO_END), _longest_for(plan, LEAF_HEIGHT), booklet.drawn_longest(plan)}


@pytest.mark.parametrize("bench_id", sorted(Collection().benches))
@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_labels_of_the_collection_are_whole_and_apart(recipe_id, bench_id):
    for plan in sheet_plans(cut(Collection().recipe(recipe_id), Collection().bench(bench_id))):
        for longest in drawn_sizes(plan):
            frame = _frame(plan, longest=longest)
            ends = _cut_ends(plan, frame)
            labels = _labels(plan, frame, ends)
            boxes = [placed.place for _part, placed in labels]
            assert not any(one.overlaps(two) for one, two in combinations(boxes, 2))
            assert not any(box.overlaps(number_box(end)) for box in boxes for end in ends)
            assert all(frame.rect(part.rect).contains(placed.place) for part, placed in labels)
            kept = {}
            for part, placed in labels:
                wanted = _label(plan, part, part.rect)
                if wanted.mark:
                    assert (placed.form.lines[0][0], placed.form.pile) == (wanted.mark, wanted.pile)
                    look = (len(placed.form.lines), placed.form.look.is_turned, placed.form.look.mark_size)
                    assert kept.setdefault(frame.rect(part.rect).size, look) == look
            assert {part.id for part, _ in labels} >= {part.id for part in plan.sheet.parts if part.id in plan.pieces}


def test_small_squares_carry_mark_and_pile_beside_the_numbers_of_their_cuts():
    def spoil(document: Document) -> None:
        document["sheets"][2] = {
            "role": "print",
            "size": ["12", "12"],
            "columns": [
                {"width": "rest", "spare": True},
                {"width": "3/4", "rows": [{"height": "rest", "piece": "dot", "times": 16}]},
            ],
        }
        kept = [p for p in document["placements"] if not p["piece"].startswith(("strip", "block"))]
        dots = [{"piece": f"dot-{i + 1}", "page": "left", "left": "0", "top": "0"} for i in range(16)]
        document["placements"] = kept + dots

    plan = next(plan for plan in plans(spoilt(spoil)) if plan.sheet.number == 4)
    frame = _frame(plan)
    signed = [
        placed.form.pile for part, placed in _labels(plan, frame, _cut_ends(plan, frame)) if part.id in plan.pieces
    ]
    assert len(signed) == 16 and all(signed[:-1])  # beside the last one stands the number of the column


def test_single_pile_needs_no_sign():
    plan = next(plan for plan in plans(sound()) if plan.steps)
    alone = replace(plan, pages=("page",), page_of=dict.fromkeys(plan.pieces, "page"))
    for each, has_signs in ((plan, True), (alone, False)):
        frame = _frame(each)
        labels = _labels(each, frame, _cut_ends(each, frame))
        assert labels and all(bool(placed.form.pile) is has_signs for _part, placed in labels)
