"""The placement: the pages in outline, every piece with its number in gluing order, and tables of distances and photos.

Photos go on last, when all paper is glued: they lie over every piece.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from spreadwright.drawing.callouts import REACH, Callout, Spot, box_size, callouts, draw_callout
from spreadwright.drawing.canvas import Canvas, Paint, filled, stroked
from spreadwright.drawing.cautions import caution, remark
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.leaves import LEAF_HEIGHT, NO_END, Block, bottom_of, leaves
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.placement_distances import Obstacles, distances, draw_distance
from spreadwright.drawing.placement_page import DrawnPage
from spreadwright.drawing.placement_tables import page_name, photo_table, piece_table
from spreadwright.drawing.rooms import rooms
from spreadwright.drawing.theme import BODY, BOLD_LINE, HAIRLINE, INK, MM, QUIET, SMALL, THIN, TITLE
from spreadwright.drawing.type import Align, Style, write
from spreadwright.geometry import Rect, Size
from spreadwright.model import Bench, Recipe
from spreadwright.photos import MattedPhoto
from spreadwright.placing import EQUAL, PlaceStep, in_layers
from spreadwright.words import gettext as _
from spreadwright.words import ngettext

_PAGE = 186 * MM
_MARGIN = 8 * MM
_MEASURE = _PAGE - 2 * _MARGIN
_HEAD = 22 * MM
_FURTHER_HEAD = 20 * MM
_SINGLE = 120 * MM
_HIGHEST = 150 * MM
_MOST_WITH_DISTANCES = 100
"""Among more pieces than this distances could not be told apart; the table has them all."""
_HEADING = Style(face=Typeface.SANS_BOLD, size=TITLE)
_SUBTITLE = Style(size=BODY, colour=QUIET)
_PAPER = Paint(fill=WHITE, stroke=INK, width=THIN)
_PAGE_NAME = Style(face=Typeface.SANS_MEDIUM, size=SMALL, colour=QUIET)


@dataclass(frozen=True, slots=True)
class PlacementPlan:
    """All that the placement shows; the unit of the bench is that of every figure.

    Attributes:
        sizes: Of pieces as they are told, by id, unturned; those of others are as designed.
        rounding: What the marks of the ruler do to the places, in words; empty where they show every distance.
    """

    recipe: Recipe
    steps: Sequence[PlaceStep]
    photos: Sequence[MattedPhoto]
    bench: Bench
    cautions: Sequence[str] = ()
    sizes: Mapping[str, Size] = field(default_factory=dict)
    rounding: str = ""


@dataclass(frozen=True, slots=True)
class Layout:
    """Where everything lies in the picture, ticks.

    Attributes:
        callouts: The labels of the pieces.
        unlabelled: How many pieces are seen but found no room for a label.
        bottom: Below all labels.
    """

    pages: tuple[DrawnPage, ...]
    callouts: tuple[Callout, ...]
    unlabelled: int
    bottom: int


def placement_picture(plan: PlacementPlan, *, prefix: str = "") -> Canvas:
    """The pages side by side, pieces numbered in gluing order, and the tables; 186 mm wide."""
    return _pictures(plan, NO_END, prefix)[0]


def placement_leaves(plan: PlacementPlan, *, prefix: str = "") -> tuple[Canvas, ...]:
    """The same for the printer: leaves of at most 186 × 265 mm, the rest of long tables on further ones."""
    return _pictures(plan, LEAF_HEIGHT, prefix)


def placement_figure(plan: PlacementPlan, *, prefix: str = "") -> Canvas:
    """The pages side by side alone, without heading and tables."""
    found = layout(plan)
    top = min([page.whole.top for page in found.pages] + [callout.box.top for callout in found.callouts]) - MM
    size = Size(_PAGE, found.bottom + 8 * MM - top)
    canvas = Canvas(size, title=plan.recipe.title, prefix=prefix, origin=(0, top))
    _drawing(canvas, plan, found)
    return canvas


def layout(plan: PlacementPlan) -> Layout:
    """The pages as large as they can be: smaller only where labels must stand beside them."""
    if len(plan.steps) <= _MOST_WITH_DISTANCES:  # some of more stand beside the pages anyway
        found = _laid_out(plan, 0, 0)
        if not any(callout.leader for callout in found.callouts):
            return found
    sizes = [box_size(step.number, step.placed.piece.mark, SMALL) for step in plan.steps]
    beside = max(size.width for size in sizes) + REACH
    return _laid_out(plan, beside, max(size.height for size in sizes) + REACH)


def _laid_out(plan: PlacementPlan, beside: int, above: int) -> Layout:
    pages = _pages(plan.recipe, beside, _HEAD + above)
    board = Rect.between(pages[0].whole.left, pages[0].whole.top, pages[-1].whole.right, pages[-1].whole.bottom)
    spots = [spot for page in pages for spot in _spots(page, plan)]
    found = callouts(spots, board)
    unlabelled = sum(bool(spot.rooms) for spot in spots) - len(found)
    return Layout(pages, found, unlabelled, max([board.bottom, *(callout.box.bottom for callout in found)]))


def _pages(recipe: Recipe, beside: int, top: int) -> tuple[DrawnPage, ...]:
    """Two pages touch, as they do in the album; one page stands in the middle."""
    size = recipe.spread.size
    if size is None:
        raise ValueError("a spread of unknown size cannot be drawn; check the recipe first")
    count = len(recipe.spread.pages)
    wide = (_MEASURE - 2 * beside) // count
    wide = min(wide, _HIGHEST * size.width // size.height, _SINGLE if count == 1 else wide)
    left = (_PAGE - count * wide) // 2
    return tuple(
        DrawnPage(name, (left + index * wide, top), wide, size) for index, name in enumerate(recipe.spread.pages)
    )


def _spots(page: DrawnPage, plan: PlacementPlan) -> Iterable[Spot]:
    """Each piece of a page with what is seen of it; the edge of its own photo crosses no room."""
    steps = _steps_on(page, plan)
    photos = dict(_photos_on(page, plan))
    for index, step in enumerate(steps):
        own = photos.get(step.number)
        covers = [page.rect(later.placed.rect) for later in steps[index + 1 :]]
        covers += [photo for number, photo in photos.items() if number != step.number]
        seen = _within(page.rect(step.placed.rect), page.whole)
        found = rooms(seen, covers if own is None else [*covers, own])
        if own is not None:
            found = (*rooms(_within(own, page.whole), covers), *found)
        yield Spot(step.number, step.placed.piece.mark, found)


def _within(rect: Rect, page: Rect) -> Rect:
    left, top = max(rect.left, page.left), max(rect.top, page.top)
    return Rect.between(left, top, min(rect.right, page.right), min(rect.bottom, page.bottom))


def _steps_on(page: DrawnPage, plan: PlacementPlan) -> list[PlaceStep]:
    """From the page upward: what is joined first lies above what it is joined to."""
    return [step for step in in_layers(plan.steps) if step.placed.page == page.name]


def _photos_on(page: DrawnPage, plan: PlacementPlan) -> list[tuple[int, Rect]]:
    """The number of each mat and its photo, as drawn, in the order in which they are glued on."""
    by_mat = {photo.on: photo for photo in plan.photos}
    return [
        (step.number, page.rect(photo.rect_on(step.placed.rect)))
        for step in _steps_on(page, plan)
        if (photo := by_mat.get(step.placed.piece.id)) is not None
    ]


def _pictures(plan: PlacementPlan, height: int, prefix: str) -> tuple[Canvas, ...]:
    found = layout(plan)
    first = found.bottom + 12 * MM
    shared = leaves(_blocks(plan, found), first=first, further=_FURTHER_HEAD, height=height - _MARGIN)
    pictures = []
    for number, leaf in enumerate(shared):
        canvas = _canvas(plan, bottom_of(leaf, first) + _MARGIN, number, prefix)
        if number == 0:
            _drawing(canvas, plan, found)
        for top, block in leaf:
            block.draw(canvas, (_MARGIN, top), _MEASURE)
        pictures.append(canvas)
    return tuple(pictures)


def _canvas(plan: PlacementPlan, height: int, leaf: int, prefix: str) -> Canvas:
    """An empty leaf under its heading."""
    heading = _("Placement, continued") if leaf else _("Placement")
    count = len(plan.steps)
    described = ngettext("{count} piece in gluing order.", "{count} pieces in gluing order.", count).format(count=count)
    title = f"{plan.recipe.title}: {heading}"
    canvas = Canvas(Size(_PAGE, height), title=title, description=described, prefix=prefix)
    canvas.rect(Rect(0, 0, _PAGE, height), filled(WHITE))
    baseline = _MARGIN + TITLE * 7 // 10
    write(canvas, heading, (_MARGIN, baseline), _HEADING)
    write(canvas, plan.recipe.title, (_PAGE - _MARGIN, baseline), _SUBTITLE, align=Align.END)
    return canvas


def _blocks(plan: PlacementPlan, found: Layout) -> list[Block]:
    """What stands under the pages."""
    blocks: list[Block] = [caution(plan.cautions, _MEASURE)] if plan.cautions else []
    if plan.rounding:
        blocks.append(remark(plan.rounding, _MEASURE))
    if found.unlabelled:
        words = ngettext(
            "{count} of the smallest pieces carries no number above; its distances locate it.",
            "{count} of the smallest pieces carry no number above; their distances locate them.",
            found.unlabelled,
        ).format(count=found.unlabelled)
        blocks.append(remark(words, _MEASURE))
    if any(measure.figure == EQUAL for step in plan.steps for measure in step.measures):
        blocks.append(remark(_("In the picture, = marks distances that are equal without being read."), _MEASURE))
    blocks.append(piece_table(plan.steps, plan.bench, plan.sizes))
    photos = photo_table(plan.steps, plan.photos, plan.bench)
    return [*blocks, photos] if photos.rows else blocks


def _drawing(canvas: Canvas, plan: PlacementPlan, found: Layout) -> None:
    for page in found.pages:
        with canvas.group(clip=page.whole):
            _pieces(canvas, page, plan)
        canvas.rect(page.whole, stroked(INK, BOLD_LINE))
        middle = page.whole.left + page.whole.width // 2
        write(canvas, page_name(page.name), (middle, found.bottom + 5 * MM), _PAGE_NAME, align=Align.MIDDLE)
        if len(plan.steps) <= _MOST_WITH_DISTANCES:
            steps, photos = _steps_on(page, plan), [photo for _number, photo in _photos_on(page, plan)]
            for distance in distances(page, steps, Obstacles.around(page, steps, photos, found.callouts)):
                draw_distance(canvas, distance)
    ids = {step.number: step.placed.piece.id for step in plan.steps}
    for callout in found.callouts:
        with canvas.group(names={"piece": ids[callout.number]}):
            draw_callout(canvas, callout)


def _pieces(canvas: Canvas, page: DrawnPage, plan: PlacementPlan) -> None:
    for step in _steps_on(page, plan):
        with canvas.group(names={"piece": step.placed.piece.id}):
            canvas.rect(page.rect(step.placed.rect), _PAPER)
    for _number, photo in _photos_on(page, plan):
        canvas.rect(photo, filled(WHITE))
        canvas.rect(photo, stroked(QUIET, HAIRLINE, dash=(MM, MM)))
