"""The small pictures of the first page: which printed page shows what, the scale, and what the lines mean."""

from collections.abc import Sequence

from spreadwright.drawing.canvas import Canvas, Paint, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.placement_tables import page_name
from spreadwright.drawing.templates.content import HIDDEN, PHOTO, SEEN, break_sign
from spreadwright.drawing.templates.joins import JOIN
from spreadwright.drawing.templates.outlines import edges, path
from spreadwright.drawing.templates.plan import TemplatePlan
from spreadwright.drawing.templates.ruler import RULER_HEIGHT, RULER_WIDTH, ruler
from spreadwright.drawing.theme import BODY, HAIRLINE, INK, LARGE, LINE, MM, QUIET, THIN
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size
from spreadwright.words import gettext as _

MAP_WIDTH, MAP_HEIGHT = 168 * MM, 88 * MM
LYING_WIDTH, LYING_HEIGHT = 150 * MM, 74 * MM
"""The most that the map takes on upright paper, and on paper that lies on its side; ticks."""
_FOOT = 7 * MM
_NAME = Style(size=BODY)
_NUMBER = Style(face=Typeface.SANS_BOLD, size=LARGE, is_tabular=True)
_JOIN = stroked(INK, THIN, dash=(3 * MM, MM))
_BROKEN = stroked(INK, HAIRLINE)
_SAMPLE, _LINE = 22 * MM, 7 * MM


def sheet_map(plan: TemplatePlan) -> Canvas:
    """The pages of the album with the outlines of their pieces, the joins, and the number of each printed page."""
    count, page = len(plan.pages), plan.page_size
    most_wide, most_high = (LYING_WIDTH, LYING_HEIGHT) if plan.is_lying else (MAP_WIDTH, MAP_HEIGHT)
    wide = min((most_wide - 2 * MM) // count, (most_high - _FOOT - 2 * MM) * page.width // page.height)
    high = wide * page.height // page.width
    canvas = Canvas(Size(count * wide + 2 * MM, high + _FOOT + 2 * MM), title=_("Map of the pages"), prefix="m-")
    for index, name in enumerate(plan.pages):
        box = Rect(MM + index * wide, MM, wide, high)
        _page(canvas, plan, name, box)
        foot = (box.left + wide // 2, box.bottom + 6 * MM)
        write(canvas, page_name(name), foot, _NAME, align=Align.MIDDLE)
    return canvas


def _page(canvas: Canvas, plan: TemplatePlan, name: str, box: Rect) -> None:
    """One page of the album in small."""

    def small(rect: Rect) -> Rect:
        across = [box.left + x * box.width // plan.page_size.width for x in (rect.left, rect.right)]
        down = [box.top + y * box.height // plan.page_size.height for y in (rect.top, rect.bottom)]
        return Rect.between(across[0], down[0], across[1], down[1])

    placed = plan.on(name)
    with canvas.group(clip=box):
        for index, each in enumerate(placed):
            covers = [small(later.rect) for later in placed[index + 1 :]]
            canvas.path(path(edges(small(each.rect), covers)[0]), stroked(QUIET, HAIRLINE))
    for tile in plan.tiling.tiles:
        core = small(tile.core)
        if core.right < box.right:
            canvas.line((core.right, core.top), (core.right, core.bottom), _JOIN)
        if core.bottom < box.bottom:
            canvas.line((core.left, core.bottom), (core.right, core.bottom), _JOIN)
        number = plan.number(name, tile.row, tile.column) or 0
        middle = (core.left + core.width // 2, core.top + core.height // 2)
        _number(canvas, str(number), middle)
    canvas.rect(box, stroked(INK, LINE))


def _number(canvas: Canvas, words: str, middle: tuple[int, int]) -> None:
    wide = max(width(words, _NUMBER) + 4 * MM, 8 * MM)
    canvas.rect(Rect(middle[0] - wide // 2, middle[1] - 4 * MM, wide, 8 * MM), filled(WHITE), radius=MM)
    canvas.rect(Rect(middle[0] - wide // 2, middle[1] - 4 * MM, wide, 8 * MM), stroked(INK, THIN), radius=MM)
    write(canvas, words, (middle[0], middle[1] + LARGE * 32 // 100), _NUMBER, align=Align.MIDDLE)


def scale_picture() -> Canvas:
    """The scale alone."""
    canvas = Canvas(Size(RULER_WIDTH, RULER_HEIGHT), title=_("A scale of 100 mm and 4 in"), prefix="r-")
    ruler(canvas, (2 * MM, RULER_HEIGHT // 2))
    return canvas


def line_signs(*, has_joins: bool) -> Canvas:
    """What each kind of line means."""
    signs: list[tuple[Paint, str]] = [
        (SEEN, _("edge of a piece")),
        (HIDDEN, _("edge that lies under another piece")),
        (PHOTO, _("edge of a photograph")),
    ]
    if has_joins:
        signs.append((JOIN, _("where two printed pages meet")))
        signs.append((_BROKEN, _("dimension that continues on another printed page")))
    return _signs(signs)


def _signs(signs: Sequence[tuple[Paint, str]]) -> Canvas:
    wide = _SAMPLE + 4 * MM + max(width(words, _NAME) for _, words in signs)
    canvas = Canvas(Size(wide, _LINE * len(signs)), title=_("What the lines mean"), prefix="l-")
    for index, (paint, words) in enumerate(signs):
        y = index * _LINE + _LINE // 2
        canvas.line((0, y), (_SAMPLE, y), paint)
        if paint == _BROKEN:
            break_sign(canvas, (_SAMPLE // 2, y), is_level=True)
        write(canvas, words, (_SAMPLE + 4 * MM, y + MM), _NAME)
    return canvas
