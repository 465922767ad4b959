import pytest

from builder import sound
from spreadwright.document import read_recipe
from spreadwright.errors import UnknownName
from spreadwright.lengths import Unit
from spreadwright.model import INCH_BENCH
from spreadwright.tasks.tolerance import tolerance
from spreadwright.tolerance import amount


@pytest.fixture(scope="module")
def found():
    return tolerance(read_recipe(sound()), INCH_BENCH)


def test_uncut_sheet_is_exact(found):
    base = found.of("base-1")
    assert base.sentence == "" and base.width.worst == base.height.worst == 0
    assert base.width.why == "Both edges came with the sheet."


def test_measured_side_names_its_cut(found):
    panel = found.of("panel")
    assert panel.sentence == "Its width may come out up to 1/64 in off, its height up to 1/64 in."
    assert panel.width.why == f"Cut {panel.width.side.edges[1]} measured it."


def test_strip_across_a_whole_sheet_is_off_one_way_only(found):
    assert found.of("strip-1").width.worst == 0
    assert found.of("strip-1").sentence.startswith("Its height may come out up to ")


def test_unknown_piece_is_refused(found):
    with pytest.raises(UnknownName):
        found.of("panle")


def test_amounts_are_never_told_too_small():
    assert amount(129, Unit.INCH) == "0.016 in" and amount(1, Unit.MILLIMETRE) == "0.1 mm"
    assert amount(160, Unit.CENTIMETRE) == "0.05 cm"
