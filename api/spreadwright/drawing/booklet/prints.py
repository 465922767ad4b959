"""The page of the photographs: which size goes on which mat."""

from spreadwright.drawing.booklet.blocks import Section, grid, paragraphs
from spreadwright.drawing.booklet.cuts import page_name
from spreadwright.drawing.booklet.plan import BookletPlan
from spreadwright.lengths import size_text, with_unit
from spreadwright.words import gettext as _


def photographs(plan: BookletPlan) -> Section:
    """A row for each photograph, in the order of its mats."""
    unit = plan.bench.unit
    by_mat = {photo.on: photo for photo in plan.photos}
    rows = []
    for step in plan.places:
        photo = by_mat.get(step.placed.piece.id)
        if photo is not None:
            rect = photo.rect_on(step.placed.rect)
            mark, page = step.placed.piece.mark, page_name(step.placed.page)
            rows.append(
                (
                    mark,
                    step.placed.piece.id,
                    page,
                    size_text(rect.width, rect.height, unit),
                    with_unit(photo.border, unit),
                )
            )
    heads = (_("Mat"), "", _("Page"), _("Trim the photograph to"), _("Border all round"))
    how = _("Photographs go on last, when all paper is glued and dry.")
    return Section(_("Photographs"), (paragraphs(how), grid(heads, rows)))
