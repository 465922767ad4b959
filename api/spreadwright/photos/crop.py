"""What is lost: of a print that is trimmed to a photo's size, and of a camera's picture that fills it."""

from dataclasses import dataclass
from fractions import Fraction

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.photos.prints import PRINTS, Print
from spreadwright.words import decimal

FINE, COARSE = 300, 150
"""Pixels per inch: what printers ask for, and what is still acceptable."""

SHAPES = {"1:1": Fraction(1), "4:3": Fraction(4, 3), "3:2": Fraction(3, 2), "16:9": Fraction(16, 9)}
"""Long side to short side of the pictures that cameras take."""


@dataclass(frozen=True, slots=True)
class Trim:
    """A print that a photo can be trimmed from, and the share of its area that falls."""

    print: Print
    lost: Fraction


@dataclass(frozen=True, slots=True)
class Pixels:
    """Width and height of a picture, pixels."""

    width: int
    height: int

    def __str__(self) -> str:
        return f"{self.width} × {self.height}"


def trims(size: Size) -> tuple[Trim, ...]:
    """The prints that are large enough for a photo, upright or lying, the least loss first.

    >>> trims(Size(30480, 46736))[0].lost  # 3 3/4 × 5 3/4 in from 4 × 6 in
    Fraction(13, 128)
    """
    found = [
        Trim(each, 1 - Fraction(size.area, each.size.area)) for each in PRINTS if each.size.fits(_short_first(size))
    ]
    return tuple(sorted(found, key=lambda trim: (trim.lost, trim.print.size)))


def picture_loss(shape: Fraction, size: Size) -> Fraction:
    """The share of a picture that is cut off when it fills a size, its long side along the long one.

    Args:
        shape: Long side to short side, at least 1.

    >>> picture_loss(Fraction(4, 3), Size(4, 6))
    Fraction(1, 9)
    """
    short = _short_first(size)
    wanted = Fraction(short.height, short.width)
    return 1 - min(shape, wanted) / max(shape, wanted)


def pixels(size: Size, per_inch: int) -> Pixels:
    """The fewest pixels that give a size so many to the inch, each side rounded up."""
    return Pixels(*(-(-side * per_inch // TICKS[Unit.INCH]) for side in (size.width, size.height)))


def share_text(share: Fraction) -> str:
    """A share in percent for people, to a tenth; halfway goes up.

    >>> share_text(Fraction(1, 16)), share_text(Fraction(0))
    ('6.3 %', '0 %')
    """
    tenths = (2000 * share.numerator + share.denominator) // (2 * share.denominator)
    whole, rest = divmod(tenths, 10)
    return f"{decimal(f'{whole}.{rest}' if rest else str(whole))} %"


def _short_first(size: Size) -> Size:
    return Size(min(size.width, size.height), max(size.width, size.height))
