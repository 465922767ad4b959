"""A piece on its page, with how far its edges may be off."""

from collections.abc import Iterable
from dataclasses import dataclass

from spreadwright.model import Axis, Bench, Edge, Offset
from spreadwright.placing import PlacedPiece
from spreadwright.tolerance.deviation import EXACT, Deviation, Source
from spreadwright.tolerance.partings import along
from spreadwright.tolerance.trace import Traced

RULER = "ruler"
"""The kind of source that reading a ruler is."""


@dataclass(frozen=True, slots=True)
class Laid:
    """One piece on its page.

    Attributes:
        across: How far it may be off its place across the page.
        down: Likewise down the page.
    """

    placed: PlacedPiece
    across: Deviation
    down: Deviation

    @property
    def id(self) -> str:
        """Of the piece."""
        return self.placed.piece.id

    @property
    def name(self) -> str:
        """Of the piece, without its number."""
        return self.placed.piece.name

    def near(self, axis: Axis) -> int:
        """Where it begins across (`columns`) or down (`rows`) its page, ticks."""
        return self.placed.rect.left if axis is Axis.COLUMNS else self.placed.rect.top

    def far(self, axis: Axis) -> int:
        """Where it ends, ticks."""
        return self.near(axis) + self.length(axis)

    def length(self, axis: Axis) -> int:
        """How long it is in that direction, ticks."""
        return along(self.placed.rect, axis)

    def offset(self, axis: Axis) -> Offset:
        """From what it is measured."""
        return self.placed.across if axis is Axis.COLUMNS else self.placed.down

    def side(self, axis: Axis, found: Traced) -> Deviation:
        """How far its length may be off in that direction of the page, however it is turned."""
        return found[self.id].along(axis.other if self.placed.is_turned else axis).deviation

    def twice_near(self, axis: Axis, found: Traced) -> Deviation:
        """Twice how far its first edge may be off: doubled, since centring halves the error of the piece."""
        ruler, length = (self.across if axis is Axis.COLUMNS else self.down), self.side(axis, found)
        edge = self.offset(axis).edge
        if edge in (Edge.LEFT, Edge.TOP):
            return ruler + ruler
        if edge in (Edge.RIGHT, Edge.BOTTOM):
            return ruler + ruler - length - length
        return ruler + ruler - length

    def twice_far(self, axis: Axis, found: Traced) -> Deviation:
        """Twice how far its last edge may be off."""
        length = self.side(axis, found)
        return self.twice_near(axis, found) + length + length


def laid(placed: Iterable[PlacedPiece], bench: Bench) -> tuple[Laid, ...]:
    """Pieces laid by a ruler: half a mark where it is read, nothing where an edge is laid on that of the page."""
    bound = (bench.ruler.graduation + 1) // 2

    def read(offset: Offset, number: int) -> Deviation:
        is_read = bool(offset.distance) or offset.edge in (Edge.CENTRE, Edge.MIDDLE)
        return Deviation.of(Source(RULER, number, bound)) if is_read else EXACT

    return tuple(
        Laid(each, read(each.across, 2 * index), read(each.down, 2 * index + 1)) for index, each in enumerate(placed)
    )
