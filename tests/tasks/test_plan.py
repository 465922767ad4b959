import json
from collections import Counter
from copy import deepcopy

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder import PAPERS, SOUND, sound
from cutting.cutter import cut as cut_apart
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import canonical, pieces_in_short, read_any, read_pieces, read_recipe
from spreadwright.document.recipe import recipe_model
from spreadwright.errors import InvalidDocument, NoPlan, PlanTooLong
from spreadwright.lengths import TICKS, Unit, written
from spreadwright.model import INCH_BENCH
from spreadwright.placing import placed_pieces
from spreadwright.store import Collection
from spreadwright.tasks import binding_of, check, plan, plan_answer, planned_cutting, proven
from spreadwright.tasks.draw import cut_sheets_svg

COLLECTION = Collection()
INCH = TICKS[Unit.INCH]
PINWHEEL = "70x30, 26x60, 60x36, 36x66, 34x30"
PAGE = "7x7 left, 3 1/2x5 *2 right, 5x6! *2 tile"


def listed(words, *stock):
    return read_pieces(canonical(pieces_in_short(words, stock)))


def document(*pieces, stock=({"size": ["12", "12"]},)):
    return read_pieces(json.dumps({"schema": "pieces/1", "unit": "in", "pieces": pieces, "stock": stock}).encode())


def fallen(answer):
    """What falls from the sheets of an answer's first plan, read as a recipe reads them: name, width, height."""
    written = answer["plans"][0]["sheets"]
    recipe, findings = recipe_model({"unit": answer["unit"], "sheets": written}, "")
    assert findings == ()
    return [
        part
        for s in recipe.sheets
        for _ in range(s.times)
        for part in cut_apart(s.content, s.size.width, s.size.height)
    ]


