"""The verb *draw*: the spread, the cut sheets, the placement and the papers as SVG, PNG and PDF."""

from collections.abc import Sequence

from spreadwright.document import Reading
from spreadwright.drawing.booklet.code import code_picture
from spreadwright.drawing.booklet.loose import loose_pages_pdf
from spreadwright.drawing.face import face_picture
from spreadwright.drawing.placement import PlacementPlan, placement_leaves, placement_picture
from spreadwright.drawing.raster import NARROWEST_PX, WIDEST_PX, pdf, png
from spreadwright.drawing.sheet import SheetPlan, cut_sheet_leaves, cut_sheet_picture
from spreadwright.drawing.spread import FaceAt, spread_picture
from spreadwright.drawing.svg import inline_markup, svg_bytes
from spreadwright.drawing.swatch import swatch_picture
from spreadwright.drawing.theme import TABLE
from spreadwright.model import Colourway, Paper, Recipe, Side, role_titles
from spreadwright.tasks.check import proven
from spreadwright.tasks.cut import Cutting
from spreadwright.tasks.layout import layout
from spreadwright.tasks.place import Placing
from spreadwright.words import gettext as _

__all__ = [
    "NARROWEST_PX",
    "WIDEST_PX",
    "as_pdf",
    "as_png",
    "cut_sheets_pdf",
    "cut_sheets_svg",
    "exchangeable_spread",
    "face_svg",
    "placement_pdf",
    "placement_svg",
    "preview_svg",
    "swatch_svg",
]


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
    placed, photos = layout(recipe)
    surface = TABLE if is_on_table else ""
    return svg_bytes(spread_picture(recipe, placed, photos, colourway, papers=papers, surface=surface))


def exchangeable_spread(reading: Reading[Recipe], colourway: Colourway, face_at: FaceAt, *, prefix: str) -> str:
    """The spread as it lies in a page that exchanges its papers, on no table and without words.

    Args:
        reading: The recipe.
        colourway: The colourway that is shown first.
        face_at: Where the picture of a whole face lies, as `face_svg` draws it.
        prefix: Stands before every id.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    return inline_markup(spread_picture(recipe, *layout(recipe), colourway, prefix=prefix, surface="", face_at=face_at))


def face_svg(paper: Paper, side: Side) -> bytes:
    """A whole sheet with one side up, at real scale."""
    return svg_bytes(face_picture(paper, side))


def swatch_svg(paper: Paper, side: Side = Side.FRONT) -> bytes:
    """A corner of a paper at real scale, one side up."""
    return svg_bytes(swatch_picture(paper, up=side))


def cut_sheets_svg(cutting: Cutting) -> tuple[bytes, ...]:
    """The cut sheet of every sheet, in order, each as high as its table needs; sheets cut together share theirs."""
    drawn = {number: svg for plan in sheet_plans(cutting) for svg in [_drawn(plan)] for number in plan.numbers}
    return tuple(drawn[sheet.number] for sheet in cutting.sheets)


def _drawn(plan: SheetPlan) -> bytes:
    return svg_bytes(cut_sheet_picture(plan))


def cut_sheets_pdf(cutting: Cutting, *, is_uncut_shown: bool = True) -> bytes:
    """The cut sheets for the printer: no page is higher than 265 mm, the rest of a long table is on further ones.

    Args:
        cutting: The cuts on one bench.
        is_uncut_shown: Whether a sheet that is not cut has its page, too.

    Raises:
        CannotDraw: The library that sets the pages refused.
    """
    plans = [plan for plan in sheet_plans(cutting) if plan.steps or is_uncut_shown]
    leaves = [leaf for plan in plans for leaf in cut_sheet_leaves(plan)]
    title = _("{title}: cut sheets").format(title=cutting.recipe.title)
    return loose_pages_pdf(leaves, title, cutting.recipe.authors)


def placement_svg(placing: Placing) -> bytes:
    """The pages in outline with every piece numbered in gluing order, and the tables; as high as they need."""
    return svg_bytes(placement_picture(placement_plan(placing)))


def placement_pdf(placing: Placing) -> bytes:
    """The same for the printer: no page is higher than 265 mm.

    Raises:
        CannotDraw: The library that sets the pages refused.
    """
    title = _("{title}: placement").format(title=placing.recipe.title)
    return loose_pages_pdf(placement_leaves(placement_plan(placing)), title, placing.recipe.authors)


def sheet_plans(cutting: Cutting) -> list[SheetPlan]:
    """What the cut sheet of every sheet shows; sheets that are cut together have one."""
    by_id = {piece.id: piece for piece in cutting.pieces}
    roles = role_titles(cutting.recipe)
    return [
        SheetPlan(
            cutting.recipe.title,
            roles.get(first.role, first.role),
            first,
            cutting.steps_of(first),
            cutting.words_of(first),
            by_id,
            cutting.page_of,
            cutting.recipe.spread.pages,
            cutting.bench,
            cutting.cautions,
            fellows,
            cutting.sizes,
            cutting.rounding,
        )
        for first, *fellows in cutting.stacks
    ]


def placement_plan(placing: Placing) -> PlacementPlan:
    """What the picture of the placement shows."""
    return PlacementPlan(
        placing.recipe,
        placing.steps,
        placing.photos,
        placing.bench,
        placing.cautions,
        placing.sizes,
        placing.rounding,
    )


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


def code_svg(address: str, title: str) -> bytes:
    """The square code that leads from paper to an address."""
    return svg_bytes(code_picture(address, title))
