"""The page of the photographs: which size goes on which mat, and from which print it is trimmed."""

from markupsafe import Markup

from spreadwright.drawing.booklet.blocks import Section, grid, lead
from spreadwright.drawing.booklet.plan import BookletPlan, PhotoLine
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.drawing.placement_tables import page_name
from spreadwright.lengths import nearest, size_text, with_unit
from spreadwright.model import Bench
from spreadwright.words import gettext as _

_MOST_PRINTS = 2


def photographs(plan: BookletPlan) -> Section:
    """A row for each photograph, in document order."""
    heads = (
        _("Mat"),
        _("Page"),
        _("Trim to"),
        _("Border"),
        _("From a print of (share cut off)"),
        _("Pixels at 300, at 150 per inch"),
    )
    rows = [_row(line, plan.bench) for line in plan.photos]
    last = _("Photographs go on last, when all paper is glued and dry. Sizes are to the nearest mark of your ruler.")
    return Section(_("Photographs"), (lead(last), grid(heads, rows, kind="photos")))


def _row(line: PhotoLine, bench: Bench) -> tuple[str, ...]:
    step, unit = bench.ruler.graduation, bench.unit
    prints = line.prints[:_MOST_PRINTS] or (_("none that is usual"),)
    return (
        Markup("{} <span class='name'>{}</span>").format(line.mark, line.piece),
        page_name(line.page),
        size_text(nearest(line.size.width, step), nearest(line.size.height, step), unit),
        with_unit(nearest(line.border, step), unit),
        _lines(*prints),
        _lines(*line.pixels),
    )


def _lines(*words: str) -> Markup:
    return Markup("<br>").join(typeset(each) for each in words)
