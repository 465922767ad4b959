import csv
from io import StringIO

import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.errors import InvalidDocument
from spreadwright.geometry import Size
from spreadwright.lengths import Unit, size_text, ticks
from spreadwright.model import INCH_BENCH
from spreadwright.photos import share_text
from spreadwright.store import Collection
from spreadwright.tasks.photo_answers import photos_answer, photos_csv
from spreadwright.tasks.photos import Border, photos
from spreadwright.words import speaking


def found(data=None, border=Border.RECIPE):
    return photos(read_recipe(data or sound(), "seat"), INCH_BENCH, border)


def inches(width: str, height: str) -> Size:
    return Size(ticks(width, Unit.INCH), ticks(height, Unit.INCH))


def test_photo_has_the_border_of_the_recipe_or_an_eighth_of_an_inch():
    assert found().of("panel").size == inches("6 1/2", "6 1/2")
    assert found().of("mat-1").size == inches("3 1/4", "4 3/4")


def test_wide_border_stands_beside_and_can_be_chosen():
    wide = found().widened(found().of("mat-1"))
    assert wide.size == inches("3", "4 1/2") == found(border=Border.WIDE).of("mat-1").size
    assert found(border=Border.NARROW).of("panel").size == inches("6 3/4", "6 3/4")


def test_photo_lies_as_its_mat_lies_on_the_page():
    data = spoilt(lambda d: d["placements"][9].update(turned=True))
    assert found(data).of("mat-1").size == inches("4 3/4", "3 1/4")
    assert found(data).of("mat-1").trims == found().of("mat-1").trims


def test_best_print_and_what_is_lost_of_it_in_words():
    mat = found().of("mat-1")
    assert share_text(mat.trims[0].lost) == "11.8 %"
    assert mat.words == "Trim it from a print of 3 1/2 × 5 in (9 × 13 cm); 11.8 % of the print is cut off."
    assert (str(mat.fine), str(mat.coarse)) == ("975 × 1425", "488 × 713")


def test_metric_bench_names_prints_in_centimetres():
    metric = photos(read_recipe(sound(), "seat"), Collection().bench("bench-metric"))
    assert "9 × 13 cm (3 1/2 × 5 in)" in metric.of("mat-1").words


def test_metric_bench_trims_to_marks_of_its_ruler():
    plan = photos(read_recipe(sound(), "seat"), Collection().bench("bench-metric")).of("mat-1")
    assert size_text(plan.size.width, plan.size.height, Unit.MILLIMETRE) == "82.55 × 120.65 mm"
    assert size_text(plan.on_ruler.width, plan.on_ruler.height, Unit.MILLIMETRE) == "83 × 121 mm"
    assert found().of("mat-1").on_ruler == found().of("mat-1").size


def test_photo_of_the_size_of_a_print_is_not_trimmed():
    data = spoilt(lambda d: d["photos"][1].update(border="0"))
    assert found(data).of("mat-1").words == "A print of 3 1/2 × 5 in (9 × 13 cm) fits as it is."


def test_photo_that_no_print_covers_says_so():
    plan = found(spoilt(lambda d: d["photos"][0].update(on="base-1", border="1"))).of("base-1")
    assert plan.trims == () and plan.words == "No usual print covers it: have it printed at 10 × 10 in."


def test_border_wider_than_a_mat_allows_names_the_mat():
    def narrow(recipe):
        recipe["photos"][1]["on"] = "sliver"
        recipe["sheets"][1]["columns"][0]["rows"][1]["columns"] = [
            {"width": "1/2", "piece": "sliver"},
            {"width": "rest", "piece": "mat-a"},
        ]
        recipe["placements"][9]["piece"], recipe["placements"][10]["piece"] = "sliver", "mat-a"
        recipe["photos"][2]["on"] = "mat-a"

    assert found(spoilt(narrow)).widened(found(spoilt(narrow)).of("sliver")) is None
    with pytest.raises(InvalidDocument) as caught, speaking("de"):
        found(spoilt(narrow), Border.WIDE)
    assert all("leaves" in each.message for each in caught.value.findings if each.code == "mat-too-small")
    assert [(each.code, each.where) for each in caught.value.findings if each.severity == "error"] == [
        ("mat-too-small", "/photos/1")
    ]


def test_table_has_a_row_for_each_photo_and_print():
    rows = list(csv.DictReader(StringIO(photos_csv(found()).decode())))
    assert len(rows) == sum(max(1, len(plan.trims)) for plan in found().plans)
    row = next(row for row in rows if row["mat"] == "mat-1")
    assert (row["width_in"], row["width_mm"], row["pixels_high_300"]) == ("3.25", "82.55", "1425")
    assert float(row["share_lost"]) == pytest.approx(1 - 3.25 * 4.75 / 17.5, abs=1e-5)


def test_answer_shows_the_wide_border_beside_the_chosen_one():
    mat = photos_answer(found())["photos"][1]
    assert mat["border"]["text"] == "1/8 in" and mat["wide"]["border"]["text"] == "1/4 in"
    assert mat["wide"]["pixels"]["at_300_per_inch"] == {"width": 900, "height": 1350}
    assert [each["shape"] for each in mat["camera_shapes"]] == ["1:1", "4:3", "3:2", "16:9"]


def test_sentences_speak_the_language_that_is_spoken():
    with speaking("de"):
        assert "," in found().of("mat-1").words
