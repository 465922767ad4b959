"""Pieces on a page by their places alone."""

from collections.abc import Sequence

from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Edge, Offset, Piece, Placement, Recipe, Spread
from spreadwright.placing import PlacedPiece, placed_pieces

INCH = TICKS[Unit.INCH]
PAGE = Size(12 * INCH, 12 * INCH)


def layout(rects: Sequence[Rect], page: Size = PAGE) -> tuple[Recipe, tuple[PlacedPiece, ...]]:
    """Pieces on one page, from the page upward."""
    pieces = [Piece(f"p-{i}", "p", f"P{i}", "plain", rect.width, rect.height) for i, rect in enumerate(rects)]
    placements = tuple(
        Placement(piece.id, "page", Offset(Edge.LEFT, rect.left), Offset(Edge.TOP, rect.top))
        for piece, rect in zip(pieces, rects, strict=True)
    )
    recipe = Recipe("random", "Random", Unit.INCH, Spread(("page",), page), (), (), placements)
    return recipe, placed_pieces(recipe, pieces)


def inches(*sides: float) -> Rect:
    return Rect(*(round(side * INCH) for side in sides))
