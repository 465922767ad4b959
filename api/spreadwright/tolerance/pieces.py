"""What to expect of each piece, in numbers and in words."""

from collections.abc import Iterable
from dataclasses import dataclass

from spreadwright.lengths import FINEST, TICKS, Unit, with_unit
from spreadwright.model import Bench, Piece
from spreadwright.tolerance.deviation import Deviation
from spreadwright.tolerance.trace import Side, Sides, Traced
from spreadwright.words import gettext as _
from spreadwright.words import listed


@dataclass(frozen=True, slots=True)
class Expected:
    """One direction of a piece.

    Attributes:
        length: What the recipe says, ticks.
        side: What it depends on.
        why: That in words.
    """

    length: int
    side: Side
    why: str

    @property
    def worst(self) -> int:
        """The furthest that it can be off, to either side, ticks."""
        return self.side.deviation.worst

    @property
    def typical(self) -> int:
        """Within which about nine makers in ten stay, to either side, ticks."""
        return self.side.deviation.typical


@dataclass(frozen=True, slots=True)
class PieceTolerance:
    """What to expect of one piece.

    Attributes:
        width: As cut, before any turn.
        height: Likewise.
        sentence: Both in one sentence; empty when nothing can go wrong.
    """

    piece: Piece
    width: Expected
    height: Expected
    sentence: str


def piece_tolerances(pieces: Iterable[Piece], found: Traced, bench: Bench) -> tuple[PieceTolerance, ...]:
    """What to expect of every piece whose size is known, in the order of the pieces."""
    return tuple(_tolerance(piece, found[piece.id], bench) for piece in pieces if piece.size)


def _tolerance(piece: Piece, sides: Sides, bench: Bench) -> PieceTolerance:
    width = Expected(piece.width or 0, sides.width, why(sides.width.deviation, bench.unit))
    height = Expected(piece.height or 0, sides.height, why(sides.height.deviation, bench.unit))
    return PieceTolerance(piece, width, height, _sentence(width, height, bench.unit))


def _sentence(width: Expected, height: Expected, unit: Unit) -> str:
    told = {"width": amount(width.worst, unit), "height": amount(height.worst, unit)}
    if width.worst and height.worst:
        return _("Its width may come out up to {width} off, its height up to {height}.").format(**told)
    if width.worst:
        return _("Its width may come out up to {width} off.").format(**told)
    return _("Its height may come out up to {height} off.").format(**told) if height.worst else ""


def why(deviation: Deviation, unit: Unit) -> str:
    """Where the error of a side comes from, in sentences."""
    shifted = _shifted(int(deviation.shift), unit)
    return f"{_cause(deviation)} {shifted}" if shifted else _cause(deviation)


def _cause(deviation: Deviation) -> str:
    cuts = listed([str(source.number) for source, _times in deviation.terms])
    if not deviation.terms:
        return _("Both edges came with the sheet.")
    if deviation.terms[1:]:
        return _("It is what cuts {cuts} left, and takes up their errors.").format(cuts=cuts)
    if deviation.terms[0][1] > 0:
        return _("Cut {cut} measured it.").format(cut=cuts)
    return _("It is what cut {cut} left, and takes up its error.").format(cut=cuts)


def _shifted(shift: int, unit: Unit) -> str:
    if not shift:
        return ""
    told = (
        _("The marks of the scale make it {shift} longer.")
        if shift > 0
        else _("The marks of the scale make it {shift} shorter.")
    )
    return told.format(shift=amount(abs(shift), unit))


def amount(error: int, unit: Unit) -> str:
    """An error for people, rounded up: a fraction of an inch if a ruler shows it, else thousandths; tenths of a mm.

    >>> amount(254, Unit.INCH), amount(180, Unit.INCH), amount(161, Unit.MILLIMETRE)
    ('1/32 in', '0.023 in', '0.6 mm')
    """
    if error % FINEST[unit] == 0:
        return with_unit(error, unit)
    if unit is not Unit.INCH:
        return with_unit(-(-error // FINEST[unit]) * FINEST[unit], unit)
    thousandths = -(-error * 1000 // TICKS[unit])
    return with_unit(thousandths * TICKS[unit] // 1000, unit)
