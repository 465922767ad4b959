from hypothesis import given

from spreadwright.document import content_document, sheet_document
from spreadwright.document.recipe import recipe_model
from spreadwright.document.schema import schema_findings
from spreadwright.lengths import Unit
from spreadwright.model import Axis, Branch, Leaf, Sheet, Split, Use
from strategies import EIGHTH, SQUARE, cut_trees


def read(sheet, unit):
    return recipe_model({"unit": unit.value, "sheets": [sheet]}, "")[0].sheets[0]


@given(cut_trees())
def test_written_and_read_again_is_the_same_tree(tree):
    sheet = Sheet("plain", SQUARE, tree, 2)
    for unit in Unit:
        assert read(sheet_document(sheet, unit), unit) == sheet


@given(cut_trees(axis=Axis.COLUMNS))
def test_what_is_written_is_as_the_schema_has_it(tree):
    written = sheet_document(Sheet("plain", SQUARE, tree), Unit.INCH)
    assert [f for f in schema_findings({"sheets": [written]}, "recipe") if f.where.startswith("/sheets")] == []


def test_more_equal_parts_than_one_member_counts_are_written_as_several():
    tree = Split(Axis.ROWS, (Branch(EIGHTH, Leaf(Use.PIECE, "strip"), times=250),))
    assert [row.get("times") for row in content_document(tree, Unit.INCH)["rows"]] == [100, 100, 50]


def test_spares_and_scrap_stay_what_they_are():
    assert content_document(Leaf(Use.SPARE), Unit.INCH) == {"spare": True}
    assert content_document(Leaf(Use.SCRAP), Unit.INCH) == {}
