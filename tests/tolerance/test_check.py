"""Hand-worked cases: a recipe, a bench, and what could come out wrong."""

import json
from dataclasses import replace

import pytest

from builder import sound
from spreadwright.document import read_recipe
from spreadwright.errors import Severity
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Measures
from spreadwright.store import Collection
from spreadwright.tasks import check
from spreadwright.tasks.tolerance import tolerance
from spreadwright.words import speaking

INCH, MM = TICKS[Unit.INCH], TICKS[Unit.MILLIMETRE]
COLLECTION = Collection()


def bench(accuracy=INCH // 64, measures=Measures.KEPT, ruler=INCH // 16):
    trimmer = replace(INCH_BENCH.trimmer, accuracy=accuracy, measures=measures, length=24 * INCH)
    return replace(INCH_BENCH, trimmer=trimmer, ruler=replace(INCH_BENCH.ruler, graduation=ruler))


def recipe(sheets, placements, *, pages=("page",), photos=()):
    document = {
        "schema": "recipe/1",
        "title": "Case",
        "unit": "in",
        "spread": {"pages": list(pages), "size": ["12", "12"]},
        "roles": {"plain": {"kind": "plain"}},
        "sheets": [{"role": "plain", "size": ["12", "12"], **sheet} for sheet in sheets],
        "placements": [{"page": pages[0], **each} for each in placements],
        "photos": list(photos),
    }
    return read_recipe(json.dumps(document).encode())


def at(piece, left, top, **more):
    return {"piece": piece, "left": left, "top": top, **more}


def column(width, name):
    return {"width": width, "piece": name} if name else {"width": width, "spare": True}


def findings(reading, on):
    return [(f.code, f.message, f.remedy) for f in tolerance(reading, on).findings]


TWO_SHEETS = [
    {"columns": [column("7", "wide"), column("5", None)]},
    {"columns": [column("5", "slim"), column("7", None)]},
]


def test_pieces_of_two_sheets_may_together_be_wider_than_the_page():
    reading = recipe(TWO_SHEETS, [at("wide", "0", "0"), at("slim", "7", "0")])
    [(code, message, _)] = findings(reading, bench())
    assert code == "row-overhangs-page" and "up to 1/32 in wider than the page" in message


def test_piece_that_may_be_wider_than_the_page_is_trimmed_and_not_laid_last():
    sheet = {"size": ["16", "12"], "columns": [column("12", "base"), column("4", None)]}
    [(code, _, remedy)] = findings(recipe([sheet], [at("base", "0", "0")]), bench())
    assert code == "row-overhangs-page"
    assert remedy == "Trim “base” to the width of the page, or cut it from the whole width of a sheet."


def test_pieces_of_one_sheet_are_as_wide_as_the_page_together():
    sheet = {"columns": [column("7", "wide"), column("5", "slim")]}
    assert findings(recipe([sheet], [at("wide", "0", "0"), at("slim", "7", "0")]), bench()) == []


def test_piece_a_little_inside_the_page_may_stand_over_its_edge():
    sheet = {"columns": [column("11 31/32", "wide"), column("rest", None)]}
    fine = replace(bench(INCH // 32), trimmer=replace(bench(INCH // 32).trimmer, graduation=INCH // 64))
    [(code, message, remedy)] = findings(recipe([sheet], [at("wide", "1/64", "0")]), fine)
    assert code == "piece-overhangs-page" and "1/64 in from the" in message
    assert remedy.endswith("lay it flush with that.")


def test_piece_that_touches_an_edge_is_laid_on_it_however_it_is_written():
    sheet = {"columns": [column("5", "slim"), column("7", None)]}
    for placed in (at("slim", "7", "0"), {"piece": "slim", "right": "0", "top": "0"}):
        assert findings(recipe([sheet], [placed]), bench()) == []


@pytest.mark.parametrize(("border", "codes"), [("1/64", ["mat-narrower-than-photo"]), ("1/32", [])])
def test_border_must_be_wider_than_mat_and_photo_are_off(border, codes):
    """Mat and photo are one cut each, so both borders together lose 1/32 in at worst."""
    sheet = {"columns": [column("5", "mat"), column("7", None)]}
    reading = recipe([sheet], [at("mat", "1", "0")], photos=[{"on": "mat", "border": border}])
    assert [code for code, *_ in findings(reading, bench())] == codes


def test_piece_nested_with_a_narrow_margin_may_stand_over():
    sheets = [
        {"columns": [column("5", "under"), column("7", None)]},
        {"columns": [column("4 31/32", "over"), column("rest", None)]},
    ]
    reading = recipe(sheets, [at("under", "1", "0"), at("over", "1 1/64", "0")])
    fine = replace(
        bench(),
        trimmer=replace(bench().trimmer, graduation=INCH // 64),
        ruler=replace(INCH_BENCH.ruler, graduation=INCH // 64),
    )
    [(code, message, _)] = findings(reading, fine)
    assert code == "nested-piece-overhangs" and "shows 1/32 in" in message


STRIPS = {"rows": [{"height": "3", "piece": "strip", "times": 2}, {"height": "6", "spare": True}]}
ACROSS = [at("strip-1", "0", "4"), at("strip-2", "0", "4", page="right")]


def test_strips_across_the_gutter_are_judged_by_what_is_seen():
    reading = recipe([STRIPS], ACROSS, pages=("left", "right"))
    assert findings(reading, bench()) == []
    coarse = findings(reading, bench(INCH // 16))
    assert [code for code, *_ in coarse] == ["edges-not-level"] and "in height" in coarse[0][1]


def test_another_order_of_the_cuts_is_named_when_it_helps():
    reading = recipe([STRIPS], ACROSS, pages=("left", "right"))
    [(_, message, remedy)] = findings(reading, bench(INCH // 24))
    assert "3/32 in" in message and "Cut in another order and it is up to 1/16 in" in remedy
    assert "measure 3 in for “strip-1”, then 3 in for “strip-2”" in remedy


def test_gap_that_the_ruler_hardly_shows_is_off_by_more_than_half():
    """Half a mark is 1/32 in; what the nearest mark is besides adds to it."""
    sheet = {"columns": [column("5", "wide"), column("4", "slim"), column("3", None)]}
    [(code, message, _)] = findings(recipe([sheet], [at("wide", "1", "0"), at("slim", "6 3/64", "0")]), bench())
    assert code == "gap-uneven" and "The gap of 3/64 in" in message and "3/64 in, more than half" in message
    assert findings(recipe([sheet], [at("wide", "1", "0"), at("slim", "6 1/4", "0")]), bench()) == []


def test_equal_doubts_about_equal_names_are_told_once():
    sheets = [{"rows": [{"height": "1", "piece": "bar", "times": 12}]}]
    placements = [at(f"bar-{i + 1}", "0", str(i), page=("left", "right")[i % 2]) for i in range(12)]
    assert len(findings(recipe(sheets, placements, pages=("left", "right")), bench(INCH // 16))) <= 2


@pytest.mark.parametrize("recipe_id", list(COLLECTION.recipes))
def test_shipped_recipes_have_at_most_notes_on_any_bench_and_few_on_those_of_their_unit(recipe_id):
    reading = COLLECTION.recipe(recipe_id)
    for bench in (each.model for each in COLLECTION.benches.values()):
        found = tolerance(reading, bench).findings
        assert len(found) <= (2 if bench.unit is reading.model.unit else 4)
        assert all(finding.severity is Severity.NOTE for finding in found)


@pytest.mark.parametrize("recipe_id", ["rain-until-four", "tent-by-the-lake", "the-long-way-home", "pocket-harbour"])
def test_shipped_recipes_leave_nothing_doubtful_where_edges_share_their_cuts(recipe_id):
    for bench_id in ("bench-inch", "bench-inch-falling"):
        assert tolerance(COLLECTION.recipe(recipe_id), COLLECTION.bench(bench_id)).findings == ()


def test_sound_recipe_leaves_nothing_doubtful():
    assert tolerance(read_recipe(sound()), INCH_BENCH).findings == ()


def test_check_tells_them_besides_everything_else():
    reading = recipe(TWO_SHEETS, [at("wide", "0", "0"), at("slim", "7", "0")])
    assert [finding.code for finding in check(reading, bench()).findings] == ["row-overhangs-page"]


def test_what_cannot_be_cut_has_no_tolerance():
    reading = recipe(TWO_SHEETS, [at("wide", "0", "0")])
    assert [finding.code for finding in check(reading, bench()).findings] == ["piece-not-placed"]


def test_of_one_kind_the_worst_are_told_and_the_others_counted():
    """Seven pairs of bars of two sheets, each pair as wide as the page."""
    names = "abcdefg"
    bars = [{"height": "1 1/2", "columns": [column("7", f"{n}-wide"), column("5", None)]} for n in names]
    ends = [{"height": "1 1/2", "columns": [column("5", f"{n}-slim"), column("7", None)]} for n in names]
    sheets = [{"rows": [*some, {"height": "rest", "spare": True}]} for some in (bars, ends)]
    tops = ["0", "1 1/2", "3", "4 1/2", "6", "7 1/2", "9"]
    placed = [at(f"{n}-wide", "0", top) for n, top in zip(names, tops, strict=True)]
    placed += [at(f"{n}-slim", "7", top) for n, top in zip(names, tops, strict=True)]
    rows = [message for code, message, _ in findings(recipe(sheets, placed), bench()) if code == "row-overhangs-page"]
    assert len(rows) == 5 and rows[-1].endswith("2 more like this are not listed.")


def test_mat_between_two_cuts_is_better_measured_by_itself():
    """Off by 2/32 and its photo by 1/32, it can lose both borders of 3/64; measured by itself it is off by 1/32."""
    sheet = {"columns": [column("4", "slim"), column("5", "mat"), column("3", None)]}
    placed = [at("slim", "1/2", "0"), at("mat", "6", "0")]
    reading = recipe([sheet], placed, photos=[{"on": "mat", "border": "3/64"}])
    [(code, message, remedy)] = findings(reading, bench(INCH // 32))
    assert code == "mat-narrower-than-photo" and "by 3/32 in together" in message
    assert remedy.startswith("Cut in another order and it is up to 1/16 in: on sheet 1 measure ")


@pytest.mark.parametrize(
    ("language", "told"), [("de", "zusammen bis zu 1/32 in breiter"), ("fr", "peuvent dépasser la largeur de la page")]
)
def test_findings_speak_the_language_of_the_maker_and_those_of_check_english(language, told):
    reading = recipe(TWO_SHEETS, [at("wide", "0", "0"), at("slim", "7", "0")])
    with speaking(language):
        [(_, message, _)] = findings(reading, bench())
        [checked] = check(reading, bench()).findings
    assert told in message and "wider than the page" in checked.message
