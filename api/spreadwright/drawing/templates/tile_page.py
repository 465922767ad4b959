"""One printed page of the templates: its heading, its tile at full size, and a scale to check the printer by."""

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.path import Point
from spreadwright.drawing.placement_tables import page_name
from spreadwright.drawing.templates.content import content
from spreadwright.drawing.templates.joins import draw_joins, joins_of
from spreadwright.drawing.templates.plan import Leaf, TemplatePlan
from spreadwright.drawing.templates.ruler import RULER_WIDTH, ruler
from spreadwright.drawing.templates.tiles import EDGE, FOOT, place
from spreadwright.drawing.theme import BODY, HAIRLINE, INK, MM, SMALL
from spreadwright.drawing.type import Align, Style, width, wrapped, write
from spreadwright.geometry import Rect, Size
from spreadwright.words import gettext as _

_NAME = Style(face=Typeface.SANS_BOLD, size=BODY)
_NUMBER = Style(size=BODY, is_tabular=True)
_FOOT_WORDS = Style(size=SMALL)
_TINY_PAGE = 11 * MM
"""Height of a page of the album in the little map at the head."""
_CLIP = MM
"""So much more than the tile is shown, so that its own edges are whole."""


def tile_page(plan: TemplatePlan, leaf: Leaf) -> Canvas:
    """The picture of one printed page, as large as the paper."""
    paper = plan.tiling.paper
    title = heading(plan, leaf)
    canvas = Canvas(paper, title=title, prefix=f"t{leaf.number}-")
    canvas.rect(Rect.at(0, 0, paper), filled(WHITE))
    at = place(leaf.tile, paper)
    with canvas.group(clip=at.inset(-_CLIP), at=(at.left - leaf.tile.rect.left, at.top - leaf.tile.rect.top)):
        content(canvas, plan, leaf)
        draw_joins(canvas, joins_of(plan, leaf))
    _head(canvas, plan, leaf, title)
    _foot(canvas, paper)
    return canvas


def heading(plan: TemplatePlan, leaf: Leaf) -> str:
    """What a printed page is called."""
    count = len(plan.tiling.tiles)
    page = page_name(leaf.page)
    if count == 1:
        return _("{title}: {page}").format(title=plan.recipe.title, page=page)
    part = leaf.tile.row * plan.tiling.columns + leaf.tile.column + 1
    told = _("{title}: {page}, part {part} of {count}")
    return told.format(title=plan.recipe.title, page=page, part=part, count=count)


def page_of_pages(number: int, total: int) -> str:
    """The number of a printed page."""
    return _("{page} of {pages}").format(page=number, pages=total)


def _head(canvas: Canvas, plan: TemplatePlan, leaf: Leaf, title: str) -> None:
    right = plan.tiling.paper.width - EDGE
    baseline = EDGE + 5 * MM
    number = page_of_pages(leaf.number, plan.total)
    write(canvas, number, (right, baseline), _NUMBER, align=Align.END)
    right -= width(number, _NUMBER) + 5 * MM
    left = _little_map(canvas, plan, leaf, (right, EDGE))
    lines = wrapped(title, _NAME, left - 5 * MM - EDGE)
    for index, line in enumerate(lines[:2]):
        write(canvas, line, (EDGE, baseline + index * 5 * MM), _NAME)


def _little_map(canvas: Canvas, plan: TemplatePlan, leaf: Leaf, corner: Point) -> int:
    """The pages of the album in small, this tile filled; its top right corner is given, its left edge returned."""
    tall = _TINY_PAGE
    wide = min(3 * tall, tall * plan.page_size.width // plan.page_size.height)
    left = corner[0] - wide * len(plan.pages)
    for index, page in enumerate(plan.pages):
        for tile in plan.tiling.tiles:
            box = _scaled(tile.core, plan.page_size, Rect(left + index * wide, corner[1], wide, tall))
            is_own = page == leaf.page and tile == leaf.tile
            canvas.rect(box, filled(INK if is_own else WHITE))
            canvas.rect(box, stroked(INK, HAIRLINE))
    return left


def _scaled(rect: Rect, page: Size, into: Rect) -> Rect:
    """A place on the page as it lies in a small picture of it."""
    return Rect.between(
        into.left + rect.left * into.width // page.width,
        into.top + rect.top * into.height // page.height,
        into.left + rect.right * into.width // page.width,
        into.top + rect.bottom * into.height // page.height,
    )


def _foot(canvas: Canvas, paper: Size) -> None:
    middle = paper.height - EDGE - FOOT // 2 + 2 * MM
    ruler(canvas, (EDGE + 2 * MM, middle))
    left = EDGE + RULER_WIDTH
    lines = _unbroken(print_advice(), min(paper.width - EDGE - left, 100 * MM))
    top = middle - (len(lines) - 1) * 2 * MM + MM
    for index, line in enumerate(lines):
        write(canvas, line, (left, top + index * 4 * MM), _FOOT_WORDS)


def _unbroken(words: str, measure: int) -> tuple[str, ...]:
    """The words in lines of which none ends between a number and its unit."""
    tried = [wrapped(words, _FOOT_WORDS, measure * share // 16) for share in range(16, 11, -1)]
    return next((lines for lines in tried if not any(line[-1].isdigit() for line in lines[:-1])), tried[0])


def print_advice() -> str:
    """How to print at full size, and how to check it."""
    return _("Print at 100 %, not fitted to the page, and check with a ruler: the scale is 100 mm and 4 in long.")