def test_the_pieces_of_a_page_fill_one_sheet():
    answer = plan_answer(plan(listed(PAGE)))
    parts = Counter((name, *sorted((w, h))) for name, w, h in fallen(answer))
    assert parts == {
        ("left", 7 * INCH, 7 * INCH): 1,
        ("right", 7 * INCH // 2, 5 * INCH): 2,
        ("tile", 5 * INCH, 6 * INCH): 2,
    }
    assert answer["plans"][0]["optimal"] and answer["plans"][0]["spares"] == []


@settings(deadline=None, max_examples=25)
@given(st.lists(st.tuples(st.integers(4, 96), st.integers(4, 96)), min_size=1, max_size=6), st.sampled_from(Unit))
def test_written_sheets_give_what_was_wanted_and_the_spares_that_are_named(sizes, unit):
    texts = [[f"{n / 8} in" for n in size] for size in sizes]
    wanted = [{"name": f"p{i}", "size": size, "turn": i % 2 == 0} for i, size in enumerate(texts)]
    reading = read_pieces(
        json.dumps(
            {"schema": "pieces/1", "unit": unit, "pieces": wanted, "stock": [{"size": ["12in", "12in"]}]}
        ).encode()
    )
    answer = plan_answer(plan(reading))
    parts = fallen(answer)
    assert {(n, w, h) for n, w, h in parts if n} <= {(p.name, *way) for p in reading.model.pieces for way in _ways(p)}
    assert sorted(n for n, *_ in parts if n) == sorted(p.name for p in reading.model.pieces)
    spares = sorted((spare["width"], spare["height"]) for spare in answer["plans"][0]["spares"])
    assert sorted((w, h) for n, w, h in parts if not n) == spares


def _ways(wanted):
    size = wanted.size
    return [(size.width, size.height), (size.height, size.width)] if wanted.may_turn else [(size.width, size.height)]


def test_same_seed_gives_the_same_bytes():
    assert canonical(plan_answer(plan(listed(PAGE), seed=3))) == canonical(plan_answer(plan(listed(PAGE), seed=3)))


def test_several_plans_differ():
    made = plan(listed(PAGE.replace("!", "")), wanted=3)
    assert 2 <= len(made.plans) <= 3
    assert len({each.sheets for each in made.plans}) == len(made.plans)
    assert {len(each.sheets) for each in made.plans} == {1}


def test_each_role_is_cut_from_its_own_stock():
    reading = document(
        {"name": "sky", "size": ["12", "6"], "role": "print", "turn": False},
        {"name": "mat", "size": ["6", "6"], "role": "plain"},
        stock=[{"size": ["12", "12"], "role": "print"}, {"size": ["6", "6"], "role": "plain", "times": 1}],
    )
    sheets = plan_answer(plan(reading))["plans"][0]["sheets"]
    assert [(sheet["role"], sheet["size"]) for sheet in sheets] == [("print", ["12", "12"]), ("plain", ["6", "6"])]


def test_optional_pieces_that_find_no_room_are_left_out():
    reading = document(
        {"name": "base", "size": ["12", "12"]},
        {"name": "tag", "size": ["2", "3"], "value": 1},
        stock=[{"size": ["12", "12"], "times": 1}],
    )
    assert plan_answer(plan(reading))["plans"][0]["left_out"] == ["tag"]


def test_other_stock_takes_the_place_of_the_documents():
    stock = read_pieces(canonical(pieces_in_short("1x1", ["14x12*1"]))).model
    assert plan_answer(plan(listed("14x12 long"), stock=stock))["plans"][0]["sheet_count"] == 1


@pytest.mark.parametrize(
    ("words", "stock", "code"),
    [
        ("13x13 big", "12x12", "piece-larger-than-stock"),
        ("12x12 *3", "12x12*2", "more-area-than-stock"),
        (PINWHEEL, "96x96*1", "no-through-cuts"),
    ],
)
def test_what_is_impossible_carries_its_cause(words, stock, code):
    with pytest.raises(NoPlan) as refused:
        plan(listed(words, stock))
    assert [cause.code for cause in refused.value.causes] == [code]


def test_limits_hold_on_a_bench_only():
    reading = listed("7 1/64x7")
    assert plan(reading).bench is None
    with pytest.raises(NoPlan) as refused:
        plan(reading, INCH_BENCH)
    assert [cause.code for cause in refused.value.causes] == ["piece-between-marks"]


def test_ten_thousand_pieces_are_refused_and_not_called_impossible():
    with pytest.raises(InvalidDocument) as refused:
        plan(listed("1x1 *10000"))
    assert [finding.code for finding in refused.value.findings] == ["too-many-pieces"]


def test_a_search_that_has_no_time_proves_nothing():
    with pytest.raises(PlanTooLong):
        plan(listed(PINWHEEL, "96x96*1"), is_over=lambda: True)


@pytest.mark.parametrize("data", [json.dumps(PAPERS).encode(), b'{"schema": "bench/1"}'])
def test_documents_without_pieces_are_refused(data):
    with pytest.raises(InvalidDocument) as refused:
        plan(read_any(data))
    assert refused.value.findings[0].code == "unknown-schema"


def test_a_recipe_without_sheets_has_no_sizes():
    with pytest.raises(InvalidDocument) as refused:
        plan(read_recipe(canonical({name: value for name, value in SOUND.items() if name != "sheets"})))
    assert refused.value.findings[0].code == "size-needed"


def where_all_lies(recipe):
    cut = pieces(cut_sheets(recipe))
    return sorted((p.page, p.layer, p.rect, p.piece.name, p.piece.role) for p in placed_pieces(recipe, cut))


def all_rects(recipe):
    placed = placed_pieces(recipe, pieces(cut_sheets(recipe)))
    return [(p.page, p.layer, p.rect, p.piece.role) for p in placed]


def planned_again(data):
    reading = read_recipe(data)
    answer = plan_answer(plan(reading))
    return reading.model, proven(read_recipe(canonical(answer["plans"][0]["recipe"])), INCH_BENCH)


def test_a_recipe_cut_otherwise_looks_the_same():
    before, after = planned_again(sound())
    assert where_all_lies(after) == where_all_lies(before)
    assert sum(sheet.times for sheet in after.sheets) <= sum(sheet.times for sheet in before.sheets)


def test_a_piece_that_is_cut_lying_is_turned_back_where_it_is_placed():
    recipe = deepcopy(SOUND)
    recipe["sheets"][1]["columns"] = [
        {"width": "4", "rows": [{"height": "9", "piece": "panel"}, {"height": "3", "spare": True}]},
        {"width": "8", "spare": True},
    ]
    recipe["sheets"] = [recipe["sheets"][0], {**recipe["sheets"][1], "size": ["12", "12"]}]
    recipe["placements"] = [*recipe["placements"][:2], {"piece": "panel", "page": "left", "left": "1", "top": "1"}]
    recipe |= {"photos": [], "captions": [], "roles": {name: {"kind": "plain"} for name in ("background", "plain")}}
    stock = read_pieces(canonical(pieces_in_short("1x1", ["12x12 background", "9x4 plain"]))).model
    reading = read_recipe(canonical(recipe))
    made = plan_answer(plan(reading, stock=stock))["plans"][0]["recipe"]
    after = proven(read_recipe(canonical(made)))
    assert made["placements"][2]["turned"] is True
    assert where_all_lies(after) == where_all_lies(reading.model)


def test_pieces_that_share_a_name_but_no_size_keep_their_numbers():
    recipe = deepcopy(SOUND)
    recipe["sheets"][1]["columns"][0]["rows"][1]["columns"] = [
        {"width": "3", "piece": "mat"},
        {"width": "4", "piece": "mat"},
    ]
    before, after = planned_again(canonical(recipe))
    rects = {(p.piece.id, p.rect.size) for p in placed_pieces(before, pieces(cut_sheets(before)))}
    assert {(p.piece.id, p.rect.size) for p in placed_pieces(after, pieces(cut_sheets(after)))} == rects


def test_a_plan_is_drawn_sheet_by_sheet():
    planning = plan(listed(PAGE + ", 12x12 *2 base"))
    cutting = planned_cutting(planning, planning.plans[0], INCH_BENCH)
    assert len(cut_sheets_svg(cutting)) == len(cutting.sheets) == 3
    assert [pile.page for pile in cutting.piles] == ["page"]


def test_what_binds_is_said_with_its_argument():
    planning = plan(listed("7x7 *3"))
    [(_, sentences)] = binding_of(planning, planning.plans[0])
    assert sentences[0] == "The pieces take 147 sq in of the 432 sq in of 3 sheets: 34.0 %."
    assert "By their area alone the pieces that must be cut need at least 2 sheets." in sentences
    assert any("By their sides they need at least 3 sheets" in sentence for sentence in sentences)
    assert sentences[-2].startswith("285 sq in are left over")


def test_the_bench_is_named_in_the_answer():
    answer = plan_answer(plan(listed("10x10"), INCH_BENCH))
    assert answer["bench"] == {"id": INCH_BENCH.id, "title": INCH_BENCH.title, "unit": "in"}


def test_sheets_of_several_sizes_are_bound_by_what_their_sets_cost():
    planning = plan(listed(PINWHEEL, "96x96*1", "26x60*1"))
    [(_, sentences)] = binding_of(planning, planning.plans[0])
    told = "Every set of sheets that costs less than 2 has too little area, or is proved not to give the pieces."
    assert told in sentences


def as_draft(data):
    """The recipe without its sheets, each placement with the size and the role of its piece."""
    document = json.loads(data)
    recipe = read_recipe(data).model
    cut = {piece.id: piece for piece in pieces(cut_sheets(recipe))}
    for each in document["placements"]:
        piece = cut[each["piece"]]
        each |= {"size": [written(piece.width, recipe.unit), written(piece.height, recipe.unit)], "role": piece.role}
    return canonical({name: value for name, value in document.items() if name != "sheets"})


@pytest.mark.parametrize("recipe_id", sorted(COLLECTION.recipes))
def test_a_draft_of_a_recipe_is_planned_to_one_that_checks_out(recipe_id):
    before = COLLECTION.recipe(recipe_id)
    draft = read_recipe(as_draft(canonical(before.document)))
    answer = plan_answer(plan(draft))
    after = read_recipe(canonical(answer["plans"][0]["recipe"]))
    assert check(after, INCH_BENCH).is_fine
    assert all_rects(after.model) == all_rects(before.model)
    assert list(after.document) == list(before.document)


def test_a_draft_says_that_it_is_one_and_nothing_else():
    report = check(read_recipe(as_draft(sound())), INCH_BENCH)
    assert [finding.code for finding in report.findings] == ["no-sheets"]


def test_a_draft_without_size_or_role_names_the_placement():
    document = json.loads(as_draft(sound()))
    del document["placements"][4]["size"], document["placements"][5]["role"]
    document["placements"][6]["role"] = "pront"
    with pytest.raises(InvalidDocument) as refused:
        plan(read_recipe(canonical(document)))
    assert [(f.code, f.where) for f in refused.value.findings] == [
        ("size-needed", "/placements/4"),
        ("role-needed", "/placements/5"),
        ("role-unknown", "/placements/6/role"),
    ]


def test_pieces_of_a_draft_that_share_a_number_row_but_no_size_keep_their_names():
    document = json.loads(as_draft(sound()))
    document["placements"][-1]["size"] = ["3", "5"]
    wanted = {each.name: each.count for each in plan(read_recipe(canonical(document))).wish.pieces}
    assert wanted["mat-1"] == wanted["mat-2"] == 1 and wanted["tile"] == 2


def test_a_draft_takes_the_stock_that_is_given():
    made = plan(
        read_recipe(as_draft(sound())),
        stock=read_pieces(canonical(pieces_in_short("1x1", ["12x12 plain", "12x12 print", "12x12 background"]))).model,
    )
    assert len(made.plans[0].sheets) == 4


def test_size_and_role_of_a_placement_agree_with_the_cut_tree():
    document = json.loads(sound())
    document["placements"][4] |= {"size": ["7", "6"], "role": "print"}
    found = {f.code: f for f in check(read_recipe(canonical(document)), INCH_BENCH).findings}
    assert found["size-differs"].message == "“panel” is placed as 7 × 6 in, but cut as 7 × 7 in."
    assert found["role-differs"].where == "/placements/4/role"
