"""What lies on the table while pieces are glued down: where it should lie, where it lies, and which edges are seen."""

from dataclasses import dataclass, field

from spreadwright.geometry import Rect, area, uncovered
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Axis, Ruler
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.moves import End, Line, edge

_SEEN = TICKS[Unit.INCH] // 2
"""So much of an edge must be seen for a ruler to be laid along it, or half of a shorter one."""

MOST_NEIGHBOURS = 60
"""Where more pieces than this lie on one board, further ones are measured from its edges: nobody looks for more."""


@dataclass(slots=True)
class Table:
    """One page, or one base with what is joined to it.

    Attributes:
        board: The id of the base; that of the page is empty.
        rect: The page or base, ticks.
        down: What lies on it, in the order in which it was laid.
        lands: Where that came to lie by the readings of the ruler, the board included.
        seen: The edges by which something can be laid.
    """

    board: str
    rect: Rect
    ruler: Ruler
    down: list[PlacedPiece] = field(default_factory=list)
    lands: dict[str, Rect] = field(default_factory=dict)
    seen: set[Line] = field(default_factory=set)

    def __post_init__(self) -> None:
        """The board lies there."""
        self.lands[self.board] = self.rect

    def copy(self) -> "Table":
        """Another table on which the same lies."""
        return Table(self.board, self.rect, self.ruler, [*self.down], dict(self.lands), set(self.seen))

    def lay(self, each: PlacedPiece, rect: Rect) -> None:
        """Lay a piece down where it came to lie; it may hide edges of those beneath."""
        is_looked_at = len(self.down) <= MOST_NEIGHBOURS
        for other in self.down if is_looked_at else ():
            if other.rect.overlaps(each.rect):
                self._look([*self.down, each], other)
        self.down.append(each)
        self.lands[each.piece.id] = rect
        if is_looked_at:
            self._look(self.down, each)

    def _look(self, down: list[PlacedPiece], each: PlacedPiece) -> None:
        covers = [other.rect for other in down if other.layer > each.layer and other.rect.overlaps(each.rect)]
        for axis in Axis:
            for end in End:
                line = Line(axis, end, each.piece.id)
                if _is_seen(each.rect, axis, end, covers):
                    self.seen.add(line)
                else:
                    self.seen.discard(line)


def _is_seen(rect: Rect, axis: Axis, end: End, covers: list[Rect]) -> bool:
    """Whether enough of an edge is seen: looked at as a sliver of one tick."""
    start = edge(rect, axis, end) - (end is End.END)
    upright, level = Rect(start, rect.top, 1, rect.height), Rect(rect.left, start, rect.width, 1)
    sliver = upright if axis is Axis.COLUMNS else level
    hiding = [cover for cover in covers if cover.overlaps(sliver)]
    return not hiding or area(uncovered(sliver, hiding)) >= min(sliver.area // 2, _SEEN)
