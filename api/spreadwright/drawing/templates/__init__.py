"""Templates: the placement at full size, shared out over sheets of printing paper that are taped together."""

from spreadwright.drawing.templates.book import templates_html, templates_pdf, tile_pages
from spreadwright.drawing.templates.plan import Leaf, TemplatePlan, leaves_of
from spreadwright.drawing.templates.tiles import MOST_TILES, Tile, Tiling, tiling

__all__ = [
    "MOST_TILES",
    "Leaf",
    "TemplatePlan",
    "Tile",
    "Tiling",
    "leaves_of",
    "templates_html",
    "templates_pdf",
    "tile_pages",
    "tiling",
]
