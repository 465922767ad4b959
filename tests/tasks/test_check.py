# ruff: noqa: E501 - one fault a line reads best
import json
import time
from dataclasses import replace

import pytest

from builder import PAPERS, SOUND, sound, spoilt
from spreadwright.document import read_any, read_paper_set, read_recipe
from spreadwright.errors import InvalidDocument, Severity, UnknownName
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH
from spreadwright.tasks import check as check_reading
from spreadwright.tasks import proven, recipe_findings
from spreadwright.words import speaking

MM = TICKS[Unit.MILLIMETRE]
PAPER_SET = read_paper_set(json.dumps(PAPERS).encode(), "two").model

METRIC = replace(
    INCH_BENCH,
    unit=Unit.MILLIMETRE,
    trimmer=replace(INCH_BENCH.trimmer, length=320 * MM, graduation=MM, shortest=0),
    ruler=replace(INCH_BENCH.ruler, graduation=MM),
)

CUT = ("sheets", 1, "columns", 0)


def check(data, *on):
    return check_reading(read_any(data), *on)


def at(document, *path):
    for step in path:
        document = document[step]
    return document


def put(*path_and_value):
    *path, last, value = path_and_value
    return lambda document: at(document, *path).__setitem__(last, value)


def drop(*path):
    return lambda document: at(document, *path[:-1]).__delitem__(path[-1])


def add(*path_and_value):
    *path, value = path_and_value
    return lambda document: at(document, *path).append(value)


