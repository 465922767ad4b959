"""Where the edges of the pieces come to lie: how far off, as each is laid by the moves of hand and ruler.

What lies by an edge, flush, against or level, is laid by eye and touch, and so is a spacer: exact beside that edge. A
distance that is read, a middle and a gap that is repeated are off by up to half a mark of the ruler besides. Whatever a
move goes by may itself be off; so errors run on from piece to piece.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.model import Axis, Bench
from spreadwright.placing import PAGE, End, Line, Move, MoveKind, PlacedPiece, PlaceStep
from spreadwright.tolerance.deviation import EXACT, Deviation, Source
from spreadwright.tolerance.trace import Traced

RULER = "ruler"
"""The kind of source that reading a ruler is."""

_IS_READ = frozenset({MoveKind.OFFSET, MoveKind.GAP, MoveKind.EQUAL_GAP, MoveKind.CENTRE, MoveKind.FRAME})
_IN_THE_MIDDLE = frozenset({MoveKind.CENTRE, MoveKind.FRAME})


@dataclass(frozen=True, slots=True)
class Laid:
    """One piece on its page.

    Attributes:
        moves: Those that put it there.
        number: Its turn.
    """

    placed: PlacedPiece
    moves: tuple[Move, ...] = ()
    number: int = 0

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
        return axis.along(self.placed.rect)

    def side(self, axis: Axis, found: Traced) -> Deviation:
        """How far its length may be off in that direction of the page, however it is turned."""
        return found[self.id].along(axis.other if self.placed.is_turned else axis).deviation

    def move(self, axis: Axis) -> Move | None:
        """The move that settles a direction; None for what is laid down as the whole page."""
        return next((move for move in self.moves if move.axis in (axis, None)), None)


class Layout:
    """All pieces of a layout, as they are laid on one bench.

    Attributes:
        pieces: From the page upward, by id.
        is_laid: Whether the moves are known.
        reading: How far one reading of the ruler may be off, ticks.
    """

    def __init__(self, placed: Sequence[PlacedPiece], places: Sequence[PlaceStep], bench: Bench) -> None:
        """From the page upward, with the steps with the ruler, or without where these are not known."""
        steps = {step.placed.piece.id: step for step in places}
        self.is_laid = bool(steps)
        self.pieces = {
            each.piece.id: Laid(each, step.located.moves, step.number) if step else Laid(each)
            for each, step in ((each, steps.get(each.piece.id)) for each in placed)
        }
        self.reading = (bench.ruler.graduation + 1) // 2
        self._found: Traced | None = None
        self._starts: dict[tuple[str, Axis], Deviation] = {}

    def edge(self, piece_id: str, axis: Axis, end: End, found: Traced) -> Deviation:
        """How far an edge of a piece, or of the page, may be off its place; to the right and down counts above 0."""
        if piece_id == PAGE:
            return EXACT
        if found is not self._found:  # the starts are kept as long as the same cuts are asked about
            self._found, self._starts = found, {}
        key = (piece_id, axis)
        if key not in self._starts:
            self._starts[key] = self._start(self.pieces[piece_id], axis, found)
        start = self._starts[key]
        return start if end is End.START else start + self.pieces[piece_id].side(axis, found)

    def _start(self, each: Laid, axis: Axis, found: Traced) -> Deviation:
        move = each.move(axis)
        if move is None:
            return EXACT
        if move.kind is MoveKind.COVER:
            return self.edge(move.lines[0].piece, axis, End.START, found)
        side = each.side(axis, found)
        if move.kind in _IN_THE_MIDDLE:
            first, last = (self._at(line, found) for line in move.lines if line.axis is axis)
            return (first + last - side).halved + self._read(each, axis)
        laid = self._at(move.lines[0], found) + self._distance(move, each, axis, found)
        return laid - side if move.end is End.END else laid

    def _distance(self, move: Move, each: Laid, axis: Axis, found: Traced) -> Deviation:
        """How far the distance from the line that a move goes by may be off, with the sign of the axis."""
        read = self._read(each, axis) if move.kind in _IS_READ else EXACT
        if move.kind is MoveKind.EQUAL_GAP:
            return read + self._at(move.lines[1], found) - self._at(move.lines[2], found)
        inward = move.end.inward if move.end else 1
        return read + Deviation((move.reading - move.exact) * inward)

    def _read(self, each: Laid, axis: Axis) -> Deviation:
        return Deviation.of(Source(RULER, 2 * each.number + list(Axis).index(axis), self.reading))

    def _at(self, line: Line, found: Traced) -> Deviation:
        return self.edge(line.piece, line.axis, line.end, found)
