"""The verb *templates*: the placement at full size, to be printed on several sheets and taped together."""

from spreadwright.document import Reading
from spreadwright.drawing.booklet import Format
from spreadwright.drawing.templates import MOST_TILES, TemplatePlan, templates_pdf, tiling
from spreadwright.errors import Finding, InvalidDocument, error
from spreadwright.geometry import Size
from spreadwright.lengths import size_text
from spreadwright.model import Bench, Recipe
from spreadwright.placing import cautions
from spreadwright.tasks.check import proven
from spreadwright.tasks.layout import layout
from spreadwright.words import SOURCE, speaking

__all__ = ["template_plan", "templates"]


def templates(reading: Reading[Recipe], bench: Bench, paper: Format = Format.A4) -> bytes:
    """The templates of a recipe as PDF, in the language that is spoken.

    Args:
        reading: The recipe.
        bench: Whose unit the figures are in.
        paper: What is printed on, upright or on its side, whichever takes fewer sheets.

    Raises:
        InvalidDocument: The recipe carries an error, or its page is too large to be taped together.
        CannotDraw: A library refused.
    """
    return templates_pdf(template_plan(reading, bench, paper))


def template_plan(reading: Reading[Recipe], bench: Bench, paper: Format) -> TemplatePlan:
    """What the templates show; see `templates`."""
    recipe = proven(reading)
    size = recipe.spread.size
    if size is None:
        raise ValueError("a spread of unknown size cannot be drawn; check the recipe first")
    shared = tiling(size, paper)
    if shared.is_too_large:
        with speaking(SOURCE):
            found = _too_large(size, bench, shared.rows * shared.columns)
        raise InvalidDocument(recipe.title, [found])
    placed, photos = layout(recipe)
    return TemplatePlan(recipe, placed, photos, bench.unit, shared, cautions())


def _too_large(size: Size, bench: Bench, count: int) -> Finding:
    shown = size_text(size.width, size.height, bench.unit)
    message = f"A page of {shown} takes {count} sheets of paper at full size; at most {MOST_TILES} are taped together."
    remedy = "Print the placement in small, as the cut sheets are, or make the page smaller."
    return error("print-too-large", "/spread/size", message, remedy)