CASES = [
    ("row-does-not-fill", "/sheets/1/columns/0/rows/1/columns", "1 in over", put(*CUT, "width", "6")),
    ("row-does-not-fill", "/sheets/2/rows/1/columns", "2 in missing", put("sheets", 2, "rows", 1, "columns", 0, "width", "5")),
    ("column-does-not-fill", "/sheets/1/columns/0/rows", "1/2 in missing", put(*CUT, "rows", 0, "height", "6 1/2")),
    ("rest-twice", "/sheets/2/rows/1/height", "2 parts", put("sheets", 2, "rows", 0, "height", "rest")),
    ("nothing-left-for-rest", "/sheets/1/columns/1/width", "1 in too long", put(*CUT, "width", "13")),
    ("nothing-left-for-rest", "/sheets/1/columns/1/width", "fill it", put(*CUT, "width", "12")),
    ("rest-does-not-divide", "/sheets/1/columns/1/rows/0/height", "7", put("sheets", 1, "columns", 1, "rows", 0, "times", 7)),
    ("scrap", "/sheets/1/columns/0/rows/0", "7 × 7 in", drop(*CUT, "rows", 0, "piece")),
    ("too-many-parts", "/sheets", "10,0", put("sheets", 2, "rows", 0, {"height": "1/64", "times": 100, "columns": [{"width": "rest", "times": 100, "piece": "dot"}]})),
    ("piece-not-placed", "/sheets/1/columns/0/rows/0", "panel", drop("placements", 4)),
    ("piece-not-cut", "/placements/9/piece", "mat", put("placements", 9, "piece", "mat")),
    ("piece-placed-twice", "/placements/10/piece", "2 times", put("placements", 10, "piece", "mat-1")),
    ("piece-name-clash", "/sheets/1/columns/0/rows/1/columns/0/piece", "mat-1", put(*CUT, "rows", 0, "piece", "mat-1")),
    ("role-unknown", "/sheets/0/role", "bakground", put("sheets", 0, "role", "bakground")),
    ("role-unused", "/roles/accent", "accent", put("roles", "accent", {"kind": "any"})),
    ("role-wrong-kind", "/roles/plain/directional", "plain", put("roles", "plain", "directional", True)),
    ("role-wrong-kind", "/captions/1/on", "strip-1", add("captions", {"on": "strip-1"})),
    ("page-unknown", "/placements/9/page", "page", put("placements", 9, "page", "page")),
    ("off-page", "/placements/4", "1 in beyond the right edge", put("placements", 4, "left", "6")),
    ("off-page", "/placements/4", "1/2 in beyond the top edge", put("placements", 4, "top", "-1/2")),
    ("piece-hidden", "/placements/4", "mat-2", lambda d: d["placements"].insert(4, d["placements"].pop(10) and {"piece": "mat-2", "page": "left", "left": "1", "top": "1"})),
    ("print-turned", "/placements/2/turned", "one-way", put("placements", 2, "turned", True)),
    ("centre-between-marks", "/placements/9/centre", "centred", lambda d: (put("placements", 9, {"piece": "mat-1", "page": "right", "centre": "0", "top": "0"})(d), put("spread", "size", ["12 1/64", "12"])(d))),
    ("off-ruler", "/placements/9/left", "one distance falls between two marks of the ruler, up to 1/64 in from the nearest one: “mat-1” should lie 1/64 in from the left edge", put("placements", 9, "left", "1/64")),
    ("mat-too-small", "/photos/1", "no room", put("photos", 1, "border", "1 3/4")),
    ("mat-too-small", "/photos/1", "leaves 1/2 in of the photo", put("photos", 1, "border", "1 1/2")),
    ("photo-meets-piece", "/photos/0", "tile-1", put("placements", 4, "left", "1/2")),
    ("photo-on-unknown", "/photos/1/on", "mat", put("photos", 1, "on", "mat")),
    ("no-print-large-enough", "/photos/0", "largest is 8 × 12 in", put("photos", 0, "on", "base-1")),
    ("photo-twice", "/photos/2/on", "mat-1", put("photos", 2, "on", "mat-1")),
    ("caption-twice", "/captions/1/on", "tile-2", add("captions", {"on": "tile-2"})),
    ("caption-under-photo", "/captions/1/on", "mat-1", add("captions", {"on": "mat-1"})),
    ("cut-lost-between-marks", "/sheets/2/rows", "same mark", put("sheets", 2, "rows", 0, {"height": "1/64", "piece": "strip", "times": 2})),
    ("caption-on-unknown", "/captions/0/on", "tilt-2", put("captions", 0, "on", "tilt-2")),
    ("sheet-larger-than-trimmer", "/sheets/0/columns", "14 in long", put("sheets", 0, {"role": "background", "size": ["12", "14"], "columns": [{"width": "6", "piece": "base", "times": 2}]})),
    ("off-graduation", "/sheets/1", "Between “mat-1” and “mat-2” it should be set to 3 33/64 in, where there are only 3 1/2 in and 3 9/16 in. Concerned: “mat-1”, “mat-2”", lambda d: put(*CUT, "rows", 1, "columns", [{"width": "3 33/64", "piece": "mat"}, {"width": "rest", "piece": "mat"}])(d)),
    ("rounded-to-marks", "/sheets/1", "“mat-1” as 3 1/2 × 5 in for 3 33/64 × 5 in", lambda d: put(*CUT, "rows", 1, "columns", [{"width": "3 33/64", "piece": "mat"}, {"width": "rest", "piece": "mat"}])(d)),
    ("strip-too-narrow", "/sheets/2/rows/0", "“strip-1” and “strip-2” are only 1/4 in wide", put("sheets", 2, "rows", 0, "height", "1/4")),
    ("unknown-member", "/sheets/1/columns/0/widht", "widht", lambda d: at(d, *CUT).update(widht=at(d, *CUT).pop("width"))),
    ("missing-member", "/sheets/1/columns/0", "width", drop(*CUT, "width")),
    ("not-a-length", "/photos/0/border", "x", put("photos", 0, "border", "x")),
    ("between-marks", "/placements/4/left", "1/3", put("placements", 4, "left", "1/3")),
    ("too-short", "/sheets/2/rows/0/height", "-1", put("sheets", 2, "rows", 0, "height", "-1")),
    ("needs-exactly-one", "/placements/4", "left", put("placements", 4, "right", "0")),
    ("members-not-together", "/sheets/0/rows", "rows", put("sheets", 0, "rows", [{"height": "12", "piece": "x"}])),
    ("wrong-type", "/sheets/1/columns/0/width", "a number", put(*CUT, "width", 7)),
    ("wrong-value", "/unit", "inch", put("unit", "inch")),
    ("wrong-type", "/placements/4", "a number", put("placements", 4, 5)),
    ("wrong-type", "/placements/4", "null", put("placements", 4, None)),
    ("wrong-value", "/spread/pages", "leftt", put("spread", "pages", "leftt")),
    ("wrong-text", "/title", "T", put("title", "T\n")),
    ("wrong-text", "/sheets/1/columns/0/rows/0/piece", "panel", put(*CUT, "rows", 0, "piece", "panel\n")),
    ("wrong-text", "/title", "a", put("title", "a\u0000b")),
    ("unknown-schema", "/schema", "recipe/2", put("schema", "recipe/2")),
]  # fmt: skip


