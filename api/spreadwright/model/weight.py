"""How heavy paper is: its grammage, and the basis weight by which much of the trade sells it. Exact, so in fractions.

A basis weight counts the pounds (453.59237 g) of 500 sheets of the kind's own basic size, so it means little without
the kind: 80 lb text has 118 g/m², 80 lb cover 216 g/m².
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit

_INCH = TICKS[Unit.INCH]
_SQUARE_METRE = (1000 * TICKS[Unit.MILLIMETRE]) ** 2
_POUND_G = Fraction("453.59237")
_SHEETS = 500


class Basis(StrEnum):
    """The kinds of paper that have a basic size of their own."""

    BOND = "bond"
    TEXT = "text"
    BOOK = "book"
    OFFSET = "offset"
    COVER = "cover"
    INDEX = "index"
    BRISTOL = "bristol"
    TAG = "tag"

    @property
    def size(self) -> Size:
        """The basic size, ticks."""
        return _BASIC_SIZES[self]


_TEXT = Size(25 * _INCH, 38 * _INCH)
_BASIC_SIZES = {
    Basis.BOND: Size(17 * _INCH, 22 * _INCH),
    Basis.TEXT: _TEXT,
    Basis.BOOK: _TEXT,
    Basis.OFFSET: _TEXT,
    Basis.COVER: Size(20 * _INCH, 26 * _INCH),
    Basis.INDEX: Size(51 * _INCH // 2, 61 * _INCH // 2),
    Basis.BRISTOL: Size(45 * _INCH // 2, 57 * _INCH // 2),
    Basis.TAG: Size(24 * _INCH, 36 * _INCH),
}


@dataclass(frozen=True, slots=True)
class Weight:
    """The weight of a paper.

    Attributes:
        grammage: Mass, g/m².
        written: As it is sold, when that is a basis weight: ``65 lb cover``.
    """

    grammage: Fraction
    written: str = ""

    def __str__(self) -> str:
        """In words, the grammage rounded: ``176 g/m² (65 lb cover)``."""
        told = f"{rounded(self.grammage)} g/m²"
        return f"{told} ({self.written})" if self.written else told

    def mass_g(self, size: Size) -> Fraction:
        """The mass of one sheet of a size in ticks, g."""
        return self.grammage * Fraction(size.width * size.height, _SQUARE_METRE)


COMMON_WEIGHT = Weight(Fraction(200))
"""Of a paper that does not say."""


def basis_weight(pounds: Fraction, basis: Basis) -> Weight:
    """The weight of paper of which 500 sheets of the basic size have so many pounds.

    >>> print(basis_weight(Fraction(65), Basis.COVER))
    176 g/m² (65 lb cover)
    """
    grams = pounds * _POUND_G / _SHEETS
    grammage = grams * _SQUARE_METRE / (basis.size.width * basis.size.height)
    return Weight(grammage, f"{float(pounds):g} lb {basis.value}")


def rounded(mass: Fraction) -> int:
    """To the nearest whole number, halves upward.

    >>> rounded(Fraction(351, 2))
    176
    """
    return int(mass + Fraction(1, 2))
