import csv
from fractions import Fraction
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.errors import InvalidDocument
from spreadwright.lengths import FINEST, Unit
from spreadwright.tasks.pieces import pieces_answer, pieces_csv, pieces_of
from spreadwright.tasks.tables import in_inches, in_mm


@pytest.fixture
def rows():
    return list(csv.DictReader(StringIO(pieces_csv(pieces_of(read_recipe(sound()))).decode(), newline="")))


def test_every_piece_has_a_row(rows):
    assert len(rows) == 11 and len({row["mark"] for row in rows}) == 11
    assert {row["page"] for row in rows} == {"left", "right"}


def test_row_tells_size_in_both_units_sheet_role_and_photo(rows):
    mat = next(row for row in rows if row["name"] == "mat-1")
    assert (mat["width_mm"], mat["height_mm"], mat["width_in"], mat["height_in"]) == ("88.9", "127", "3.5", "5")
    assert (mat["sheet"], mat["page"], mat["role"], mat["face"], mat["turned"]) == (
        "3",
        "right",
        "plain",
        "front",
        "no",
    )
    assert (mat["photo_width_in"], mat["photo_height_mm"]) == ("3.25", "120.65")
    assert next(row for row in rows if row["name"] == "strip-1")["photo_width_in"] == ""


def test_lines_end_as_spreadsheets_expect():
    data = pieces_csv(pieces_of(read_recipe(sound())))
    assert data.count(b"\r\n") == data.count(b"\n") == 12


def test_answer_says_the_same_in_ticks():
    reading = read_recipe(sound(), "seat")
    mat = next(each for each in pieces_answer(reading.model, pieces_of(reading))["pieces"] if each["id"] == "mat-1")
    assert mat["size"] == {"width": 28448, "height": 40640, "text": "3 1/2 × 5 in"} and mat["photo"]["width"] == 26416


def test_recipe_with_errors_has_no_table():
    with pytest.raises(InvalidDocument):
        pieces_of(read_recipe(spoilt(lambda recipe: recipe["placements"].pop())))


@given(st.integers(0, 2560))
def test_marks_of_a_ruler_are_exact_in_a_table(marks):
    length = marks * FINEST[Unit.INCH]
    assert Fraction(in_mm(length)) * 320 == length == Fraction(in_inches(length)) * 8128