def test_sound_recipe_has_nothing_to_say():
    report = check(sound(), INCH_BENCH)
    assert report.findings == () and report.is_fine and report.title == "Window seat"


@pytest.mark.parametrize(
    ("code", "where", "words", "spoil"), CASES, ids=lambda value: value if isinstance(value, str) else ""
)
def test_each_fault_is_found_where_it_is(code, where, words, spoil):
    findings = check(spoilt(spoil), INCH_BENCH).findings
    found = [finding for finding in findings if (finding.code, finding.where) == (code, where)]
    assert found, [(finding.code, finding.where) for finding in findings]
    assert any(words in finding.message for finding in found)
    assert all(finding.remedy.endswith((".", "?", "…")) and finding.message.endswith(".") for finding in findings)


def test_findings_are_english_whatever_is_spoken():
    millimetre = TICKS[Unit.MILLIMETRE]
    metric = replace(INCH_BENCH, unit=Unit.MILLIMETRE, trimmer=replace(INCH_BENCH.trimmer, graduation=millimetre))
    with speaking("de"):
        spoken = recipe_findings(read_recipe(sound()), metric)
    assert spoken == recipe_findings(read_recipe(sound()), metric)


PRINTED = {
    "strip-too-narrow": put("sheets", 2, "rows", 0, "height", "1/4"),
    "photo-meets-piece": put("placements", 4, "left", "1/2"),
    "mat-too-small": put("photos", 1, "border", "1 1/2"),
    "no-print-large-enough": put("photos", 0, "on", "base-1"),
    "caption-under-photo": add("captions", {"on": "mat-1"}),
    "adhesive-too-wide": put("sheets", 2, "rows", 0, "height", "1/8"),
}


@pytest.mark.parametrize("language", ["de", "fr"])
@pytest.mark.parametrize("code", PRINTED)
def test_findings_that_are_printed_speak_every_language(code, language):
    reading = read_recipe(spoilt(PRINTED[code]))
    english, spoken = (
        next(f for f in recipe_findings(reading, INCH_BENCH, language=each) if f.code == code)
        for each in ("en", language)
    )
    assert (spoken.where, spoken.severity) == (english.where, english.severity)
    assert spoken.message != english.message and spoken.remedy != english.remedy


def test_misspelt_member_names_the_one_that_is_meant():
    spoil = lambda d: at(d, *CUT).update(widht=at(d, *CUT).pop("width"))  # noqa: E731
    (finding,) = [f for f in check(spoilt(spoil), INCH_BENCH).findings if f.code == "unknown-member"]
    assert "widht" in finding.message and finding.remedy == "Did you mean “width”?"


def test_all_faults_are_said_at_once_in_document_order():
    def spoil(document):
        document["photos"][1]["on"] = "nothing"
        document["sheets"][0]["role"] = "bakground"
        document["placements"][4]["left"] = "1/3"
        document["titel"] = document.pop("title")
        at(document, *CUT)["width"] = "6"

    report = check(spoilt(spoil), INCH_BENCH)
    codes = [f.code for f in report.findings if f.severity is Severity.ERROR]
    assert codes == [
        "missing-member",
        "role-unknown",
        "row-does-not-fill",
        "between-marks",
        "photo-on-unknown",
        "unknown-member",
    ]
    assert not report.is_fine


