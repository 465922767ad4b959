"""Which adhesive holds each piece, how much of it, and what a bench lacks.

Dry tape is laid where it fits with a margin, liquid glue where a piece is as narrow as the tape. A run goes along each
edge, set in by a margin, and rows between them wherever more than `WIDEST_FREE` would lie free; where two runs do not
fit beside each other, one goes along the middle.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from spreadwright.errors import Finding, warning
from spreadwright.geometry import Size
from spreadwright.lengths import FINEST, TICKS, Unit, told, told_down
from spreadwright.model import Adhesive, Bench, Recipe, Wetness
from spreadwright.placing.layers import PlacedPiece
from spreadwright.words import gettext as _
from spreadwright.words import ngettext

MARGIN = TICKS[Unit.INCH] // 8
"""From the edge of a piece to its adhesive: 1/8 in (3.2 mm), so that none is seen when it is laid a little off."""

SMALLEST_MARGIN = TICKS[Unit.INCH] // 16
"""What a narrow piece must leave on both sides of a tape or bead: 1/16 in (1.6 mm)."""

WIDEST_FREE = {Wetness.DRY: 3 * TICKS[Unit.INCH], Wetness.LIQUID: 2 * TICKS[Unit.INCH]}
"""No more than this lies free between two runs: 3 in of tape, 2 in of glue."""

WIDEST_USUAL = {Wetness.DRY: TICKS[Unit.INCH] // 2, Wetness.LIQUID: TICKS[Unit.INCH] // 8}
"""No wider one is advised, however large a piece is: 1/2 in (12.7 mm) of tape, a bead of 1/8 in (3.2 mm)."""

_PI = Fraction(355, 113)


@dataclass(frozen=True, slots=True)
class Stick:
    """Something to be glued on: a piece or a photograph, with its size as it lies, ticks."""

    id: str
    size: Size
    where: str = ""


@dataclass(frozen=True, slots=True)
class Sticking:
    """What holds one piece.

    Attributes:
        adhesive: None when every adhesive of the bench is too wide.
        runs: How many lines of it.
        length: Of all of them, ticks.
        volume: Of liquid glue, millionths of a litre, rounded up; 0 for tape.
    """

    stick: Stick
    adhesive: Adhesive | None
    runs: int = 0
    length: int = 0
    volume: int = 0


@dataclass(frozen=True, slots=True)
class Adhesives:
    """What a layout takes.

    Attributes:
        words: Sentences to be printed, in the language spoken when they were made.
    """

    pieces: tuple[Sticking, ...]
    photos: tuple[Sticking, ...]
    words: tuple[str, ...] = ()

    @property
    def tape(self) -> int:
        """Length of tape, ticks."""
        return sum(each.length for each in self.by(Wetness.DRY))

    @property
    def bead(self) -> int:
        """Length of the bead of liquid glue, ticks."""
        return sum(each.length for each in self.by(Wetness.LIQUID))

    @property
    def volume(self) -> int:
        """Liquid glue, millionths of a litre."""
        return sum(each.volume for each in self.by(Wetness.LIQUID))

    def of(self, wetness: Wetness) -> tuple[Sticking, ...]:
        """The pieces that are held by one kind."""
        return _held(self.pieces, wetness)

    def by(self, wetness: Wetness) -> tuple[Sticking, ...]:
        """The pieces and photographs that are held by one kind."""
        return _held((*self.pieces, *self.photos), wetness)


def _held(things: Sequence[Sticking], wetness: Wetness) -> tuple[Sticking, ...]:
    return tuple(each for each in things if each.adhesive and each.adhesive.wetness is wetness)


def glued(recipe: Recipe, placed: Sequence[PlacedPiece]) -> tuple[Stick, ...]:
    """The pieces that are glued onto something: all but a lowest one as large as its page, which is the page."""
    page = recipe.spread.size
    return tuple(
        Stick(each.piece.id, each.rect.size, each.where) for each in placed if each.layer > 1 or each.rect.size != page
    )


def adhesives(pieces: Sequence[Stick], photos: Sequence[Stick], bench: Bench) -> Adhesives:
    """What all pieces and photographs take; nothing is said yet."""
    return Adhesives(tuple(sticking(each, bench) for each in pieces), tuple(sticking(each, bench) for each in photos))


def sticking(stick: Stick, bench: Bench) -> Sticking:
    """What holds one piece: tape if any fits, else liquid glue; of several the widest that fits."""
    for wetness in Wetness:
        fitting = [each for each in bench.adhesives if each.wetness is wetness and fits(each, stick.size)]
        if fitting:
            chosen = max(fitting, key=lambda each: each.width)
            runs, length = runs_on(stick.size, chosen)
            volume = volume_of(length, chosen.width) if wetness is Wetness.LIQUID else 0
            return Sticking(stick, chosen, runs, length, volume)
    return Sticking(stick, None)


def fits(adhesive: Adhesive, size: Size) -> bool:
    """Whether it can be laid with the smallest margin on both sides."""
    return adhesive.width + 2 * SMALLEST_MARGIN <= min(size.width, size.height)


def runs_on(size: Size, adhesive: Adhesive) -> tuple[int, int]:
    """How many runs a piece takes, and how long they are together, ticks."""
    short, long = sorted((size.width, size.height))
    width = adhesive.width
    if short < 2 * width + 3 * MARGIN:
        return 1, max(long - 2 * MARGIN, width)
    inside = short - 2 * MARGIN - 2 * width
    rows = _rows(inside, width, WIDEST_FREE[adhesive.wetness])
    along, across = long - 2 * MARGIN, inside
    return 4 + rows, 2 * along + 2 * across + rows * (along - 2 * width)


def _rows(inside: int, width: int, widest: int) -> int:
    """The fewest rows that leave no more than `widest` free."""
    over = inside - widest
    return 0 if over <= 0 else -(-over // (widest + width))


def volume_of(length: int, width: int) -> int:
    """A bead is half round: millionths of a litre (cubic millimetres), rounded up."""
    exact = length * width * width * _PI / 8 / TICKS[Unit.MILLIMETRE] ** 3
    return -int(-exact // 1)


def adhesive_findings(pieces: Sequence[Stick], bench: Bench) -> Iterator[Finding]:
    """Pieces that nothing on the bench can hold, and adhesives wider than every piece."""
    if not pieces:
        return
    unheld = [each for each in pieces if not any(fits(adhesive, each.size) for adhesive in bench.adhesives)]
    if unheld:
        yield _unheld(min(unheld, key=_side), len(unheld) - 1, bench)
    widest = max(pieces, key=_side)
    for adhesive in bench.adhesives:
        if not unheld and not fits(adhesive, widest.size):
            yield _unused(adhesive, widest, bench)


def instead(size: Size, unit: Unit) -> str:
    """What holds a piece for which every adhesive of a bench is too wide, in words."""
    widest = _widest_on(size, Wetness.LIQUID)
    if widest < FINEST[unit]:
        return _("glue from a fine brush")
    return _("liquid glue with a bead of at most {width}").format(width=told_down(widest, unit))


def _widest_on(size: Size, wetness: Wetness) -> int:
    """How wide an adhesive may be for a piece, ticks: no wider than leaves a margin, nor than is usual."""
    return min(min(size.width, size.height) - 2 * SMALLEST_MARGIN, WIDEST_USUAL[wetness])


def _unheld(each: Stick, more: int, bench: Bench) -> Finding:
    """About the narrowest of them."""
    unit = bench.unit
    narrowest = min((adhesive.width for adhesive in bench.adhesives), default=0)
    message = _(
        "“{piece}” is only {width} wide; the narrowest adhesive of the bench, {adhesive}, does not fit with {margin} "
        "on both sides."
    ).format(
        piece=each.id,
        width=told(_side(each), unit),
        adhesive=told(narrowest, unit),
        margin=told(SMALLEST_MARGIN, unit),
    )
    if more:
        others = ngettext("Nor does it fit {count} more piece.", "Nor does it fit {count} more pieces.", more)
        message = f"{message} {others.format(count=more)}"
    remedy = _("Use {adhesive} for it, or cut the piece wider.").format(adhesive=instead(each.size, unit))
    return warning("adhesive-too-wide", each.where, message, remedy)


def _unused(adhesive: Adhesive, widest: Stick, bench: Bench) -> Finding:
    said = {
        Wetness.DRY: _("The tape of {adhesive} is too wide for every piece; the widest, “{piece}”, is {width} wide."),
        Wetness.LIQUID: _(
            "The bead of glue of {adhesive} is too wide for every piece; the widest, “{piece}”, is {width} wide."
        ),
    }
    message = said[adhesive.wetness].format(
        adhesive=told(adhesive.width, bench.unit), piece=widest.id, width=told(_side(widest), bench.unit)
    )
    room = _widest_on(widest.size, adhesive.wetness)
    remedy = _("Use one of at most {width}.").format(width=told_down(room, bench.unit))
    return warning("adhesive-too-wide", widest.where, message, remedy)


def _side(each: Stick) -> int:
    return min(each.size.width, each.size.height)
