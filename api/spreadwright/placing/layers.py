"""Where each piece lies on its page, and on which layer."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from spreadwright.geometry import Rect, Size
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
    page = recipe.spread.size
    if page is None or piece.size is None or placement.page not in recipe.spread.pages:
        return None
    size: Size = piece.size.turned() if placement.is_turned else piece.size
    left = _start(placement.across, page.width, size.width)
    top = _start(placement.down, page.height, size.height)
    return None if left is None or top is None else Rect.at(left, top, size)


def _start(offset: Offset, page: int, side: int) -> int | None:
    """The distance of the piece's left or top edge from the page's, ticks."""
    if offset.distance is None:
        return None
    if offset.edge in (Edge.LEFT, Edge.TOP):
        return offset.distance
    if offset.edge in (Edge.RIGHT, Edge.BOTTOM):
        return page - offset.distance - side
    free = page - side
    return None if free % 2 else free // 2 + offset.distance


def _layer(page: str, rect: Rect, below: list[PlacedPiece]) -> int:
    return 1 + max((p.layer for p in below if p.page == page and p.rect.overlaps(rect)), default=0)
