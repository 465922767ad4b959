"""The small pictures that pages are full of: a spread in each paper set, in sizes that a browser chooses from."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.raster import see_through_pixels
from spreadwright.drawing.spread import spread_size
from spreadwright.gallery.pictures import Files, size_mm
from spreadwright.gallery.recipe.job import RecipeJob
from spreadwright.gallery.recipe.paths import picture_path
from spreadwright.images import encode_webp, resized
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Colourway, Recipe
from spreadwright.tasks.draw import preview_svg
from spreadwright.tasks.greys import in_greys
from spreadwright.tasks.layout import layout

WIDTHS_PX = (480, 720, 1280)
"""Of a double page with its shadow: on a phone, on a desk screen with some abreast, and on either with fine pixels."""
_SINGLE = (9, 17)
"""How wide a single square page with its shadow is beside a double one."""


@dataclass(frozen=True, slots=True)
class Thumbnail:
    """A small spread in one paper set, or in greys, its ground see-through, so that the page is the table under it.

    Attributes:
        set_id: The paper set; empty for the greys that stand for papers.
        set_title: Likewise.
        papers: What its papers are called.
        stem: The path of its files, which end in their width and ``.webp``.
        widths_px: What there is, the narrowest first.
        height_px: Of the widest.
        colours: Of the paper that lies under everything else, and of what stands out from it most, as ``#rrggbb``.
        bleed_percent: How far the picture reaches beyond the pages on either side, in hundredths of their width.
        shape: How many times wider than high the pages are together.
    """

    set_id: str
    set_title: str
    papers: tuple[str, ...]
    stem: str
    widths_px: tuple[int, ...]
    height_px: int
    colours: tuple[str, str]
    bleed_percent: float
    pages_wide: int
    shape: float

    @property
    def paths(self) -> tuple[str, ...]:
        """Its files, the narrowest first."""
        return tuple(f"{self.stem}-{width}.webp" for width in self.widths_px)


def thumbnails(job: RecipeJob) -> tuple[tuple[Thumbnail, ...], Files]:
    """Every thumbnail of a recipe, the leading colourway first, and their files.

    Raises:
        CannotDraw: A picture could not be drawn.
    """
    shown: list[Thumbnail] = []
    files: dict[str, bytes] = {}
    for papers, colourway in job.colourways:
        made, drawn = _drawn(job, colourway, papers.title)
        shown.append(made)
        files |= drawn
    return tuple(shown), files


def thumbnail_in_greys(job: RecipeJob) -> tuple[Thumbnail, Files]:
    """The thumbnail of a recipe that no paper set fills, and its files.

    Raises:
        CannotDraw: The picture could not be drawn.
    """
    return _drawn(job, in_greys(job.recipe))


def _drawn(job: RecipeJob, colourway: Colourway, set_title: str = "") -> tuple[Thumbnail, dict[str, bytes]]:
    svg = preview_svg(job.reading, colourway, papers=set_title, is_on_table=False)
    made = _thumbnail(job.recipe, set_title, colourway, svg)
    return made, dict(zip(made.paths, _webps(svg, made.widths_px), strict=True))


def _thumbnail(recipe: Recipe, set_title: str, colourway: Colourway, svg: bytes) -> Thumbnail:
    wide_mm, high_mm = size_mm(svg)
    pages = len(recipe.spread.pages)
    share, whole = (1, 1) if pages > 1 else _SINGLE
    widths = tuple(width * share // whole for width in WIDTHS_PX)
    pages_mm = spread_size(recipe).width / TICKS[Unit.MILLIMETRE]
    return Thumbnail(
        colourway.set_id,
        set_title,
        tuple(dict.fromkeys(choice.paper.title for _, choice in colourway.choices)),
        picture_path(recipe.id, f"in-{colourway.set_id or 'greys'}"),
        widths,
        round(widths[-1] * high_mm / wide_mm),
        _colours(recipe, colourway),
        round((wide_mm - pages_mm) / 2 / pages_mm * 100, 3),
        pages,
        round(spread_size(recipe).width / spread_size(recipe).height, 4),
    )


def _colours(recipe: Recipe, colourway: Colourway) -> tuple[str, str]:
    placed, _ = layout(recipe)
    ground = colourway.choice(placed[0].piece.role).shown(placed[0].side).colours[0]
    others = [colour for _, choice in colourway.choices for colour in choice.face.colours]
    return ground, max(others, key=lambda colour: _distance(ground, colour))


def _distance(one: str, other: str) -> int:
    """How far apart two colours are to the eye that has but a dot of each: by red, green and blue, squared."""
    return sum((a - b) ** 2 for a, b in zip(bytes.fromhex(one[1:]), bytes.fromhex(other[1:]), strict=True))


def _webps(svg: bytes, widths_px: Sequence[int]) -> list[bytes]:
    """Drawn once, at the largest size: that takes ten times as long as making it smaller."""
    largest = see_through_pixels(svg, widths_px[-1])
    high, wide = largest.shape[:2]
    smaller = [resized(largest, width, max(1, round(high * width / wide))) for width in widths_px[:-1]]
    return [encode_webp(pixels) for pixels in (*smaller, largest)]
