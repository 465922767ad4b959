"""The pages with ruler and adhesive: cautions, the whole in numbers, every piece in gluing order."""

from collections.abc import Iterator, Sequence

from spreadwright.drawing.booklet.blocks import Block, Entry, Figure, Section, Steps, cautioned, lead
from spreadwright.drawing.booklet.page import Distance, PlacePicture, place_picture
from spreadwright.drawing.booklet.plan import BookletPlan
from spreadwright.drawing.booklet.typeset import picture, typeset
from spreadwright.drawing.placement import placement_figure
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import nearest, with_unit
from spreadwright.model import Bench, Edge, Offset
from spreadwright.placing import PlaceStep
from spreadwright.words import gettext as _


def before_gluing(plan: BookletPlan) -> Section:
    """Cautions first, then the whole placement."""
    alt = _("All pages with their pieces; the small figure is the place in gluing order, the letter is the mark.")
    figure = picture(placement_figure(plan.placement, prefix="o-"), alt)
    how = _("Each piece has its place in gluing order, then its mark. Photographs are dashed; they come last.")
    return Section(
        _("Before you glue"),
        (cautioned(plan.glue_cautions), Figure("overview", figure, typeset(how))),
        is_new_page=True,
    )


def pages(plan: BookletPlan) -> Iterator[Section]:
    """Each page with its steps."""
    size = plan.recipe.spread.size
    titles = {"page": _("Gluing the page"), "left": _("Gluing the left page"), "right": _("Gluing the right page")}
    for page in plan.recipe.spread.pages:
        steps = [step for step in plan.places if step.placed.page == page]
        if steps and size is not None:
            title = titles[page]
            how = _("The hatched piece is the next one; distances are from edge to edge.")
            entries = tuple(_entry(plan, step, steps[:index], size) for index, step in enumerate(steps))
            blocks: tuple[Block, ...] = (lead(how), Steps("places", entries))
            yield Section(title, blocks)


def _entry(plan: BookletPlan, step: PlaceStep, before: Sequence[PlaceStep], page: Size) -> Entry:
    mark = step.placed.piece.mark
    alt = _("Step {number}: piece {mark} on its page, with its distances.").format(number=step.number, mark=mark)
    shown = PlacePicture(
        page,
        tuple(each.placed.rect for each in before),
        step.placed.rect,
        mark,
        tuple(_distances(step, plan.bench, page)),
        flush=tuple(_flush(step, page)),
        title=alt,
    )
    drawn = picture(place_picture(shown, prefix=f"g{step.number}-"), alt)
    return Entry(str(step.number), drawn, typeset(""), (typeset(step.sentence),))


def _distances(step: PlaceStep, bench: Bench, page: Size) -> Iterator[Distance]:
    rect = step.placed.rect
    if rect.size == page:
        return
    yield from _distance(step.placed.across, (rect.left, rect.right), page.width, bench)
    yield from _distance(step.placed.down, (rect.top, rect.bottom), page.height, bench)


def _distance(offset: Offset, ends: tuple[int, int], page: int, bench: Bench) -> Iterator[Distance]:
    is_across = offset.edge in (Edge.LEFT, Edge.RIGHT, Edge.CENTRE)
    length = abs(offset.distance or 0)
    figure = with_unit(nearest(length, bench.ruler.graduation), bench.unit)
    if offset.edge in (Edge.CENTRE, Edge.MIDDLE):
        if length:
            middle, own = page // 2, (ends[0] + ends[1]) // 2
            yield Distance(is_across, min(middle, own), max(middle, own), figure)
        elif ends[0] > 0:
            yield Distance(is_across, 0, ends[0], "=")
            yield Distance(is_across, ends[1], page, "=")
    elif length:
        is_first = offset.edge in (Edge.LEFT, Edge.TOP)
        yield Distance(is_across, 0 if is_first else ends[1], ends[0] if is_first else page, figure)


def _flush(step: PlaceStep, page: Size) -> Iterator[Rect]:
    """The edges of the piece that lie on an edge of the page because the step says so."""
    rect, edges = (
        step.placed.rect,
        {offset.edge for offset in (step.placed.across, step.placed.down) if not offset.distance},
    )
    if rect.size == page:
        return
    if Edge.LEFT in edges:
        yield Rect.between(0, rect.top, 0, rect.bottom)
    if Edge.RIGHT in edges:
        yield Rect.between(page.width, rect.top, page.width, rect.bottom)
    if Edge.TOP in edges:
        yield Rect.between(rect.left, 0, rect.right, 0)
    if Edge.BOTTOM in edges:
        yield Rect.between(rect.left, page.height, rect.right, page.height)
