"""What a picture shows of the moves: distances between edges, and edges that lie in line."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from spreadwright.geometry import Rect
from spreadwright.model import Axis, Bench
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.locate import Located
from spreadwright.placing.moves import End, Move, MoveKind, edge
from spreadwright.placing.words import distance

EQUAL = "="
"""The figure of two distances that are equal without being read."""


@dataclass(frozen=True, slots=True)
class Measure:
    """One distance, ticks on the page; across it (`columns`) or down it (`rows`).

    Attributes:
        figure: What the ruler shows, with its unit; the sign of equality where nothing is read.
        beside: The stretch in the other direction where both edges stand opposite each other, ticks.
        is_repeated: Whether it is a gap that lies there already and is repeated by the piece.
    """

    axis: Axis
    start: int
    end: int
    figure: str
    beside: tuple[int, int]
    is_repeated: bool = False


def measures(located: Located, bench: Bench, pieces: Mapping[str, PlacedPiece]) -> Iterator[Measure]:
    """The distances that the moves of a piece name; of equal gaps both."""
    for move in located.moves:
        if move.kind is MoveKind.CENTRE and move.axis is not None:
            yield from _both_sides(move.axis, located, EQUAL)
        elif move.kind is MoveKind.FRAME and move.exact:
            for axis in Axis:
                start = edge(located.placed.rect, axis, End.START)
                figure = distance(move, bench)
                yield Measure(axis, start - move.exact, start, figure, _beside(axis, located.placed.rect))
        elif move.axis is not None and move.end is not None and move.exact:
            own = edge(located.placed.rect, move.axis, move.end)
            start, end = sorted((own, own - move.exact * move.end.inward))
            other = pieces.get(move.lines[0].piece)
            beside = _beside(move.axis, located.placed.rect, other.rect if other else None)
            is_equal = move.kind is MoveKind.EQUAL_GAP
            yield Measure(move.axis, start, end, EQUAL if is_equal else distance(move, bench), beside)
            if is_equal:
                yield _repeated(move, pieces)


def _repeated(move: Move, pieces: Mapping[str, PlacedPiece]) -> Measure:
    """The gap between two pieces that lie there, which is as wide."""
    near, far = move.lines[1:]
    places = {name: each.rect for name, each in pieces.items()}
    start, end = sorted((near.at(places), far.at(places)))
    beside = _beside(near.axis, places[near.piece], places[far.piece])
    return Measure(near.axis, start, end, EQUAL, beside, is_repeated=True)


def _both_sides(axis: Axis, located: Located, figure: str) -> Iterator[Measure]:
    for end in (End.START, End.END):
        start, stop = sorted((edge(located.board, axis, end), edge(located.placed.rect, axis, end)))
        yield Measure(axis, start, stop, figure, _beside(axis, located.placed.rect))


def _beside(axis: Axis, rect: Rect, other: Rect | None = None) -> tuple[int, int]:
    """The stretch of a piece, as far as the other one stands opposite it."""
    across = axis.other
    start, end = edge(rect, across, End.START), edge(rect, across, End.END)
    if other is None:
        return start, end
    return max(start, edge(other, across, End.START)), min(end, edge(other, across, End.END))


def touches(located: Located) -> Iterator[Rect]:
    """The edges of the piece that are laid on or in line with an edge that is there, as lines without width."""
    for move in located.moves:
        if move.axis is not None and move.end is not None and not move.exact:
            yield _as_line(located.placed.rect, move.axis, move.end)
        elif move.kind is MoveKind.FRAME and not move.exact:
            yield from (_as_line(located.placed.rect, axis, end) for axis in Axis for end in End)


def _as_line(rect: Rect, axis: Axis, end: End) -> Rect:
    at = edge(rect, axis, end)
    if axis is Axis.COLUMNS:
        return Rect.between(at, rect.top, at, rect.bottom)
    return Rect.between(rect.left, at, rect.right, at)
