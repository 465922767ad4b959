"""Where the pieces and photographs of a sound recipe lie, for all that is drawn or measured of it."""

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.model import Recipe
from spreadwright.photos import MattedPhoto, matted_photos
from spreadwright.placing import PlacedPiece, placed_pieces

Layout = tuple[tuple[PlacedPiece, ...], tuple[MattedPhoto, ...]]


def layout(recipe: Recipe) -> Layout:
    """The pieces from the page upward, and the photographs in document order."""
    cut = pieces(cut_sheets(recipe))
    return placed_pieces(recipe, cut), matted_photos(recipe, cut)
