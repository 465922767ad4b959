"""The moves by which a piece is located with a ruler, as data, and what each costs.

A move knows edges by name and distances read on a ruler, never a coordinate: whoever replays it needs only what lies
on the table already.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from spreadwright.geometry import Rect
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Axis

PAGE = ""
"""Stands for the page where a line names a piece."""


class End(StrEnum):
    """One of the two ends in one direction: left or top is the start, right or bottom the end."""

    START = "start"
    END = "end"

    @property
    def other(self) -> "End":
        """The opposite one."""
        return End.END if self is End.START else End.START

    @property
    def inward(self) -> int:
        """The sign of the way from here into the piece."""
        return 1 if self is End.START else -1


@dataclass(frozen=True, slots=True, order=True)
class Line:
    """An edge that is there already: of the page, or of a piece."""

    axis: Axis
    end: End
    piece: str = PAGE

    def at(self, known: Mapping[str, Rect]) -> int:
        """Where it lies, ticks, among the places that are known."""
        return edge(known[self.piece], self.axis, self.end)


def edge(rect: Rect, axis: Axis, end: End) -> int:
    """The left or right (`columns`), top or bottom (`rows`) edge, ticks."""
    if axis is Axis.COLUMNS:
        return rect.left if end is End.START else rect.right
    return rect.top if end is End.START else rect.bottom


class MoveKind(StrEnum):
    """What is done.

    Members:
        COVER: Lay it over all of what lies beneath: page or base.
        FRAME: By eye, with the same border to what frames it on all four sides.
        FLUSH: Its edge on the same edge of the page or base.
        AGAINST: Its edge on the opposite edge of a piece that lies there.
        LEVEL: Its edge in one line with the same edge of a piece that lies there.
        SPACER: Against the ruler, laid along an edge; the ruler is as wide as the distance.
        EQUAL_GAP: As far from a piece as that lies from the one before it.
        CENTRE: In the middle of page or base, by a ruler with a zero in the middle.
        OFFSET: So far from an edge of the page or base.
        GAP: So far from a piece that lies there.
    """

    COVER = "cover"
    FRAME = "frame"
    FLUSH = "flush"
    AGAINST = "against"
    LEVEL = "level"
    SPACER = "spacer"
    EQUAL_GAP = "equal-gap"
    CENTRE = "centre"
    OFFSET = "offset"
    GAP = "gap"


COSTS = {
    MoveKind.COVER: 1,
    MoveKind.FRAME: 2,
    MoveKind.FLUSH: 1,
    MoveKind.AGAINST: 1,
    MoveKind.LEVEL: 2,
    MoveKind.SPACER: 2,
    MoveKind.EQUAL_GAP: 3,
    MoveKind.CENTRE: 3,
    MoveKind.OFFSET: 4,
    MoveKind.GAP: 4,
}
"""How hard each kind is: nothing to read, something to line up, something to read."""

BETWEEN_MARKS = 1
"""What a move costs more when the ruler shows its distance only nearly."""

FAR, FAR_COSTS = 6 * TICKS[Unit.INCH], 2
"""What it costs more to read a distance of more than 6 in (152.4 mm)."""

NEAR, BY_PIECE_COSTS = TICKS[Unit.INCH] // 2, 2
"""What it costs more to measure over 1/2 in (12.7 mm) from a piece: that piece's own error is carried on. A narrower
gap is seen as a gap, so it had better be measured."""

_READ = frozenset({MoveKind.OFFSET, MoveKind.GAP})
_MEASURED = frozenset({MoveKind.SPACER, MoveKind.EQUAL_GAP, MoveKind.GAP})


@dataclass(frozen=True, slots=True)
class Move:
    """One move of the ruler, or of hand and eye.

    Attributes:
        axis: Across the page (`columns`) or down it (`rows`); None for a move that settles both.
        end: Which edge of the piece is laid; None where both are settled at once.
        lines: What it is laid by. For an equal gap first the edge that it is measured from, then the two edges of the
            gap that is repeated; for a frame the left, top, right and bottom one; in the middle the start and end one.
        reading: The distance that the ruler shows, ticks; nothing is read where it is 0.
        exact: The distance that the design asks for, ticks.
    """

    kind: MoveKind
    axis: Axis | None
    end: End | None
    lines: tuple[Line, ...]
    reading: int = 0
    exact: int = 0

    @property
    def cost(self) -> int:
        """How hard it is."""
        is_far = self.kind in _READ and self.exact > FAR
        is_by_piece = self.kind in _MEASURED and self.exact > NEAR and any(line.piece != PAGE for line in self.lines)
        is_nearly = self.reading != self.exact
        return COSTS[self.kind] + BETWEEN_MARKS * is_nearly + FAR_COSTS * is_far + BY_PIECE_COSTS * is_by_piece


def cost_of(moves: Iterable[Move]) -> tuple[int, int]:
    """The number of moves and what they cost together: fewer first, then easier."""
    counted = list(moves)
    return len(counted), sum(move.cost for move in counted)