def test_unreadable_length_does_not_hide_the_rest():
    def spoil(document):
        at(document, *CUT)["width"] = "seven"
        document["placements"].pop()

    codes = {finding.code for finding in check(spoilt(spoil), INCH_BENCH).findings}
    assert codes == {"not-a-length", "piece-not-placed"}


def test_one_open_length_hides_no_more_than_it_must():
    def spoil(document):
        document["sheets"][1]["columns"] = [
            {"width": "1/3", "piece": "panel"},
            {"width": "rest", "rows": [{"height": "13", "piece": "tile"}]},
        ]
        document["sheets"][2]["columns"] = document["sheets"][2].pop("rows") and [
            {"width": "rest", "rows": [{"height": "5", "piece": "strip", "times": 2}]},
            {"width": "rest", "piece": "block"},
            {"width": "3", "rows": [{"height": "1/4", "piece": "mat"}, {"height": "11", "piece": "long"}]},
        ]
        document["placements"][10] = {"piece": "long", "page": "left", "left": "0", "top": "2"}
        document["photos"] = [{"on": "long", "border": "1 1/2"}, {"on": "mat", "border": "1/2"}]

    findings = check(spoilt(spoil), INCH_BENCH).findings
    found = {(f.code, f.where): f.message for f in findings}
    assert "1 in over" in found["column-does-not-fill", "/sheets/1/columns/1/rows"]
    assert "2 in missing" in found["column-does-not-fill", "/sheets/2/columns/0/rows"]
    assert "3/4 in missing" in found["column-does-not-fill", "/sheets/2/columns/2/rows"]
    assert "1/4 in wide" in found["strip-too-narrow", "/sheets/2/columns/2/rows/0"]
    assert "1 in beyond the bottom edge" in found["off-page", "/placements/10"]
    assert {("mat-too-small", "/photos/0"), ("mat-too-small", "/photos/1")} <= set(found)


def test_many_unknown_names_are_found_within_a_second():
    def spoil(document):
        rows = [{"height": "rest", "columns": [{"width": "1/16", "piece": f"part-a{i}"} for i in range(192)]}]
        document["sheets"] = [{"role": "plain", "size": ["12", "12"], "rows": rows} for _ in range(5)]
        for index, sheet in enumerate(document["sheets"]):
            document["sheets"][index] = json.loads(json.dumps(sheet).replace("part-a", f"part-{'bcdef'[index]}"))
        document["placements"] = [{"piece": f"prat-{i}", "page": "left", "left": "0", "top": "0"} for i in range(1000)]
        document["photos"] = [{"on": f"prat-{i}"} for i in range(200)]
        document["captions"] = [{"on": f"prat-{i}"} for i in range(200)]

    data = spoilt(spoil)
    start = time.process_time()
    findings = check(data, INCH_BENCH).findings
    assert len([f for f in findings if f.code == "piece-not-cut"]) == 1000
    assert time.process_time() - start < 2


def test_sheet_too_large_both_ways_is_not_told_to_be_cut_the_other_way():
    def spoil(document):
        document["sheets"][0] = {
            "role": "background",
            "size": ["16", "20"],
            "columns": [{"width": "8", "piece": "base", "times": 2}],
        }

    (finding,) = [f for f in check(spoilt(spoil), INCH_BENCH).findings if f.code == "sheet-larger-than-trimmer"]
    assert "20 in long" in finding.message and finding.remedy == "Use smaller sheets or a longer trimmer."


