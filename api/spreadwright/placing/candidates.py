"""Every move that would locate a piece among what lies on the table."""

from collections.abc import Iterator

from spreadwright.geometry import Rect
from spreadwright.lengths import TICKS, Unit, nearest
from spreadwright.model import Axis, Zero
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.moves import End, Line, Move, MoveKind, edge
from spreadwright.placing.table import MOST_NEIGHBOURS, Table

WIDEST_BORDER = TICKS[Unit.INCH] // 2
"""The eye compares borders of up to 1/2 in (12.7 mm) well enough."""


def moves_along(axis: Axis, piece: PlacedPiece, table: Table) -> Iterator[Move]:
    """Every move that settles one direction."""
    for end in End:
        yield from _by_board(axis, end, piece.rect, table)
        if len(table.down) <= MOST_NEIGHBOURS:
            yield from _level(axis, end, piece.rect, table)
            yield from _by_neighbours(axis, end, piece.rect, table)
    yield from _centred(axis, piece.rect, table)


def moves_of_both(piece: PlacedPiece, table: Table) -> Iterator[Move]:
    """Every move that settles both directions at once."""
    if piece.rect == table.rect:
        yield Move(MoveKind.COVER, None, None, (Line(Axis.COLUMNS, End.START, table.board),))
        return
    if len(table.down) > MOST_NEIGHBOURS:
        return
    ends = [(axis, end) for end in End for axis in Axis]
    lines = [_framing(axis, end, piece.rect, table) for axis, end in ends]
    if any(line is None for line in lines):
        return
    framed = tuple(line for line in lines if line is not None)
    places = {table.board: table.rect, **{each.piece.id: each.rect for each in table.down}}
    borders = {
        (edge(piece.rect, axis, end) - line.at(places)) * end.inward
        for (axis, end), line in zip(ends, framed, strict=True)
    }
    if len(borders) == 1 and 0 <= (border := borders.pop()) <= WIDEST_BORDER:
        yield Move(MoveKind.FRAME, None, None, framed, border, border)


def _by_board(axis: Axis, end: End, rect: Rect, table: Table) -> Iterator[Move]:
    line = Line(axis, end, table.board)
    distance = (edge(rect, axis, end) - edge(table.rect, axis, end)) * end.inward
    if distance == 0:
        yield Move(MoveKind.FLUSH, axis, end, (line,))
    elif distance > 0:
        if distance == table.ruler.width:
            yield Move(MoveKind.SPACER, axis, end, (line,), distance, distance)
        yield Move(MoveKind.OFFSET, axis, end, (line,), nearest(distance, table.ruler.graduation), distance)


def _level(axis: Axis, end: End, rect: Rect, table: Table) -> Iterator[Move]:
    own = edge(rect, axis, end)
    for other in table.down:
        line = Line(axis, end, other.piece.id)
        if edge(other.rect, axis, end) == own and line in table.seen:
            yield Move(MoveKind.LEVEL, axis, end, (line,))


def _by_neighbours(axis: Axis, end: End, rect: Rect, table: Table) -> Iterator[Move]:
    """By the pieces that face this edge: against any of them, else by the gap to the nearest."""
    gaps = [(gap, other) for gap, other in _facing(axis, end, rect, table) if gap >= 0]
    for gap, other in gaps:
        if gap == 0:
            yield Move(MoveKind.AGAINST, axis, end, (Line(axis, end.other, other.piece.id),))
    apart = [(gap, other) for gap, other in gaps if gap > 0]
    if not apart:
        return
    gap, other = min(apart, key=lambda found: found[0])
    line = Line(axis, end.other, other.piece.id)
    if gap == table.ruler.width:
        yield Move(MoveKind.SPACER, axis, end, (line,), gap, gap)
    yield from _equal(axis, end, rect, table, other, gap)
    reading = nearest((edge(rect, axis, end) - line.at(table.lands)) * end.inward, table.ruler.graduation)
    if reading > 0:
        yield Move(MoveKind.GAP, axis, end, (line,), reading, gap)


def _equal(axis: Axis, end: End, rect: Rect, table: Table, other: PlacedPiece, gap: int) -> Iterator[Move]:
    """The gap beyond the nearest piece, repeated: only where the ruler's roundings do not add up."""
    for before, third in _facing(axis, end, other.rect, table):
        if before != gap or third is other:
            continue
        near, far = Line(axis, end.other, other.piece.id), Line(axis, end, other.piece.id)
        beyond = Line(axis, end.other, third.piece.id)
        if {far, beyond} - table.seen:
            continue
        off = (far.at(table.lands) - beyond.at(table.lands)) + near.at(table.lands) - edge(rect, axis, end)
        if abs(off) * 2 <= table.ruler.graduation:
            yield Move(MoveKind.EQUAL_GAP, axis, end, (near, far, beyond), gap, gap)


def _facing(axis: Axis, end: End, rect: Rect, table: Table) -> Iterator[tuple[int, PlacedPiece]]:
    """The pieces beside an edge whose own edge towards it is seen, with the gap; below 0 where they overlap."""
    own, opposite = edge(rect, axis, end), end.other
    low, high = edge(rect, axis.other, End.START), edge(rect, axis.other, End.END)
    for other in table.down:
        gap = (own - edge(other.rect, axis, opposite)) * end.inward
        if gap < 0 or edge(other.rect, axis.other, End.START) >= high or edge(other.rect, axis.other, End.END) <= low:
            continue
        if Line(axis, opposite, other.piece.id) in table.seen:
            yield gap, other


def _centred(axis: Axis, rect: Rect, table: Table) -> Iterator[Move]:
    before = edge(rect, axis, End.START) - edge(table.rect, axis, End.START)
    after = edge(table.rect, axis, End.END) - edge(rect, axis, End.END)
    if before == after > 0 and Zero.MIDDLE in table.ruler.zeros:
        lines = (Line(axis, End.START, table.board), Line(axis, End.END, table.board))
        yield Move(MoveKind.CENTRE, axis, None, lines)


def _framing(axis: Axis, end: End, rect: Rect, table: Table) -> Line | None:
    """The nearest edge that runs along the whole of a side: of a piece, or of the board; None where others stand in."""
    facing = sorted(_facing(axis, end, rect, table), key=lambda found: found[0])
    if not facing:
        return Line(axis, end, table.board)
    _, other = facing[0]
    across = axis.other
    starts = edge(other.rect, across, End.START) <= edge(rect, across, End.START)
    is_along = starts and edge(rect, across, End.END) <= edge(other.rect, across, End.END)
    return Line(axis, end.other, other.piece.id) if is_along else None
