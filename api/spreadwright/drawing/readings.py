"""Lengths for a scale, short enough for a table."""

from spreadwright.lengths import Unit, nearest, with_unit
from spreadwright.words import gettext as _


def reading(length: int, step: int, unit: Unit) -> str:
    """The mark nearest to a length on a scale with a mark every `step` ticks, and the length where that differs.

    >>> reading(56896, 320, Unit.MILLIMETRE), reading(56896, 508, Unit.INCH)
    ('178 mm (for 177.8 mm)', '7 in')
    """
    mark = nearest(length, step)
    if mark == length:
        return with_unit(mark, unit)
    return _("{mark} (for {length})").format(mark=with_unit(mark, unit), length=with_unit(length, unit))
