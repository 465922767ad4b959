"""What a tile shows of its page: outlines at full size, marks, sizes, photographs."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.dimensions import FIGURES
from spreadwright.drawing.labels import Label, part_label
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.rooms import rooms
from spreadwright.drawing.templates.outlines import Segment, edges, path
from spreadwright.drawing.templates.plan import Leaf, TemplatePlan
from spreadwright.drawing.theme import BOLD_LINE, HAIRLINE, INK, LINE, MM, QUIET, SMALL, THIN
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import told, told_size
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
_SLASH, _ZIGZAG = MM, MM * 7 // 10
_FIGURE_PLACES = (12, 11, 10, 13, 9, 8, 7, 6, 5)
"""Where a figure may stand along its line, sixteenths of it, the first where no hidden edge runs."""


def content(canvas: Canvas, plan: TemplatePlan, leaf: Leaf) -> None:
    """All that lies on the page where this tile shows it, in the page's own coordinates."""
    placed = [each for each in plan.on(leaf.page) if each.rect.overlaps(leaf.tile.rect)]
    laid = [_Laid(each, tuple(_over(each, placed[index + 1 :]))) for index, each in enumerate(placed)]
    for each in laid:
        if each.piece.rect.size != plan.page_size:
            canvas.path(path(each.edges[0]), SEEN)
            canvas.path(path(each.edges[1]), HIDDEN)
    canvas.rect(Rect.at(0, 0, plan.page_size), stroked(INK, BOLD_LINE))
    for each in laid:
        photo = plan.photo_on(each.piece)
        if photo:
            canvas.path(path(edges(photo, each.covers)[0]), PHOTO)
    under = [box for each in laid for box in each.hidden_boxes]
    for each in laid:
        _words(canvas, plan, leaf, each, under)


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece, and the later ones that lie over part of it."""

    piece: PlacedPiece
    above: tuple[PlacedPiece, ...]

    @property
    def covers(self) -> list[Rect]:
        return [later.rect for later in self.above]

    @property
    def edges(self) -> tuple[list[Segment], list[Segment]]:
        return edges(self.piece.rect, self.covers)

    @property
    def hidden_boxes(self) -> list[Rect]:
        """What its hidden edges take: no word stands on them."""
        return _boxes(self.edges[1])


def _boxes(segments: Iterable[Segment]) -> list[Rect]:
    """What lines take with a little air."""
    return [Rect.between(*start, *end).inset(-MM) for start, end in segments]


def _over(each: PlacedPiece, later: Sequence[PlacedPiece]) -> Iterator[PlacedPiece]:
    return (other for other in later if other.rect.overlaps(each.rect))


def _words(canvas: Canvas, plan: TemplatePlan, leaf: Leaf, laid: _Laid, under: Sequence[Rect]) -> None:
    """The label and the dimensions of what this tile shows of a piece, away from its joins and photographs' edges."""
    whole, each, covers = Rect.at(0, 0, plan.page_size), laid.piece, laid.covers
    shown = _common(each.rect, _common(whole, _within_joins(leaf, whole)))
    if shown.width <= 0 or shown.height <= 0:
        return
    near = [box for box in under if box.overlaps(shown)]
    others = [found for later in laid.above if (found := plan.photo_on(later))]
    photo = plan.photo_on(each)
    lines = [*near, *(_boxes(edges(photo, [])[0]) if photo else ())]
    taken = _dimensions(canvas, plan, each.rect, shown, covers, lines) if each.rect.size != plan.page_size else []
    if photo:
        inside = _common(photo, shown)
        taken += _photo_words(canvas, plan, photo, inside, [*covers, *others, *taken, *near])
        shown = inside if inside.width > 0 and inside.height > 0 else shown
    free = rooms(shown, [*covers, *others])
    if free:
        size = told_size(each.rect.width, each.rect.height, plan.unit)
        part_label(canvas, Label(each.piece.mark, each.piece.id, size), free[0], [*taken, *near])


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


