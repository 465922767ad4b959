import json

import pytest

from builder import PAPERS, SOUND, sound
from spreadwright.document import canonical, read_bench, read_paper_set, read_recipe
from spreadwright.document.read import slug
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Core, Edge, Pattern, Side
from spreadwright.store import Collection

INCH = TICKS[Unit.INCH]


def test_recipe_is_read_into_ticks():
    recipe = read_recipe(sound(), "window-seat").model
    assert (recipe.id, recipe.title, recipe.unit) == ("window-seat", "Window seat", Unit.INCH)
    assert recipe.sheets[0].times == 2 and recipe.sheets[1].size.width == 12 * INCH
    assert recipe.placements[5].across.edge is Edge.RIGHT
    assert recipe.photos[1].border == INCH // 8
    assert recipe.role("print").is_directional


def test_canonical_form_reads_back_as_the_same_recipe():
    reading = read_recipe(sound())
    assert read_recipe(canonical(reading.document)).model == reading.model
    assert canonical(reading.document) == canonical(json.loads(canonical(reading.document)))


def test_id_of_a_document_without_one_comes_from_its_title():
    assert read_recipe(sound()).model.id == "window-seat"
    assert read_recipe(b'{"title": 5}').model.id == "recipe"


@pytest.mark.parametrize(
    ("title", "expected"),
    [
        ("Low tide, two", "low-tide-two"),
        ("Über Größe", "uber-groe"),
        ("日本", "x"),
        ("  ", "x"),
        ("<b>", "b"),
        (None, "x"),
    ],
)
def test_slug_is_safe_in_an_address(title, expected):
    assert slug(title, "x") == expected


def test_paper_set_is_read_with_both_faces():
    papers = read_paper_set(json.dumps(PAPERS).encode(), "two").model
    reed = papers.paper("reed")
    assert reed.face(Side.BACK).pattern is Pattern.DOTS and reed.front.is_directional
    assert papers.paper("fog").core is Core.WHITE and papers.paper("fog").front.colours == ("#dfe3e3",)
    assert papers.paper("fog").back.colours != papers.paper("fog").front.colours


def test_shipped_inch_bench_is_the_one_that_is_meant_by_default():
    assert Collection().bench() == INCH_BENCH


def test_unreadable_bench_falls_back_to_the_inch_bench():
    reading = read_bench(b'{"schema": "bench/1"}', "mine")
    assert reading.model.trimmer == INCH_BENCH.trimmer and not reading.is_sound


def test_documents_are_not_changed_by_reading():
    assert read_recipe(sound()).document == SOUND
