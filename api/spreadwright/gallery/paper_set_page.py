"""One paper set to what its page shows, and the pictures of its papers."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.gallery.pictures import Files, Picture, picture
from spreadwright.gallery.previews import Preview, swatch_path
from spreadwright.gallery.recipe_page import RecipePage
from spreadwright.model import BLANK, Face, Paper, PaperSet, Side
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
    layouts: tuple[tuple[RecipePage, Preview], ...]

    @property
    def path(self) -> str:
        """Where the page lies in the site."""
        return f"paper-sets/{self.papers.id}/index.html"


def paper_set_page(papers: PaperSet, recipes: Sequence[RecipePage]) -> tuple[PaperSetPage, Files]:
    """What the page of a paper set shows, with every recipe that it can be laid in, and its pictures."""
    files: dict[str, bytes] = {}
    entries = tuple(_entry(papers, paper, files) for paper in papers.papers)
    shown = ((recipe, recipe.preview_in(papers.id)) for recipe in recipes)
    return PaperSetPage(papers, entries, tuple((recipe, preview) for recipe, preview in shown if preview)), files


def _entry(papers: PaperSet, paper: Paper, files: dict[str, bytes]) -> PaperEntry:
    pictures = {}
    for side in Side:
        svg = swatch_svg(paper, side)
        pictures[side] = picture(swatch_path(papers, paper, side), svg, _alt(paper, side))
        files[pictures[side].path] = svg
    return PaperEntry(paper, pictures[Side.FRONT], pictures[Side.BACK])


def _alt(paper: Paper, side: Side) -> str:
    return f"{paper.title}, {side.value}: {face_words(paper.face(side))}"


def face_words(face: Face) -> str:
    """What is seen on a face: ``stripe, one-way``."""
    return "bare paper" if face == BLANK else str(face)


def weight_words(paper: Paper) -> str:
    """What a paper weighs, and one sheet of it: ``176 g/m² (65 lb cover), 16.3 g a sheet``."""
    return f"{paper.weight}, {float(paper.weight.mass_g(paper.size)):.1f} g a sheet"


def stock_words(paper: Paper) -> str:
    """How many sheets there are, where they are counted: ``1 sheet at hand``."""
    return "" if paper.sheets is None else f"{paper.sheets} sheet{'s' if paper.sheets != 1 else ''} at hand"