def _dimensions(
    canvas: Canvas, plan: TemplatePlan, rect: Rect, shown: Rect, covers: Sequence[Rect], under: Sequence[Rect]
) -> list[Rect]:
    """Width and height along lines that run over the piece from edge to edge; what they take."""
    if min(shown.width, shown.height) < _LEAST:
        return []
    taken: list[Rect] = []
    free = rooms(shown, covers)
    rows = [room for room in free if room.left == shown.left and room.right == shown.right and room.height >= _LEAST]
    if rows:
        ends = [x for x in (shown.left, shown.right) if x in (rect.left, rect.right)]
        taken += _across(canvas, rows[0], ends, told(rect.width, plan.unit), under)
    columns = [room for room in free if room.top == shown.top and room.bottom == shown.bottom and room.width >= _LEAST]
    if columns:
        ends = [y for y in (shown.top, shown.bottom) if y in (rect.top, rect.bottom)]
        taken += _down(canvas, columns[0], ends, told(rect.height, plan.unit), under)
    return taken


def _across(canvas: Canvas, room: Rect, ends: Sequence[int], figure: str, under: Sequence[Rect]) -> list[Rect]:
    """A dimension line near the top of a room, with strokes at the ends that are edges of the piece; what it takes."""
    y, half = room.top + _FROM_EDGE, width(figure, FIGURES) // 2 + MM
    _line(canvas, (room.left, y), (room.right, y), [(x, y) for x in ends])
    middles = [room.left + room.width * part // 16 for part in _FIGURE_PLACES]
    boxes = [Rect.between(middle - half, y - 4 * MM, middle + half, y) for middle in middles]
    box = next((each for each in boxes if not any(each.overlaps(other) for other in under)), boxes[0])
    write(canvas, figure, (box.left + half, y - MM), FIGURES, align=Align.MIDDLE)
    return [box, Rect(room.left, y, room.width, 0).inset(-MM)]


def _down(canvas: Canvas, room: Rect, ends: Sequence[int], figure: str, under: Sequence[Rect]) -> list[Rect]:
    """A dimension line near the left of a room; see `_across`."""
    x, half = room.left + _FROM_EDGE, width(figure, FIGURES) // 2 + MM
    _line(canvas, (x, room.top), (x, room.bottom), [(x, y) for y in ends])
    middles = [room.top + room.height * part // 16 for part in _FIGURE_PLACES]
    boxes = [Rect.between(x - 4 * MM, middle - half, x, middle + half) for middle in middles]
    box = next((each for each in boxes if not any(each.overlaps(other) for other in under)), boxes[0])
    write(canvas, figure, (x - MM, box.top + half), FIGURES, align=Align.MIDDLE, turned_deg=-90)
    return [box, Rect(x, room.top, 0, room.height).inset(-MM)]


def _line(canvas: Canvas, start: Point, end: Point, ends: Sequence[Point]) -> None:
    """A dimension line; an end that is not one of the piece is broken off: it goes on on the next printed page."""
    canvas.line(start, end, stroked(INK, HAIRLINE))
    slashes = Path()
    for x, y in ends:
        slashes.move(x - _SLASH, y + _SLASH).line(x + _SLASH, y - _SLASH)
    canvas.path(slashes, stroked(INK, 2 * HAIRLINE))
    for point in (start, end):
        if point not in ends:
            break_sign(canvas, point, is_level=start[1] == end[1])


def break_sign(canvas: Canvas, at: Point, *, is_level: bool) -> None:
    """The zigzag at which a dimension line is broken off (ISO 128-2)."""
    steps = ((-2, 0), (-1, -3), (1, 3), (2, 0))
    turned = steps if is_level else [(y, x) for x, y in steps]
    points = [(at[0] + x * _ZIGZAG, at[1] + y * _ZIGZAG) for x, y in turned]
    canvas.path(Path().lines(points), stroked(INK, 2 * HAIRLINE))


def _photo_words(canvas: Canvas, plan: TemplatePlan, photo: Rect, shown: Rect, obstacles: Sequence[Rect]) -> list[Rect]:
    """The size of a photograph near the foot of what is seen of it, wherever there is room."""
    words = _("photograph {size}").format(size=told_size(photo.width, photo.height, plan.unit))
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