def test_hair_too_long_or_too_narrow_is_not_told_as_what_the_trimmer_can_do():
    def spoil(document):
        document["sheets"][0]["size"] = ["305 mm", "305 mm"]
        document["sheets"][0]["columns"] = [{"width": "12.6 mm", "piece": "base", "times": 2}, {"width": "rest"}]
        del document["sheets"][0]["piece"], document["sheets"][0]["times"]

    told = {f.code: f.message for f in check(spoilt(spoil), INCH_BENCH).findings}
    assert "is 12 1/64 in long; the trimmer cuts 12 in." in told["sheet-larger-than-trimmer"]
    assert "are only 31/64 in wide, narrower than the 1/2 in" in told["strip-too-narrow"]


def test_repeated_rest_must_fall_on_a_mark():
    def spoil(document):
        document["sheets"][1] = {
            "role": "plain",
            "size": ["30 cm", "30 cm"],
            "columns": [{"width": "rest", "piece": "mat", "times": 64}],
        }

    codes = {f.code for f in check(spoilt(spoil), INCH_BENCH).findings}
    assert "rest-does-not-divide" in codes


def test_unit_does_not_change_the_findings():
    def metric(document):
        document["unit"] = "mm"
        for place in document["placements"]:
            place |= {k: f"{v} in" for k, v in place.items() if k in ("left", "right", "top", "bottom")}
        document["spread"]["size"] = ["304.8", "30.48 cm"]
        for sheet in document["sheets"]:
            sheet["size"] = ["304.8", "12 in"]
        at(document, *CUT)["width"] = "177.8"
        at(document, *CUT)["rows"][0]["height"] = "17.78 cm"
        at(document, *CUT)["rows"][1] = {"height": "127", "columns": [{"width": "88.9", "piece": "mat", "times": 2}]}
        document["sheets"][2]["rows"][0]["height"] = '3"'
        document["sheets"][2]["rows"][1]["columns"][0]["width"] = "152.4"
        document["photos"][0]["border"] = "6.35 mm"

    assert check(spoilt(metric), INCH_BENCH).findings == ()


def test_metric_bench_is_told_once_for_each_sheet_which_marks_it_lacks():
    report = check(sound(), METRIC)
    found = [f for f in report.findings if f.code == "off-graduation"]
    assert report.is_fine and [f.where for f in found] == ["/sheets/1", "/sheets/2"]
    assert found[0].message == (
        "Sheet 3: 4 of 4 cuts fall between two marks of the trimmer’s scale, up to 0.4 mm from the nearest one. Between "
        "“tile-1” and “tile-2” it should be set to 152.4 mm, where there are only 152 mm and 153 mm. Concerned: “panel”, "
        "“mat-1”, “mat-2”, “tile-1”, “tile-2”."
    )
    assert found[0].remedy.startswith("The steps set the nearest marks, here 152 mm, and no error is carried on.")


def test_metric_ruler_is_told_once_for_each_page_which_marks_it_lacks():
    found = [f for f in check(sound(), METRIC).findings if f.code == "off-ruler"]
    assert [f.where for f in found] == ["/placements/5/right", "/placements/7/right"]
    assert found[0].message == (
        "On the left page 4 distances fall between two marks of the ruler, up to 0.4 mm from the nearest one: “tile-1” "
        "should lie 6.4 mm from the right edge of the page, where there are only 6 mm and 7 mm. Also concerned: “strip-1”, "
        "“mat-2”."
    )
    assert found[0].remedy.startswith("The steps measure to the nearest marks, here 6 mm, and no error is carried on.")


def test_equal_sheets_are_told_together():
    def twice(document):
        document["sheets"][0] = {
            "role": "background",
            "size": ["12", "12"],
            "times": 2,
            "columns": [{"width": "3 33/64", "piece": "base"}, {"width": "rest", "spare": True}],
        }

    (finding,) = [f for f in check(spoilt(twice), INCH_BENCH).findings if f.code == "off-graduation"]
    assert finding.where == "/sheets/0"
    assert finding.message.startswith("Sheets 1 and 2, each: the only cut falls between two marks")
    assert finding.message.endswith("Concerned: “base-1”.")


