"""The placement: the pages in outline, every piece with its number in gluing order and its two distances."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.path import Point
from spreadwright.drawing.tables import Table, table
from spreadwright.drawing.theme import ACCENT, BODY, BOLD_LINE, HAIRLINE, INK, MM, QUIET, SMALL, THIN, TITLE
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size, uncovered
from spreadwright.lengths import Unit, size_text, with_unit
from spreadwright.model import Edge, Offset, Recipe
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlacedPiece, PlaceStep

_PAGE = 186 * MM
_MARGIN = 8 * MM
_HEAD = 22 * MM
_SINGLE = 120 * MM
_MARK = Style(face=Typeface.SANS_BOLD, size=BODY)
_SMALL_MARK = Style(face=Typeface.SANS_BOLD, size=SMALL)
_NUMBER = Style(face=Typeface.SANS_BOLD, size=SMALL, colour=ACCENT, is_tabular=True)
_HEADING = Style(face=Typeface.SANS_BOLD, size=TITLE)
_SUBTITLE = Style(size=BODY, colour=QUIET)
_PAGE_NAME = Style(face=Typeface.SANS_MEDIUM, size=SMALL, colour=QUIET)


@dataclass(frozen=True, slots=True)
class PlacementPlan:
    """All that the placement shows; `unit` is the bench's."""

    recipe: Recipe
    steps: Sequence[PlaceStep]
    photos: Sequence[MattedPhoto]
    unit: Unit


@dataclass(frozen=True, slots=True)
class _Page:
    """One page in the picture: where it lies and how much smaller it is drawn."""

    name: str
    at: Point
    drawn_width: int
    size: Size

    def rect(self, rect: Rect) -> Rect:
        left, top = self._scaled(rect.left), self._scaled(rect.top)
        right, bottom = self._scaled(rect.right), self._scaled(rect.bottom)
        return Rect.between(self.at[0] + left, self.at[1] + top, self.at[0] + right, self.at[1] + bottom)

    def _scaled(self, length: int) -> int:
        return length * self.drawn_width // self.size.width


def placement_picture(plan: PlacementPlan, *, prefix: str = "") -> Canvas:
    """The pages side by side, pieces numbered in gluing order, and a table of distances; 186 mm wide."""
    pages = _pages(plan.recipe)
    bottom = max(page.rect(Rect.at(0, 0, page.size)).bottom for page in pages) + 12 * MM
    content = _table(plan)
    size = Size(_PAGE, bottom + content.height + _MARGIN)
    title = f"{plan.recipe.title}: placement"
    canvas = Canvas(size, title=title, description=f"{len(plan.steps)} pieces in gluing order.", prefix=prefix)
    canvas.rect(Rect.at(0, 0, size), filled(WHITE))
    baseline = _MARGIN + TITLE * 7 // 10
    write(canvas, "Placement", (_MARGIN, baseline), _HEADING)
    write(canvas, plan.recipe.title, (_PAGE - _MARGIN, baseline), _SUBTITLE, align=Align.END)
    photos = {photo.on: photo for photo in plan.photos}
    for page in pages:
        _page(canvas, page, [step for step in plan.steps if step.placed.page == page.name], photos)
    table(canvas, content, (_MARGIN, bottom), total=_PAGE - 2 * _MARGIN)
    return canvas


def _pages(recipe: Recipe) -> tuple[_Page, ...]:
    """Two pages touch, as they do in the album; one page stands in the middle."""
    size = recipe.spread.size
    if size is None:
        raise ValueError("a spread of unknown size cannot be drawn; check the recipe first")
    count = len(recipe.spread.pages)
    wide = (_PAGE - 2 * _MARGIN) // count if count > 1 else _SINGLE
    left = (_PAGE - count * wide) // 2
    return tuple(
        _Page(name, (left + index * wide, _HEAD), wide, size) for index, name in enumerate(recipe.spread.pages)
    )


def _page(canvas: Canvas, page: _Page, steps: Sequence[PlaceStep], photos: Mapping[str, MattedPhoto]) -> None:
    whole = page.rect(Rect.at(0, 0, page.size))
    with canvas.group(clip=whole):
        for step in steps:
            _piece(canvas, page.rect(step.placed.rect), page, step.placed, photos)
    for index, step in enumerate(steps):
        above = [page.rect(later.placed.rect) for later in steps[index + 1 :]]
        room = _label_room(page.rect(step.placed.rect), above)
        if room:
            _label(canvas, step, room)
    canvas.rect(whole, stroked(INK, BOLD_LINE))
    name = "page" if page.name == "page" else f"{page.name} page"
    write(canvas, name, (whole.left + whole.width // 2, whole.bottom + 5 * MM), _PAGE_NAME, align=Align.MIDDLE)


def _piece(canvas: Canvas, drawn: Rect, page: _Page, placed: PlacedPiece, photos: Mapping[str, MattedPhoto]) -> None:
    canvas.rect(drawn, filled(WHITE))
    canvas.rect(drawn, stroked(INK, THIN))
    photo = photos.get(placed.piece.id)
    if photo:
        canvas.rect(page.rect(photo.rect_on(placed.rect)), stroked(QUIET, HAIRLINE, dash=(MM, MM)))


def _label_room(drawn: Rect, above: Sequence[Rect]) -> Rect | None:
    """The roomiest rectangle of the piece that stays visible; None when all of it is hidden."""
    free = uncovered(drawn, above)
    return max(free, key=lambda rect: (min(rect.width, rect.height), rect.area), default=None)


def _label(canvas: Canvas, step: PlaceStep, room: Rect) -> None:
    """Number and mark side by side, turned in a narrow upright strip."""
    number, mark = str(step.number), step.placed.piece.mark
    style = _MARK if min(room.width, room.height) > 8 * MM else _SMALL_MARK
    gap = MM
    run = width(number, _NUMBER) + gap + width(mark, style)
    turned = room.width < run + MM and room.height > room.width
    with canvas.group(at=(room.left + room.width // 2, room.top + room.height // 2), turned_deg=-90 if turned else 0):
        write(canvas, number, (-run // 2, style.size // 3), _NUMBER)
        write(canvas, mark, (run // 2, style.size // 3), style, align=Align.END)


def _table(plan: PlacementPlan) -> Table:
    rows = tuple(_row(step, plan) for step in plan.steps)
    return Table(("No.", "Piece", "", "Size", "Page", "Across", "Down"), rows)


def _row(step: PlaceStep, plan: PlacementPlan) -> tuple[str, ...]:
    placed = step.placed
    name = placed.piece.id + (", turned" if placed.is_turned else "")
    size = size_text(placed.rect.width, placed.rect.height, plan.unit)
    across, down = _distance(placed.across, plan.unit), _distance(placed.down, plan.unit)
    return (str(step.number), placed.piece.mark, name, size, placed.page, across, down)


def _distance(offset: Offset, unit: Unit) -> str:
    distance = offset.distance or 0
    if offset.edge in (Edge.CENTRE, Edge.MIDDLE) and distance == 0:
        return "centred"
    if distance == 0:
        return f"flush {offset.edge}"
    return f"{with_unit(distance, unit)} from {offset.edge}"
