"""Text to whole ticks and back, and the marks that a ruler shows.

One tick is 1/320 mm = 1/8128 in, so a 64th of an inch is 127 ticks and a tenth of a millimetre is 32:
every mark of an inch ruler and of a metric one is a whole number of ticks.
"""

import re
import unicodedata
from enum import StrEnum
from fractions import Fraction

from spreadwright.errors import BetweenMarks, UnreadableLength
from spreadwright.words import decimal


class Unit(StrEnum):
    """A unit that a document may declare."""

    INCH = "in"
    CENTIMETRE = "cm"
    MILLIMETRE = "mm"


TICKS = {Unit.INCH: 8128, Unit.CENTIMETRE: 3200, Unit.MILLIMETRE: 320}
"""Ticks in one unit."""

FINEST = {Unit.INCH: 127, Unit.CENTIMETRE: 32, Unit.MILLIMETRE: 32}
"""The finest mark of a ruler in that unit, ticks: 1/64 in, 0.1 mm."""

LONGEST = 120 * TICKS[Unit.INCH]
"""No length of this trade is longer: 10 ft, ticks."""

_SPACES = re.compile(r"\s+")
_LENGTH = re.compile(
    r"""(?P<sign>[+-]?)\s?
        (?: (?P<whole>\d{1,6}) (?:\s|\s?-\s?) (?P<num>\d{1,4}) \s?/\s? (?P<den>\d{1,4})
          | (?P<num_only>\d{1,4}) \s?/\s? (?P<den_only>\d{1,4})
          | (?P<decimal>\d{1,6}(?:[.,]\d{0,9})?|[.,]\d{1,9}) )
        \s?(?P<unit>in\.?|inch|inches|"|''|cm|mm)?""",
    re.VERBOSE | re.IGNORECASE | re.ASCII,
)
_UNIT_NAMES = {"in": Unit.INCH, "inch": Unit.INCH, "inches": Unit.INCH, '"': Unit.INCH, "''": Unit.INCH}
_LIKE_ASCII = str.maketrans(
    {"⁄": "/", "∕": "/", "−": "-", "–": "-", "‑": "-", "″": '"', "”": '"', "“": '"', "’": "'", "′": "'"}
)


def ticks(text: str, unit: Unit) -> int:
    """Ticks of a length as people write it; a number alone is in `unit`.

    >>> ticks("11 1/2", Unit.INCH) == ticks("11½", Unit.INCH) == ticks('11-1/2"', Unit.MILLIMETRE) == 93472
    True
    >>> ticks("29.2 cm", Unit.INCH) == ticks("292", Unit.MILLIMETRE) == 93440
    True

    Raises:
        UnreadableLength: The text is no length, or longer than any sheet.
        BetweenMarks: Neither 64ths of an inch nor tenths of a millimetre show it.
    """
    exact, written_in = _exact(text, unit)
    if abs(exact) > LONGEST:
        raise UnreadableLength(text, "is longer than any sheet of paper (120 in, 3048 mm)")
    if not is_mark(exact):
        below, above = neighbours(exact, FINEST[written_in])
        raise BetweenMarks(text, with_unit(below, written_in), with_unit(above, written_in))
    return int(exact)


def is_mark(length: int | Fraction) -> bool:
    """Whether an inch ruler or a metric one shows it: a 64th of an inch or a tenth of a millimetre."""
    return length % FINEST[Unit.INCH] == 0 or length % FINEST[Unit.MILLIMETRE] == 0


def _exact(text: str, unit: Unit) -> tuple[Fraction, Unit]:
    match = _LENGTH.fullmatch(_plain(text)) if len(text) <= 40 else None
    if match is None:
        raise UnreadableLength(text[:40])
    word = (match["unit"] or "").lower().rstrip(".")
    written_in = _UNIT_NAMES.get(word) or (Unit(word) if word else unit)
    value = _value(match, text) * TICKS[written_in]
    return (-value if match["sign"] == "-" else value), written_in


def _plain(text: str) -> str:
    """The text with vulgar fractions, typographic marks and odd spaces written in ASCII."""
    spelt = "".join(
        " " + unicodedata.normalize("NFKC", c) + " " if unicodedata.decomposition(c).startswith("<fraction>") else c
        for c in text
    )
    return _SPACES.sub(" ", spelt.translate(_LIKE_ASCII)).strip().replace("- ", "-")


