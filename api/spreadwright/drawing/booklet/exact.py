"""The page on exactness: how far sizes may come out on this bench."""

from collections.abc import Iterator

from spreadwright.drawing.booklet.blocks import Block, Section, grid, lead, listed
from spreadwright.drawing.booklet.plan import BookletPlan
from spreadwright.lengths import with_unit
from spreadwright.tolerance import amount
from spreadwright.words import gettext as _


def exactness(plan: BookletPlan) -> Section:
    """A row for the pieces that are alike in it."""
    return Section(_("How exact it will be"), tuple(_blocks(plan)), level=2)


def _blocks(plan: BookletPlan) -> Iterator[Block]:
    told = _("Each cut may lie up to {accuracy} beside its reading. At worst, pieces come out larger or smaller by:")
    yield lead(told.format(accuracy=with_unit(plan.bench.trimmer.accuracy, plan.bench.unit)))
    heads = (_("Pieces"), _("Width"), _("Height"))
    alike: dict[tuple[int, int], list[str]] = {}
    for each in plan.exactness:
        alike.setdefault((each.width, each.height), []).append(each.piece.mark)
    rows = [(", ".join(marks), _off(plan, width), _off(plan, height)) for (width, height), marks in alike.items()]
    yield grid(heads, rows, kind="exactness")
    if plan.watched:
        yield listed(plan.watched)


def _off(plan: BookletPlan, length: int) -> str:
    return f"± {amount(length, plan.bench.unit)}" if length else _("as bought")
