"""Grammage and basis weight against published values; the data beside this file holds them.

The basic sizes are those of public paper-weight tables and of the entry “Grammage” of a printing encyclopedia, the
conversion follows from the international pound (453.59237 g) and inch, and the rounded grammages of 65, 80 and 100 lb
cover, 90 and 110 lb index and 80 lb text are those of the weight table of a public printer user guide. Masses of sheets
are area times grammage, A4 by ISO 216:2007. Trade pages give the constant as 1406.5 instead of 1406.1392, 0.03 % more.
"""

import json
from fractions import Fraction
from pathlib import Path

import pytest

from spreadwright.geometry import Size
from spreadwright.lengths import Unit, ticks
from spreadwright.model import Basis, Weight, basis_weight, rounded

PAPER = json.loads((Path(__file__).parent / "paper.json").read_text())
SQUARE = Size(ticks("12", Unit.INCH), ticks("12", Unit.INCH))
A4 = Size(ticks("210", Unit.MILLIMETRE), ticks("297", Unit.MILLIMETRE))


def bases(kind: str) -> list[Basis]:
    return [Basis(name) for name in kind.split("_")]


def at_two_places(value: Fraction) -> float:
    return round(float(value), 2)


@pytest.mark.parametrize("row", PAPER["worked"], ids=lambda row: f"{row['lb']} lb {row['kind']}")
def test_basis_weights_as_grammage_and_as_the_mass_of_a_sheet(row):
    for basis in bases(row["kind"]):
        weight = basis_weight(Fraction(row["lb"]), basis)
        assert at_two_places(weight.grammage) == row["gsm"]
        assert rounded(weight.grammage) == row["gsm_rounded"]
        assert at_two_places(weight.mass_g(SQUARE)) == row["mass_12x12_sheet_g"]


@pytest.mark.parametrize("kind", PAPER["basis_sizes_in"])
def test_basic_sizes_and_the_factor_of_each(kind):
    width, height = PAPER["basis_sizes_in"][kind]
    for basis in bases(kind):
        assert basis.size == Size(ticks(str(width), Unit.INCH), ticks(str(height), Unit.INCH))
        factor = basis_weight(Fraction(1), basis).grammage
        assert round(float(factor), 4) == PAPER["gsm_per_lb"][kind]
        assert round(float(factor) * width * height, 4) == PAPER["constant_exact"]


def test_500_sheets_of_the_basic_size_weigh_what_they_are_called():
    for basis in Basis:
        weight = basis_weight(Fraction(80), basis)
        assert PAPER["basis_sheets"] * weight.mass_g(basis.size) == 80 * Fraction("453.59237")


@pytest.mark.parametrize(("size", "key"), [(SQUARE, "12x12"), (A4, "A4")])
def test_mass_of_a_sheet_by_its_grammage(size, key):
    for grammage, mass_g in PAPER[f"mass_{key}_sheet_g_by_gsm"].items():
        assert abs(float(Weight(Fraction(grammage)).mass_g(size)) - mass_g) <= 0.0051


def test_the_constant_of_trade_pages_would_tell_one_paper_heavier_than_it_is():
    rough = Fraction(str(PAPER["constant_seen_in_trade_pages"]))
    told = {
        (row["lb"], basis): (rounded(weight.grammage), rounded(rough * row["lb"] * in_square_inches(basis)))
        for row in PAPER["worked"]
        for basis in bases(row["kind"])
        for weight in [basis_weight(Fraction(row["lb"]), basis)]
    }
    assert {paper: pair for paper, pair in told.items() if pair[0] != pair[1]} == {(110, Basis.COVER): (297, 298)}


def in_square_inches(basis: Basis) -> Fraction:
    """One by the area of the basic size."""
    return Fraction(ticks("1", Unit.INCH) ** 2, basis.size.width * basis.size.height)
