import json

import pytest

from spreadwright.document import read_any, read_pieces
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import PieceList, Stock, Wanted

INCH = TICKS[Unit.INCH]
PANEL = {"name": "panel", "size": ["7", "7"]}
SHEET = {"size": ["12", "12"]}


def listed(*pieces, stock=(SHEET,), **more):
    document = {"schema": "pieces/1", "unit": "in", "pieces": list(pieces), "stock": list(stock), **more}
    return read_pieces(json.dumps(document).encode())


def codes(reading):
    return [(finding.code, finding.where) for finding in reading.findings]


def test_every_member_reaches_the_model():
    piece = {**PANEL, "times": 3, "role": "print", "turn": False, "together": "row", "value": 2}
    reading = listed(piece, stock=[{**SHEET, "times": 2, "role": "print", "cost": 5}], title="Two rows")
    square = Size(12 * INCH, 12 * INCH)
    wanted = Wanted("panel", Size(7 * INCH, 7 * INCH), 3, False, "print", "row", 2)
    assert reading.findings == ()
    assert reading.model == PieceList("two-rows", "Two rows", Unit.INCH, (wanted,), (Stock(square, 2, "print", 5),))


def test_what_is_left_out_is_one_that_may_turn_from_any_number_of_sheets():
    model = listed(PANEL).model
    assert model.pieces == (Wanted("panel", Size(7 * INCH, 7 * INCH)),)
    assert model.stock == (Stock(Size(12 * INCH, 12 * INCH), None),)


def test_a_list_is_known_by_its_kind():
    assert read_any(listed(PANEL).data).model == listed(PANEL).model


@pytest.mark.parametrize(
    ("piece", "finding"),
    [
        ({"size": ["0", "7"]}, ("too-short", "/pieces/0/size/0")),
        ({"size": ["-7", "7"]}, ("too-short", "/pieces/0/size/0")),
        ({"size": ["1/3", "7"]}, ("between-marks", "/pieces/0/size/0")),
        ({"size": [7, 7]}, ("wrong-type", "/pieces/0/size/0")),
        ({"times": 0}, ("wrong-value", "/pieces/0/times")),
        ({"times": 10_001}, ("wrong-value", "/pieces/0/times")),
        ({"value": -1}, ("wrong-value", "/pieces/0/value")),
        ({"name": "Big One"}, ("wrong-text", "/pieces/0/name")),
        ({"colour": "red"}, ("unknown-member", "/pieces/0/colour")),
    ],
)
def test_each_fault_is_found_where_it_is(piece, finding):
    reading = listed({**PANEL, **piece})
    assert finding in codes(reading) and not reading.is_sound


def test_names_that_look_numbered_are_refused():
    mats = {"name": "mat", "size": ["3", "3"], "times": 2}
    assert codes(listed(mats, {**PANEL, "name": "mat-2"})) == [("piece-name-clash", "/pieces/1/name")]
    assert codes(listed(mats, {**PANEL, "name": "mat-3"})) == []
