"""The prints that can be ordered nearly everywhere: their sizes in inches, and the names that they bear in centimetres.

Sizes and centimetre names as public lists of print sizes give them. A name in centimetres is no size: a print
called 10 × 15 cm is 4 × 6 in, which is 101.6 × 152.4 mm.
"""

from dataclasses import dataclass

from spreadwright.geometry import Size
from spreadwright.lengths import Unit, size_text, ticks


@dataclass(frozen=True, slots=True)
class Print:
    """One size of print.

    Attributes:
        size: Exact, the shorter side first, ticks.
        metric: What it is called where people measure in centimetres.
    """

    size: Size
    metric: str


def _print(short: str, long: str, metric: str) -> Print:
    return Print(Size(ticks(short, Unit.INCH), ticks(long, Unit.INCH)), metric)


PRINTS = (
    _print("2 1/2", "3 1/2", "6 × 9 cm"),
    _print("3 1/2", "5", "9 × 13 cm"),
    _print("4", "6", "10 × 15 cm"),
    _print("4 1/2", "6", "11 × 15 cm"),
    _print("5", "7", "13 × 18 cm"),
    _print("6", "8", "15 × 20 cm"),
    _print("8", "10", "20 × 25 cm"),
    _print("8", "12", "20 × 30 cm"),
)
"""From the smallest to the largest."""


def print_label(each: Print, unit: Unit) -> str:
    """What a print is called, the name in the maker's own unit first.

    >>> print_label(PRINTS[2], Unit.INCH), print_label(PRINTS[2], Unit.MILLIMETRE)
    ('4 × 6 in (10 × 15 cm)', '10 × 15 cm (4 × 6 in)')
    """
    inch = size_text(each.size.width, each.size.height, Unit.INCH)
    return f"{inch} ({each.metric})" if unit is Unit.INCH else f"{each.metric} ({inch})"
