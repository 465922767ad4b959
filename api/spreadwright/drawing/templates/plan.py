"""What templates are made from: the placement, and how it is shared out over paper."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.templates.tiles import Tile, Tiling
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import Unit
from spreadwright.model import Recipe
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlacedPiece

FRONT = 1
"""How many pages stand before the first tile."""


@dataclass(frozen=True, slots=True)
class TemplatePlan:
    """All that templates show.

    Attributes:
        placed: Every piece, from the page upward.
        unit: Of every figure.
        tiling: Of one page; all pages are equally large.
        cautions: What is said before anything is glued.
    """

    recipe: Recipe
    placed: Sequence[PlacedPiece]
    photos: Sequence[MattedPhoto]
    unit: Unit
    tiling: Tiling
    cautions: Sequence[str]

    @property
    def page_size(self) -> Size:
        """Of one page of the album, ticks."""
        if self.recipe.spread.size is None:
            raise ValueError("a spread of unknown size cannot be drawn; check the recipe first")
        return self.recipe.spread.size

    @property
    def is_lying(self) -> bool:
        """Whether the printing paper lies on its side."""
        return self.tiling.paper.width > self.tiling.paper.height

    @property
    def pages(self) -> Sequence[str]:
        """Of the album, from left to right."""
        return self.recipe.spread.pages

    @property
    def total(self) -> int:
        """How many pages are printed."""
        return FRONT + len(self.pages) * len(self.tiling.tiles)

    def number(self, page: str, row: int, column: int) -> int | None:
        """The number of the printed page that shows a tile; None beyond the edge of the page."""
        index = self.tiling.index(row, column)
        if index is None:
            return None
        return FRONT + 1 + self.pages.index(page) * len(self.tiling.tiles) + index

    def on(self, page: str) -> list[PlacedPiece]:
        """The pieces of one page of the album, the lowest first."""
        return [each for each in self.placed if each.page == page]

    def photo_on(self, piece: PlacedPiece) -> Rect | None:
        """Where the photograph of a mat lies, if it carries one."""
        found = next((photo for photo in self.photos if photo.on == piece.piece.id), None)
        return found.rect_on(piece.rect) if found else None


@dataclass(frozen=True, slots=True)
class Leaf:
    """One printed page: a tile of a page of the album."""

    page: str
    tile: Tile
    number: int


def leaves_of(plan: TemplatePlan) -> list[Leaf]:
    """Every printed page after the first."""
    found = [(page, tile) for page in plan.pages for tile in plan.tiling.tiles]
    return [Leaf(page, tile, number) for number, (page, tile) in enumerate(found, start=FRONT + 1)]
