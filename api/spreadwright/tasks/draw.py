"""The verb *draw*: the spread, the cut sheets, the placement and the papers as SVG, PNG and PDF."""

from collections.abc import Sequence

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading
from spreadwright.drawing.placement import PlacementPlan, placement_picture
from spreadwright.drawing.raster import pdf, png
from spreadwright.drawing.sheet import SheetPlan, cut_sheet_picture
from spreadwright.drawing.spread import spread_picture
from spreadwright.drawing.svg import svg_bytes
from spreadwright.drawing.swatch import swatch_picture
from spreadwright.drawing.theme import TABLE
from spreadwright.model import Colourway, Paper, Recipe, Side
from spreadwright.photos import matted_photos
from spreadwright.placing import placed_pieces
from spreadwright.tasks.check import proven
from spreadwright.tasks.cut import Cutting
from spreadwright.tasks.place import Placing


def preview_svg(reading: Reading[Recipe], colourway: Colourway, *, papers: str = "", is_on_table: bool = True) -> bytes:
    """The spread as it will lie on the table, in one colourway.

    Args:
        reading: The recipe.
        colourway: One of its colourways.
        papers: What the paper set is called.
        is_on_table: Whether the table shows around it; otherwise only the shadow, for a page that is the table.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    cut = pieces(cut_sheets(recipe))
    placed, photos = placed_pieces(recipe, cut), matted_photos(recipe, cut)
    surface = TABLE if is_on_table else ""
    return svg_bytes(spread_picture(recipe, placed, photos, colourway, papers=papers, surface=surface))


def swatch_svg(paper: Paper, side: Side = Side.FRONT) -> bytes:
    """A corner of a paper at real scale, one side up."""
    return svg_bytes(swatch_picture(paper, up=side))


def cut_sheets_svg(cutting: Cutting) -> tuple[bytes, ...]:
    """The cut sheet of every sheet, in order."""
    by_id = {piece.id: piece for piece in cutting.pieces}
    roles = {role.id: role.title or role.id for role in cutting.recipe.roles}
    return tuple(
        svg_bytes(
            cut_sheet_picture(
                SheetPlan(
                    cutting.recipe.title,
                    roles.get(sheet.role, sheet.role),
                    sheet,
                    cutting.steps_of(sheet),
                    by_id,
                    cutting.page_of,
                    cutting.recipe.spread.pages,
                    cutting.bench.unit,
                )
            )
        )
        for sheet in cutting.sheets
    )


def placement_svg(placing: Placing) -> bytes:
    """The pages in outline with every piece numbered in gluing order, and the table of distances."""
    plan = PlacementPlan(placing.recipe, placing.steps, placing.photos, placing.bench.unit)
    return svg_bytes(placement_picture(plan))


def as_png(svg: bytes, width_px: int) -> bytes:
    """One of our pictures as PNG of a width in pixels.

    Raises:
        CannotDraw: The renderer refused.
    """
    return png(svg, width_px)


def as_pdf(svgs: Sequence[bytes]) -> bytes:
    """Our pictures as one PDF, a page each.

    Raises:
        CannotDraw: The renderer refused.
    """
    return pdf(svgs)
