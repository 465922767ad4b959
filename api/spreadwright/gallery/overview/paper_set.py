"""One paper set to what its page shows, and the pictures of its papers."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.swatch import WHOLE
from spreadwright.drawing.theme import MM
from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.overview.paper_words import side_words
from spreadwright.gallery.pictures import PX_PER_MM, Files, Picture
from spreadwright.gallery.recipe.exchange import face_files
from spreadwright.model import BLANK, Paper, PaperSet, Side
from spreadwright.tasks.draw import swatch_svg


@dataclass(frozen=True, slots=True)
class PaperEntry:
    """One paper with the pictures of its two sides."""

    paper: Paper
    front: Picture
    back: Picture

    @property
    def has_printed_back(self) -> bool:
        """Whether the back is more than bare paper."""
        return self.paper.back != BLANK


@dataclass(frozen=True, slots=True)
class PaperSetPage:
    """All that the page of one paper set shows."""

    papers: PaperSet
    entries: tuple[PaperEntry, ...]
    layouts: tuple[Facts, ...]

    @property
    def path(self) -> str:
        """Where the page lies below the home of a language."""
        return f"paper-sets/{self.papers.id}/index.html"


def swatch_path(papers: PaperSet, paper: Paper, side: Side) -> str:
    """Where the picture of one side of a paper lies in the site."""
    return f"pictures/{papers.id}/paper-{paper.id}-{side.value}.svg"


def paper_set_files(papers: PaperSet) -> Files:
    """The pictures of every paper of a set, by path from the root of the site."""
    swatches = {swatch_path(papers, paper, side): swatch_svg(paper, side) for paper in papers.papers for side in Side}
    return {**swatches, **face_files(papers)}


def paper_set_page(papers: PaperSet, recipes: Sequence[Facts]) -> PaperSetPage:
    """What the page of a paper set shows, with every recipe that it can be laid in."""
    entries = tuple(
        PaperEntry(paper, _picture(papers, paper, Side.FRONT), _picture(papers, paper, Side.BACK))
        for paper in papers.papers
    )
    return PaperSetPage(papers, entries, tuple(recipe for recipe in recipes if recipe.thumbnail_in(papers.id)))


def _picture(papers: PaperSet, paper: Paper, side: Side) -> Picture:
    side_px = round(WHOLE / MM * PX_PER_MM)
    return Picture(swatch_path(papers, paper, side), side_px, side_px, side_words(paper, side))