def _value(match: re.Match[str], text: str) -> Fraction:
    if match["decimal"] is not None:
        if re.fullmatch(r"\d+,\d{3}", match["decimal"]):
            raise UnreadableLength(text, "could mean a decimal comma or thousands")
        return Fraction(match["decimal"].replace(",", ".").rstrip(".") or "0")
    whole, num, den = match["whole"] or "0", match["num"] or match["num_only"], match["den"] or match["den_only"]
    if int(den) == 0:
        raise UnreadableLength(text, "divides by nothing")
    if match["whole"] and int(num) >= int(den):
        raise UnreadableLength(text, "has a fraction that is not less than one")
    return int(whole) + Fraction(int(num), int(den))


def neighbours(length: int | Fraction, step: int) -> tuple[int, int]:
    """The marks below and above a length on a ruler with a mark every `step` ticks; equal when it lies on one."""
    below = int(length // step) * step
    return below, below if below == length else below + step


def nearest(length: int, step: int) -> int:
    """The mark nearest to a length; halfway goes to the larger one."""
    return (2 * length + step) // (2 * step) * step


def text(length: int, unit: Unit) -> str:
    """The number of a length in a unit, without the unit: ``11 1/2``, ``292.1``.

    Exact whenever a ruler of that unit shows it; otherwise to a thousandth of a millimetre or of an inch.

    >>> text(93472, Unit.INCH), text(93472, Unit.MILLIMETRE), text(-508, Unit.INCH)
    ('11 1/2', '292.1', '-1/16')
    """
    sign, size = ("-" if length < 0 else ""), abs(length)
    if unit is Unit.INCH and size % FINEST[unit] == 0:
        return sign + _mixed(Fraction(size, TICKS[unit]))
    digits = 4 if unit is Unit.CENTIMETRE else 3
    scaled = (2 * size * 10**digits + TICKS[unit]) // (2 * TICKS[unit])
    whole, rest = divmod(scaled, 10**digits)
    return sign + f"{whole}.{rest:0{digits}d}".rstrip("0").rstrip(".")


def with_unit(length: int, unit: Unit) -> str:
    """A length for people, in the language that is spoken: number, space, unit.

    >>> with_unit(93472, Unit.INCH)
    '11 1/2 in'
    """
    return f"{decimal(text(length, unit))} {unit.value}"


def told(length: int, unit: Unit) -> str:
    """A length as it is told to somebody who measures: to a 64th of an inch, or a tenth of a millimetre.

    >>> told(61976, Unit.MILLIMETRE), told(61976, Unit.INCH)
    ('193.7 mm', '7 5/8 in')
    """
    return with_unit(nearest(length, FINEST[unit]), unit)


def told_up(length: int, unit: Unit) -> str:
    """A length told no smaller than it is, such as how far something may be off.

    >>> told_up(129, Unit.MILLIMETRE), told_up(128, Unit.MILLIMETRE)
    ('0.5 mm', '0.4 mm')
    """
    return with_unit(neighbours(length, FINEST[unit])[1], unit)


def told_down(length: int, unit: Unit) -> str:
    """A length told no larger than it is, such as how wide something may be at most.

    >>> told_down(129, Unit.MILLIMETRE), told_down(8127, Unit.INCH)
    ('0.4 mm', '63/64 in')
    """
    return with_unit(neighbours(length, FINEST[unit])[0], unit)


def on_scale(length: int, step: int, unit: Unit) -> str:
    """The mark nearest to a length on a scale with a mark every `step` ticks; in the other unit if the scale has that.

    >>> on_scale(56896, 320, Unit.MILLIMETRE), on_scale(56896, 508, Unit.MILLIMETRE)
    ('178 mm', '7 in')
    """
    return told(nearest(length, step), unit if step % FINEST[unit] == 0 else _other(unit))


def is_exact(length: int, unit: Unit) -> bool:
    """Whether `text` writes this length without rounding."""
    return length % FINEST[unit] == 0


def written(length: int, unit: Unit) -> str:
    """A length as a document that declares `unit` holds it: exact, with a unit only where `unit` cannot say it."""
    if is_exact(length, unit):
        return text(length, unit)
    return f"{text(length, _other(unit))} {_other(unit).value}"


def _other(unit: Unit) -> Unit:
    """Of inches and millimetres the one that this unit is not like."""
    return Unit.MILLIMETRE if unit is Unit.INCH else Unit.INCH


def _mixed(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def size_text(width: int, height: int, unit: Unit) -> str:
    """Width and height for people: ``3 1/2 × 5 in``."""
    return f"{decimal(text(width, unit))} × {with_unit(height, unit)}"


def told_size(width: int, height: int, unit: Unit) -> str:
    """Width and height as they are told to somebody who measures: ``178 × 193.7 mm``."""
    return size_text(nearest(width, FINEST[unit]), nearest(height, FINEST[unit]), unit)
