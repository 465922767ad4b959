"""The pages with ruler and adhesive: cautions, the whole in numbers, every piece in gluing order."""

from collections.abc import Iterator, Sequence

from spreadwright.drawing.booklet.album import Picture
from spreadwright.drawing.booklet.blocks import (
    Block,
    Entry,
    Figure,
    Section,
    Steps,
    cautioned,
    lead,
    listed,
    paragraphs,
    watch_out,
)
from spreadwright.drawing.booklet.page import NARROW, WIDTH, Distance, Laid, PlacePicture, place_picture
from spreadwright.drawing.booklet.plan import BookletPlan
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.drawing.placement import placement_figure
from spreadwright.geometry import Rect
from spreadwright.model import Axis
from spreadwright.placing import PlacedPiece, PlaceStep
from spreadwright.words import gettext as _

_MANY = 40
"""More steps than this on one page are shown smaller."""


def before_gluing(plan: BookletPlan) -> Section:
    """Cautions first, then what sticks what, then the whole placement."""
    alt = _("All pages with their pieces; the small figure is the place in gluing order, the letter is the mark.")
    figure = Picture(placement_figure(plan.placement, prefix="o-"), alt)
    how = _("Each piece has its place in gluing order, then its mark. Photographs are dashed; they come last.")
    overview = Figure("overview", figure, typeset(how))
    rounding = paragraphs(plan.glue_rounding)
    blocks = (cautioned(plan.glue_cautions), rounding, listed(plan.adhesive), *watch_out(plan.glue_doubts), overview)
    return Section(_("Before you glue"), blocks)


def pages(plan: BookletPlan) -> Iterator[Section]:
    """Each page with its steps."""
    titles = {"page": _("Gluing the page"), "left": _("Gluing the left page"), "right": _("Gluing the right page")}
    for page in plan.recipe.spread.pages:
        steps = [step for step in plan.places if step.placed.page == page]
        if steps:
            how = _(
                "The hatched piece is the next one. A thick bar is an edge that lies flush or in line; "
                "= marks equal distances."
            )
            blocks: tuple[Block, ...] = (lead(how), _steps(steps))
            yield Section(titles[page], blocks)


def _steps(steps: Sequence[PlaceStep]) -> Steps:
    """Three abreast, or four smaller ones where there are many."""
    if len(steps) <= _MANY:
        return Steps("places", tuple(_entry(step, WIDTH) for step in steps))
    return Steps("places narrow", tuple(_entry(step, NARROW) for step in steps), across=4)


def _entry(step: PlaceStep, width: int) -> Entry:
    return Entry(str(step.number), place_drawn(step, width), typeset(""), tuple(map(typeset, step.sentences)))


def place_drawn(step: PlaceStep, width: int = WIDTH) -> Picture:
    """The picture of one piece on its page."""
    mark = step.placed.piece.mark
    alt = _("Step {number}: piece {mark} on its page, with its distances.").format(number=step.number, mark=mark)
    return Picture(place_picture(_picture(step, alt, width), prefix=f"g{step.number}-"), alt)


def _picture(step: PlaceStep, alt: str, width: int) -> PlacePicture:
    """What lies on the table at this step: the page, or the piece to which this one is joined."""
    board = step.located.board
    carried = [each for each in step.located.lies if _is_carried(each, step.placed)]
    return PlacePicture(
        page=board.size,
        down=tuple(_laid(board, each) for each in _below(step) if each not in carried),
        piece=_on(board, step.placed.rect),
        mark=step.placed.piece.mark,
        distances=tuple(_distances(step)),
        carried=tuple(_on(board, each.rect) for each in carried),
        flush=tuple(_on(board, line) for line in step.touches),
        title=alt,
        width=width,
    )


def _below(step: PlaceStep) -> tuple[PlacedPiece, ...]:
    """What lies there already, the piece that is the board itself before all."""
    base, lies = step.located.base, step.located.lies
    return lies if base is None else (base, *lies)


def _laid(board: Rect, each: PlacedPiece) -> Laid:
    """The page that lies under everything needs no name; a piece does."""
    is_page = each.rect == board and each.layer == 1
    return Laid(_on(board, each.rect), "" if is_page else each.piece.mark)


def _on(board: Rect, rect: Rect) -> Rect:
    """A place on the page, from the top left corner of the board."""
    return rect.moved(-board.left, -board.top)


def _is_carried(each: PlacedPiece, by: PlacedPiece) -> bool:
    return each.layer > by.layer and by.rect.contains(each.rect)


def _distances(step: PlaceStep) -> Iterator[Distance]:
    for measure in step.measures:
        is_across = measure.axis is Axis.COLUMNS
        board = step.located.board
        start = board.left if is_across else board.top
        yield Distance(is_across, measure.start - start, measure.end - start, measure.figure)
