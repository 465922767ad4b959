"""What people take away from a recipe's page."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spreadwright.gallery.jobs import RecipeJob
from spreadwright.tasks.draw import as_pdf, as_png, preview_svg

PREVIEW_PX = 1600
"""Width of the PNG of a spread, pixels."""


@dataclass(frozen=True, slots=True)
class Download:
    """One file to take away; `what` says what it shows."""

    what: str
    form: str
    path: str
    size_bytes: int

    @property
    def size_kb(self) -> int:
        """Size in kilobytes, rounded up."""
        return -(-self.size_bytes // 1000)


def downloads(
    job: RecipeJob, cut_pages: Sequence[bytes], placement_pages: Sequence[bytes], *, sheets: int
) -> tuple[tuple[Download, ...], dict[str, bytes]]:
    """The list of downloads, and their files.

    Args:
        job: The recipe; its leading colourway is the one to take away.
        cut_pages: The pages of all sheets that are cut, SVG.
        placement_pages: The pages of the placement, SVG.
        sheets: How many sheets are cut.
    """
    recipe_id = job.recipe.id
    offered = [("The recipe", "JSON", f"{recipe_id}.json", job.reading.data), *_spread(job)]
    if sheets:
        what = "The cut sheet" if sheets == 1 else "All cut sheets"
        offered.append((what, "PDF", f"{recipe_id}-cut-sheets.pdf", as_pdf(cut_pages)))
    offered.append(("The placement", "PDF", f"{recipe_id}-placement.pdf", as_pdf(placement_pages)))
    listed = tuple(
        Download(what, form, f"downloads/{recipe_id}/{name}", len(data)) for what, form, name, data in offered
    )
    return listed, {item.path: data for item, (*_, data) in zip(listed, offered, strict=True)}


def _spread(job: RecipeJob) -> Iterator[tuple[str, str, str, bytes]]:
    for papers, colourway in job.colourways[:1]:
        name, what = f"{job.recipe.id}-spread", f"The spread in {papers.title}"
        svg = preview_svg(job.reading, colourway, papers=papers.title)
        yield what, "SVG", f"{name}.svg", svg
        yield what, "PNG", f"{name}.png", as_png(svg, PREVIEW_PX)
        yield what, "PDF", f"{name}.pdf", as_pdf([svg])
