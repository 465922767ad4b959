"""What a tile shows of its page: outlines at full size, marks, sizes, photographs."""

from collections.abc import Sequence

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.dimensions import FIGURES
from spreadwright.drawing.labels import Label, part_label
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.rooms import rooms
from spreadwright.drawing.templates.outlines import edges, path
from spreadwright.drawing.templates.plan import Leaf, TemplatePlan
from spreadwright.drawing.theme import BOLD_LINE, HAIRLINE, INK, LINE, MM, QUIET, SMALL, THIN
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import size_text, with_unit
from spreadwright.placing import PlacedPiece
from spreadwright.words import gettext as _

HIDDEN = stroked(INK, HAIRLINE, dash=(MM, MM))
PHOTO = stroked(QUIET, THIN, dash=(4 * MM, MM, MM // 2, MM))
SEEN = stroked(INK, LINE)
_PHOTO_WORDS = Style(size=SMALL, colour=QUIET)
_AIR = 7 * MM
"""Between a join and the nearest word."""
_FROM_EDGE = 13 * MM
"""From the edge of a piece to a dimension line along it: further in than the edge of any usual photograph."""
_LEAST = 32 * MM
"""A smaller room holds no dimension lines beside its label."""
_SLASH = MM


def content(canvas: Canvas, plan: TemplatePlan, leaf: Leaf) -> None:
    """All that lies on the page, in the page's own coordinates."""
    placed = plan.on(leaf.page)
    for index, each in enumerate(placed):
        seen, hidden = edges(each.rect, [later.rect for later in placed[index + 1 :]])
        if each.rect.size != plan.page_size:
            canvas.path(path(seen), SEEN)
            canvas.path(path(hidden), HIDDEN)
    canvas.rect(Rect.at(0, 0, plan.page_size), stroked(INK, BOLD_LINE))
    for index, each in enumerate(placed):
        photo = plan.photo_on(each)
        if photo:
            canvas.path(path(edges(photo, [later.rect for later in placed[index + 1 :]])[0]), PHOTO)
    under = [box for index, each in enumerate(placed) for box in _hidden_boxes(each, placed[index + 1 :])]
    for index, each in enumerate(placed):
        _words(canvas, plan, leaf, each, placed[index + 1 :], under)


def _hidden_boxes(each: PlacedPiece, above: Sequence[PlacedPiece]) -> list[Rect]:
    """What the hidden edges of a piece take with a little air: no word stands on them."""
    hidden = edges(each.rect, [later.rect for later in above])[1]
    return [Rect.between(*start, *end).inset(-MM) for start, end in hidden]


def _words(
    canvas: Canvas,
    plan: TemplatePlan,
    leaf: Leaf,
    each: PlacedPiece,
    above: Sequence[PlacedPiece],
    under: Sequence[Rect],
) -> None:
    """The label and the dimensions of what this tile shows of a piece, away from its joins and photographs' edges."""
    whole = Rect.at(0, 0, plan.page_size)
    shown = _common(each.rect, _common(whole, _within_joins(leaf, whole)))
    covers = [later.rect for later in above]
    photo = plan.photo_on(each)
    others = [found for later in above if (found := plan.photo_on(later))]
    taken = _dimensions(canvas, plan, each.rect, shown, covers) if each.rect.size != plan.page_size else []
    if photo:
        inside = _common(photo, shown)
        taken += _photo_words(canvas, plan, photo, inside, [*covers, *others, *taken, *under])
        shown = inside if inside.width > 0 and inside.height > 0 else shown
    free = rooms(shown, [*covers, *others])
    if free:
        size = size_text(each.rect.width, each.rect.height, plan.unit)
        part_label(canvas, Label(each.piece.mark, each.piece.id, size), free[0], [*taken, *under])


def _within_joins(leaf: Leaf, whole: Rect) -> Rect:
    """The tile between its joins, with some air where it is cut."""
    core = leaf.tile.core
    return Rect.between(
        core.left + (_AIR if core.left > whole.left else 0),
        core.top + (_AIR if core.top > whole.top else 0),
        core.right - (_AIR if core.right < whole.right else 0),
        core.bottom - (_AIR if core.bottom < whole.bottom else 0),
    )


def _common(one: Rect, other: Rect) -> Rect:
    """What two rectangles share; its size is not positive when they share nothing."""
    left, top = max(one.left, other.left), max(one.top, other.top)
    return Rect.between(left, top, min(one.right, other.right), min(one.bottom, other.bottom))


def _dimensions(canvas: Canvas, plan: TemplatePlan, rect: Rect, shown: Rect, covers: Sequence[Rect]) -> list[Rect]:
    """Width and height along lines that run over the piece from edge to edge; what they take."""
    if min(shown.width, shown.height) < _LEAST:
        return []
    taken: list[Rect] = []
    free = rooms(shown, covers)
    rows = [room for room in free if room.left == shown.left and room.right == shown.right and room.height >= _LEAST]
    if rows:
        ends = tuple(x for x in (shown.left, shown.right) if x in (rect.left, rect.right))
        taken += _across(canvas, rows[0], ends, with_unit(rect.width, plan.unit))
    columns = [room for room in free if room.top == shown.top and room.bottom == shown.bottom and room.width >= _LEAST]
    if columns:
        ends = tuple(y for y in (shown.top, shown.bottom) if y in (rect.top, rect.bottom))
        taken += _down(canvas, columns[0], ends, with_unit(rect.height, plan.unit))
    return taken


def _across(canvas: Canvas, room: Rect, ends: Sequence[int], figure: str) -> list[Rect]:
    """A dimension line near the top of a room, with strokes at the ends that are edges of the piece; what it takes."""
    y, middle = room.top + _FROM_EDGE, room.left + room.width * 3 // 4
    _line(canvas, (room.left, y), (room.right, y), [(x, y) for x in ends])
    write(canvas, figure, (middle, y - MM), FIGURES, align=Align.MIDDLE)
    half = width(figure, FIGURES) // 2 + MM
    return [Rect.between(middle - half, y - 4 * MM, middle + half, y), Rect(room.left, y, room.width, 0).inset(-MM)]


def _down(canvas: Canvas, room: Rect, ends: Sequence[int], figure: str) -> list[Rect]:
    """A dimension line near the left of a room; see `_across`."""
    x, middle = room.left + _FROM_EDGE, room.top + room.height * 3 // 4
    _line(canvas, (x, room.top), (x, room.bottom), [(x, y) for y in ends])
    write(canvas, figure, (x - MM, middle), FIGURES, align=Align.MIDDLE, turned_deg=-90)
    half = width(figure, FIGURES) // 2 + MM
    return [Rect.between(x - 4 * MM, middle - half, x, middle + half), Rect(x, room.top, 0, room.height).inset(-MM)]


def _line(canvas: Canvas, start: Point, end: Point, ends: Sequence[Point]) -> None:
    canvas.line(start, end, stroked(INK, HAIRLINE))
    slashes = Path()
    for x, y in ends:
        slashes.move(x - _SLASH, y + _SLASH).line(x + _SLASH, y - _SLASH)
    canvas.path(slashes, stroked(INK, 2 * HAIRLINE))


def _photo_words(canvas: Canvas, plan: TemplatePlan, photo: Rect, shown: Rect, obstacles: Sequence[Rect]) -> list[Rect]:
    """The size of a photograph near the foot of what is seen of it, wherever there is room."""
    words = _("photograph {size}").format(size=size_text(photo.width, photo.height, plan.unit))
    size, room = Size(width(words, _PHOTO_WORDS) + MM, 4 * MM), shown.inset(2 * MM)
    places = [
        Rect.at(room.left + (room.width - size.width) * part // 8, room.bottom - size.height - rise * 2 * MM, size)
        for rise in range(4)
        for part in range(9)
    ]
    for box in places:
        if room.contains(box) and not any(box.overlaps(each) for each in obstacles):
            write(canvas, words, (box.left + MM // 2, box.bottom - MM), _PHOTO_WORDS)
            return [box]
    return []
