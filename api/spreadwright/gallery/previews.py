"""A recipe laid in each paper set: the spread, and the papers of the colourway as swatches."""

from dataclasses import dataclass

from spreadwright.gallery.jobs import RecipeJob
from spreadwright.gallery.pictures import Picture, picture, size_mm
from spreadwright.gallery.typesetting import counted
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Choice, Colourway, Paper, PaperSet, Recipe, Role, Side
from spreadwright.tasks.draw import preview_svg


@dataclass(frozen=True, slots=True)
class Swatch:
    """One side of one paper, in the role that it plays."""

    role: Role
    paper: Paper
    side: Side
    picture: str


@dataclass(frozen=True, slots=True)
class Preview:
    """A spread in one paper set.

    Attributes:
        bleed_percent: How far the picture reaches beyond the pages on either side, in hundredths of their width.
        pages_wide: How many pages lie side by side.
    """

    papers: PaperSet
    colourway: Colourway
    picture: Picture
    swatches: tuple[Swatch, ...]
    bleed_percent: float
    pages_wide: int


def previews(job: RecipeJob) -> tuple[tuple[Preview, ...], dict[str, bytes]]:
    """Every preview, the leading one first, and their files."""
    shown, files = [], {}
    for papers, colourway in job.colourways:
        svg = preview_svg(job.reading, colourway, papers=papers.title, is_on_table=False)
        shown.append(_preview(job.recipe, papers, colourway, svg))
        files[shown[-1].picture.path] = svg
    return tuple(shown), files


def _preview(recipe: Recipe, papers: PaperSet, colourway: Colourway, svg: bytes) -> Preview:
    swatches = tuple(_swatch(recipe, papers, role_id, choice) for role_id, choice in colourway.choices)
    shown = picture(f"pictures/{recipe.id}/in-{papers.id}.svg", svg, _alt(recipe, swatches))
    return Preview(papers, colourway, shown, swatches, _bleed_percent(recipe, svg), len(recipe.spread.pages))


def _swatch(recipe: Recipe, papers: PaperSet, role_id: str, choice: Choice) -> Swatch:
    role = next(role for role in recipe.roles if role.id == role_id)
    return Swatch(role, choice.paper, choice.side, swatch_path(papers, choice.paper, choice.side))


def swatch_path(papers: PaperSet, paper: Paper, side: Side) -> str:
    """Where the picture of one side of a paper lies in the site."""
    return f"pictures/{papers.id}/paper-{paper.id}-{side.value}.svg"


def _bleed_percent(recipe: Recipe, svg: bytes) -> float:
    page = recipe.spread.size
    width_mm = page.width * len(recipe.spread.pages) / TICKS[Unit.MILLIMETRE] if page else 0
    return round((size_mm(svg)[0] - width_mm) / 2 / width_mm * 100, 3) if width_mm else 0


def _alt(recipe: Recipe, swatches: tuple[Swatch, ...]) -> str:
    pages = "Two pages side by side" if len(recipe.spread.pages) == 2 else "One page"
    papers = ", ".join(swatch.paper.title for swatch in swatches)
    photos = f", with {counted(len(recipe.photos), 'photo')}" if recipe.photos else ""
    return f"{pages} laid in {papers}{photos}."
