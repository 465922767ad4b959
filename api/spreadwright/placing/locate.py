"""The gluing order, and for each piece the fewest and easiest moves that locate it.

What is joined to a piece comes before that piece, lower layers come before upper ones. Among the pieces that may come
next the one that is located most easily does; then the one whose edges run on in most others, then the upper left one.
What the others will frame on all sides waits for them.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain, groupby

from spreadwright.geometry import Rect, Size
from spreadwright.model import Axis, Ruler
from spreadwright.placing.candidates import moves_along, moves_of_both
from spreadwright.placing.joining import bases
from spreadwright.placing.landing import landed
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.moves import NEAR, PAGE, End, Line, Move, MoveKind, cost_of, edge
from spreadwright.placing.table import MOST_NEIGHBOURS, Table

MOST_COMPARED, FEWER_COMPARED, MANY_PIECES = 40, 4, 200
"""Of more pieces that may come next only the upper left 40 are compared, of `MANY_PIECES` on one page only 4: comparing
all would take too long."""

Easiness = tuple[bool, tuple[int, int], int, tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Located:
    """One piece with its moves.

    Attributes:
        base: The piece that it is joined to; None when it goes onto the page.
        board: The page or the base as designed, ticks.
        lies: What lies on the board, and what the piece carries, from below upward.
        lands: Where it lies on its page in the end by the readings of the ruler, ticks.
    """

    placed: PlacedPiece
    base: PlacedPiece | None
    board: Rect
    lies: tuple[PlacedPiece, ...]
    moves: tuple[Move, ...]
    lands: Rect


def locate(placed: Sequence[PlacedPiece], page: Size, ruler: Ruler) -> tuple[Located, ...]:
    """The pieces of one page in gluing order."""
    maker = _Maker(placed, bases(placed, page), ruler)
    return tuple(maker.glued(None, Rect.at(0, 0, page)))


@dataclass(frozen=True, slots=True)
class _Maker:
    placed: Sequence[PlacedPiece]
    base_of: dict[str, str]
    ruler: Ruler

    def glued(self, base: PlacedPiece | None, board: Rect) -> Iterator[Located]:
        """What goes onto a page or base, each after what is joined to it."""
        name = base.piece.id if base else PAGE
        table = Table(name, board, self.ruler)
        own = [each for each in self.placed if self.base_of.get(each.piece.id, PAGE) == name]
        carried: list[PlacedPiece] = []
        compared = MOST_COMPARED if len(self.placed) <= MANY_PIECES else FEWER_COMPARED
        for each, moves in in_order(own, table, compared):
            joined = list(self.glued(each, each.rect))
            lands = landed(each.rect.size, moves, table.lands)
            yield from (_shifted(other, each.rect, lands) for other in joined)
            on_it = [other.placed for other in joined]
            lies = _upward([*table.down, *carried, *on_it])
            yield Located(each, base, board, lies, moves, lands)
            carried += on_it
            table.lay(each, lands)


def in_order(
    pieces: Sequence[PlacedPiece], table: Table, compared: int = MOST_COMPARED
) -> Iterator[tuple[PlacedPiece, tuple[Move, ...]]]:
    """The pieces that go onto one board; whoever asks for the next one has laid the last one down.

    Args:
        pieces: All of them.
        table: What lies there.
        compared: Of how many pieces that may come next the most easily located one is taken.
    """
    shared = _shared_edges(pieces)
    by_layer = sorted(pieces, key=lambda each: each.layer)
    for _, layer in groupby(by_layer, key=lambda each: each.layer):
        waiting = sorted(layer, key=_reading_order)
        framed = _framed_in_the_end(waiting, table)
        while waiting:
            found = [(each, easiest_moves(each, table)) for each in waiting[:compared]]
            easiest = (
                min(found, key=lambda one: _easiness(one[0], one[1], shared, framed)) if len(found) > 1 else found[0]
            )
            waiting.remove(easiest[0])
            yield easiest


def easiest_moves(piece: PlacedPiece, table: Table) -> tuple[Move, ...]:
    """The fewest moves that locate a piece, and of these the easiest; equal ones by the shorter and nearer."""
    choices = [(move,) for move in moves_of_both(piece, table)]
    across, down = (min(moves_along(axis, piece, table), key=lambda move: _ease(move, piece, table)) for axis in Axis)
    return min([*choices, (across, down)], key=cost_of)


def _ease(move: Move, piece: PlacedPiece, table: Table) -> tuple[int, ...]:
    """How easy one move along a direction is: of equally easy ones the board, and narrow gaps, go before pieces."""
    line = move.lines[0]
    kinds = list(MoveKind)
    is_narrow = move.kind is MoveKind.GAP and move.exact <= NEAR
    by_piece = line.piece != table.board and not is_narrow
    return (move.cost, by_piece, move.exact, _away(line, piece, table), move.end is End.END, kinds.index(move.kind))


def _away(line: Line, piece: PlacedPiece, table: Table) -> int:
    """How far the piece that is measured from lies from this one; the board is at hand."""
    other = table.lands[line.piece]
    if line.piece == table.board:
        return 0
    apart_x = max(other.left - piece.rect.right, piece.rect.left - other.right, 0)
    return apart_x + max(other.top - piece.rect.bottom, piece.rect.top - other.bottom, 0)


def _framed_in_the_end(layer: Sequence[PlacedPiece], table: Table) -> frozenset[str]:
    """The pieces that need one move only, once all others of their layer lie there: they wait for these."""
    if len(layer) == 1 or len(table.down) + len(layer) > MOST_NEIGHBOURS:
        return frozenset()
    full = table.copy()
    for each in layer:
        full.lay(each, each.rect)
    return frozenset(each.piece.id for each in layer if any(moves_of_both(each, full)))


def _easiness(piece: PlacedPiece, moves: Sequence[Move], shared: Mapping[str, int], framed: frozenset[str]) -> Easiness:
    waits = len(moves) > 1 and piece.piece.id in framed
    return waits, cost_of(moves), -shared[piece.piece.id], _reading_order(piece)


def _shared_edges(pieces: Sequence[PlacedPiece]) -> dict[str, int]:
    """For each piece, by its id, how many edges of others lie in line with the same edge of it."""
    edges = {
        each.piece.id: [(axis, end, edge(each.rect, axis, end)) for axis in Axis for end in End] for each in pieces
    }
    count = Counter(chain.from_iterable(edges.values()))
    return {name: sum(count[each] - 1 for each in own) for name, own in edges.items()}


def _reading_order(each: PlacedPiece) -> tuple[int, int]:
    return each.rect.top, each.rect.left


def _upward(pieces: Sequence[PlacedPiece]) -> tuple[PlacedPiece, ...]:
    return tuple(sorted(pieces, key=lambda each: each.layer))


def _shifted(located: Located, board: Rect, lands: Rect) -> Located:
    """What was joined to a base goes where that goes."""
    dx, dy = lands.left - board.left, lands.top - board.top
    return replace(located, lands=located.lands.moved(dx, dy))
