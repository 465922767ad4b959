"""Where a piece comes to lie when its moves are done as the ruler shows them."""

from collections.abc import Mapping, Sequence

from spreadwright.geometry import Rect, Size
from spreadwright.model import Axis
from spreadwright.placing.moves import End, Move, MoveKind


def landed(size: Size, moves: Sequence[Move], known: Mapping[str, Rect]) -> Rect:
    """The place that the moves give a piece, ticks; no other place than those that are known is used."""
    starts: dict[Axis, int] = {}
    for move in moves:
        if move.axis is not None:
            starts[move.axis] = _start(move, move.axis.along(size), known)
            continue
        for axis in Axis:
            starts[axis] = _start_of_both(move, axis, axis.along(size), known)
    return Rect.at(starts[Axis.COLUMNS], starts[Axis.ROWS], size)


def _start(move: Move, side: int, known: Mapping[str, Rect]) -> int:
    if move.end is None:
        return _between(move.lines[0].at(known), move.lines[1].at(known), side)
    laid = move.lines[0].at(known) + _distance(move, known) * move.end.inward
    return laid if move.end is End.START else laid - side


def _distance(move: Move, known: Mapping[str, Rect]) -> int:
    if move.kind is MoveKind.EQUAL_GAP:
        return abs(move.lines[1].at(known) - move.lines[2].at(known))
    return move.reading


def _start_of_both(move: Move, axis: Axis, side: int, known: Mapping[str, Rect]) -> int:
    if move.kind is MoveKind.COVER:
        place = known[move.lines[0].piece]
        return place.left if axis is Axis.COLUMNS else place.top
    first, last = (line.at(known) for line in move.lines if line.axis is axis)
    return _between(first, last, side)


def _between(first: int, last: int, side: int) -> int:
    return (first + last - side) // 2
