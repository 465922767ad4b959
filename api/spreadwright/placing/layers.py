"""Where each piece lies on its page, and on which layer."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from spreadwright.geometry import Rect
from spreadwright.model import Edge, Offset, Piece, Placement, Recipe, Side


@dataclass(frozen=True, slots=True)
class PlacedPiece:
    """One piece on its page.

    Attributes:
        rect: Ticks from the page's top left corner.
        layer: 1 on the page itself, else one more than the highest layer that it touches from above.
        is_turned: Turned a quarter to the right from how it was cut, so that the sheet's top edge lies right.
    """

    piece: Piece
    page: str
    rect: Rect
    layer: int
    is_turned: bool
    side: Side
    across: Offset
    down: Offset
    where: str = field(default="", compare=False)


def placed_pieces(recipe: Recipe, pieces: Iterable[Piece]) -> tuple[PlacedPiece, ...]:
    """Every placement that can be worked out, from the page upward.

    A placement of an unknown piece, on an unknown page, or with a length that could not be read is left out.
    """
    by_id = {piece.id: piece for piece in pieces}
    done: list[PlacedPiece] = []
    for placement in recipe.placements:
        piece = by_id.get(placement.piece)
        rect = placed_rect(recipe, placement, piece) if piece else None
        if piece is None or rect is None:
            continue
        done.append(
            PlacedPiece(
                piece,
                placement.page,
                rect,
                _layer(placement.page, rect, done),
                placement.is_turned,
                placement.side,
                placement.across,
                placement.down,
                placement.where,
            )
        )
    return tuple(done)


def placed_rect(recipe: Recipe, placement: Placement, piece: Piece) -> Rect | None:
    """The place of a piece on its page, ticks; None when it cannot be known."""
    across, down = placed_spans(recipe, placement, piece)
    if across is None or down is None:
        return None
    return Rect.between(across[0], down[0], across[1], down[1])


Ends = tuple[int, int]


def placed_spans(recipe: Recipe, placement: Placement, piece: Piece) -> tuple[Ends | None, Ends | None]:
    """Where a piece starts and ends across and down its page, ticks; None for what cannot be known."""
    page = recipe.spread.size
    if page is None or placement.page not in recipe.spread.pages:
        return None, None
    sides = (piece.height, piece.width) if placement.is_turned else (piece.width, piece.height)
    return _ends(placement.across, page.width, sides[0]), _ends(placement.down, page.height, sides[1])


def _ends(offset: Offset, page: int, side: int | None) -> Ends | None:
    """The distances of the piece's left and right, or top and bottom, edges from the page's first one, ticks."""
    if offset.distance is None or side is None:
        return None
    if offset.edge in (Edge.LEFT, Edge.TOP):
        start = offset.distance
    elif offset.edge in (Edge.RIGHT, Edge.BOTTOM):
        start = page - offset.distance - side
    elif (page - side) % 2:
        return None
    else:
        start = (page - side) // 2 + offset.distance
    return start, start + side


def _layer(page: str, rect: Rect, below: list[PlacedPiece]) -> int:
    return 1 + max((p.layer for p in below if p.page == page and p.rect.overlaps(rect)), default=0)