def test_set_that_cannot_fill_a_role_is_named():
    plain_only = read_paper_set(spoilt(lambda d: d["papers"].__delitem__(slice(2, 4)), PAPERS), "plain").model
    (finding,) = check(sound(), INCH_BENCH, plain_only).findings
    assert (finding.code, finding.where) == ("no-paper-for-role", "/roles/print")
    assert "no patterned face" in finding.message


def test_set_with_fewer_papers_than_roles_says_that_papers_repeat():
    few = read_paper_set(spoilt(lambda d: d["papers"].__delitem__(slice(1, 3)), PAPERS), "few").model
    (finding,) = check(sound(), INCH_BENCH, few).findings
    assert (finding.code, finding.where, finding.severity) == ("fewer-papers-than-roles", "/roles", Severity.NOTE)
    assert "2 papers for 3 roles" in finding.message


def test_paper_of_the_wrong_kind_in_a_role():
    (finding,) = check(sound(), INCH_BENCH, PAPER_SET, "two.fog.rope.reed").findings
    assert (finding.code, finding.where) == ("role-wrong-kind", "/roles/plain")
    assert "Rope stripe" in finding.message and finding.severity is Severity.ERROR


def test_one_way_print_turned_on_its_side_in_a_colourway():
    def spoil(document):
        document["roles"]["print"]["directional"] = False
        document["placements"][6]["turned"] = True

    codes = {f.code for f in check(spoilt(spoil), INCH_BENCH, PAPER_SET, "two.fog.slate.reed").findings}
    assert codes == {"role-wrong-kind", "print-turned"}


def test_colourway_of_another_recipe_is_refused():
    with pytest.raises(UnknownName):
        check(sound(), INCH_BENCH, PAPER_SET, "two.fog.slate")


def test_paper_sets_and_benches_are_checked_by_their_own_schemas():
    report = check(spoilt(put("papers", 1, "id", "fog"), PAPERS), INCH_BENCH)
    assert report.kind == "paper-set"
    assert [(f.code, f.where) for f in report.findings] == [("paper-id-twice", "/papers/1/id")]
    bench = {"schema": "bench/1", "title": "Mine", "unit": "in", "trimmer": {"length": "12"}, "ruler": {}}
    found = check(json.dumps(bench).encode(), INCH_BENCH).findings
    assert [(f.code, f.where) for f in found] == [
        ("missing-member", "/trimmer"),
        ("missing-member", "/trimmer"),
        ("missing-member", "/ruler"),
    ]


def test_recipe_with_errors_is_not_proven():
    with pytest.raises(InvalidDocument, match="1 error"):
        proven(read_recipe(spoilt(drop("placements", 4))))
    assert proven(read_recipe(sound())).title == SOUND["title"]


@pytest.mark.parametrize("document", [{}, {"sheets": 3}, {"sheets": [1, {}, {"columns": [None, {}]}], "placements": [[]]}, {"spread": [], "roles": {"a": 1}, "photos": "x"}, {"schema": 5, "unit": [], "title": {}}], ids=str)  # fmt: skip
def test_document_of_wrong_shapes_gives_findings_only(document):
    report = check(json.dumps(document).encode(), INCH_BENCH)
    assert not report.is_fine and all(finding.remedy for finding in report.findings)


@pytest.mark.parametrize(("graduation", "is_small"), [(8128 // 32, True), (8128, False)])
def test_rounding_is_left_alone_only_where_every_part_changes_little(graduation, is_small):
    spoil = put(*CUT, "rows", 1, "columns", [{"width": "3 33/64", "piece": "mat"}, {"width": "rest", "piece": "mat"}])
    coarse = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, graduation=graduation))
    remedies = {f.where: f.remedy for f in check(spoilt(spoil), coarse).findings if f.code == "rounded-to-marks"}
    remedy = remedies["/sheets/1"]
    assert remedy.startswith("Nothing has to be done") == is_small
    assert ("check the design" in remedy and "31/64 in" in remedy) != is_small
