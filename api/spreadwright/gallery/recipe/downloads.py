"""What people take away from a recipe's page: files in the leading colourway and the recipe's own language."""

from collections.abc import Iterator
from dataclasses import dataclass

from spreadwright.errors import InvalidDocument
from spreadwright.gallery.recipe.job import RecipeJob
from spreadwright.lengths import Unit
from spreadwright.tasks import cut, place
from spreadwright.tasks.booklet import Dress, Format, booklet
from spreadwright.tasks.cut_paths import cut_paths, cut_paths_zip
from spreadwright.tasks.draw import as_pdf, as_png, cut_sheets_pdf, placement_pdf, preview_svg
from spreadwright.tasks.pieces import piece_rows, pieces_csv
from spreadwright.tasks.templates import templates
from spreadwright.words import gettext as _
from spreadwright.words import ngettext, speaking

PREVIEW_PX = 1600
"""Width of the PNG of a spread, pixels."""

Made = tuple["Download", bytes]


@dataclass(frozen=True, slots=True)
class Download:
    """One file to take away.

    Attributes:
        key: What it shows, see `what`.
        form: Its format, as people call it.
        path: Where it lies in the site.
        answered: The path beneath the recipe at which a service gives the same; empty when it gives none.
        follows: Whether it shows papers, so that a service can give it in others.
    """

    key: str
    form: str
    path: str
    size_bytes: int
    answered: str
    follows: bool = False
    count: int = 1

    @property
    def size_kb(self) -> int:
        """Size in kilobytes, rounded up."""
        return -(-self.size_bytes // 1000)

    @property
    def what(self) -> str:
        """What it shows, in the language that is spoken."""
        return {
            "recipe": _("The recipe"),
            "booklet": _("The booklet"),
            "spread": _("The spread"),
            "cut-sheets": ngettext("The cut sheet", "All cut sheets", self.count),
            "placement": _("The placement"),
            "templates": _("Templates at full size"),
            "cut-paths": _("Cut paths for machines"),
            "pieces": _("The list of pieces"),
        }[self.key]


def downloads(job: RecipeJob) -> tuple[tuple[Download, ...], dict[str, bytes]]:
    """The list of downloads, and their files by path in the site.

    Raises:
        CannotDraw: A library refused.
    """
    with speaking(job.recipe.language):
        made = [*_recipe(job), *_booklet(job), *_spread(job), *_instructions(job), *_templates(job), *_machines(job)]
    return tuple(item for item, _ in made), {item.path: data for item, data in made}


def _made(
    job: RecipeJob, key: str, form: str, name: str, data: bytes, answered: str, *, follows: bool = False, count: int = 1
) -> Made:
    path = f"downloads/{job.recipe.id}/{job.recipe.id}{name}"
    return Download(key, form, path, len(data), answered, follows, count), data


def _paper(job: RecipeJob) -> Format:
    """What printers hold where people measure in that unit; common practice."""
    return Format.LETTER if job.bench.unit is Unit.INCH else Format.A4


def _recipe(job: RecipeJob) -> Iterator[Made]:
    yield _made(job, "recipe", "JSON", ".json", job.reading.data, ".json")


def _booklet(job: RecipeJob) -> Iterator[Made]:
    paper = _paper(job)
    worn = next((Dress(papers, colourway) for papers, colourway in job.colourways), None)
    data = booklet(job.reading, job.bench, worn, paper=paper, language=job.recipe.language)
    yield _made(job, "booklet", "PDF", "-booklet.pdf", data, f"/booklet.pdf?page={paper.value}", follows=True)


def _spread(job: RecipeJob) -> Iterator[Made]:
    for papers, colourway in job.colourways[:1]:
        svg = preview_svg(job.reading, colourway, papers=papers.title)
        for form, data in (("SVG", svg), ("PNG", as_png(svg, PREVIEW_PX)), ("PDF", as_pdf([svg]))):
            suffix = form.lower()
            yield _made(job, "spread", form, f"-spread.{suffix}", data, f"/preview.{suffix}", follows=True)


def _instructions(job: RecipeJob) -> Iterator[Made]:
    cutting = cut(job.reading, job.bench)
    if sheets := sum(1 for first, *_ in cutting.stacks if cutting.steps_of(first)):
        data = cut_sheets_pdf(cutting, is_uncut_shown=False)
        yield _made(job, "cut-sheets", "PDF", "-cut-sheets.pdf", data, "/cuts.pdf", count=sheets)
    data = placement_pdf(place(job.reading, job.bench))
    yield _made(job, "placement", "PDF", "-placement.pdf", data, "/placement.pdf")


def _templates(job: RecipeJob) -> Iterator[Made]:
    paper = _paper(job)
    try:
        data = templates(job.reading, job.bench, paper)
    except InvalidDocument:  # a page too large to be taped together; the recipe itself is proven
        return
    yield _made(job, "templates", "PDF", "-templates.pdf", data, f"/templates.pdf?page={paper.value}")


def _machines(job: RecipeJob) -> Iterator[Made]:
    data = cut_paths_zip(cut_paths(job.reading, job.bench))
    yield _made(job, "cut-paths", "SVG + DXF", "-cut-paths.zip", data, "/cut-paths.zip")
    yield _made(job, "pieces", "CSV", "-pieces.csv", pieces_csv(piece_rows(job.recipe)), "/pieces.csv")
