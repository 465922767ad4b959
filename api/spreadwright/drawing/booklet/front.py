"""The cover: the spread, who made it, and everything that is needed."""

from collections import Counter
from collections.abc import Iterator

from markupsafe import Markup

from spreadwright.drawing.booklet.album import Picture
from spreadwright.drawing.booklet.blocks import Block, Figure, Section, grid, listed, paragraphs
from spreadwright.drawing.booklet.board import board_for
from spreadwright.drawing.booklet.code import code_picture
from spreadwright.drawing.booklet.plan import BookletPlan
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Size
from spreadwright.lengths import told, told_size, told_up
from spreadwright.model import Adhesive, Bench, Kind, Measures, Side, Wetness
from spreadwright.words import gettext as _
from spreadwright.words import ngettext, title

PREVIEW = Size(186 * MM, 104 * MM)
"""The spread on the cover is no larger, ticks."""


def preview(plan: BookletPlan) -> Block:
    """The spread as it will lie on the table."""
    alt = _("The finished pages of “{title}”, as they will lie on the table.").format(title=plan.recipe.title)
    size = plan.preview.size
    wide = min(PREVIEW.width, PREVIEW.height * size.width // size.height)
    return Figure("preview", Picture(plan.preview, alt, wide))


def about(plan: BookletPlan) -> Block:
    """What it is, who made it, and under which licence."""
    recipe, lines = plan.recipe, [plan.recipe.summary]
    if plan.colourway is None:
        lines.append(_("The tints in the picture stand for papers of your choice."))
    if recipe.authors:
        lines.append(_("Designed by {authors}.").format(authors=", ".join(recipe.authors)))
    if recipe.licence:
        lines.append(_licence(recipe.licence))
    return paragraphs(*lines)


def _licence(licence: str) -> str:
    """Whether the designer is to be named is said only of licences that ask for it."""
    if licence.upper().startswith("CC-BY"):
        return _("Licence: {licence}. Name the designer when you pass it on.").format(licence=licence)
    return _("Licence: {licence}.").format(licence=licence)


def code(plan: BookletPlan) -> Block | None:
    """The square code of the recipe's address, when it has one."""
    if not plan.address:
        return None
    alt = _("A square code that leads to the recipe: {address}").format(address=plan.address)
    return Figure("code", Picture(code_picture(plan.address, alt), alt), Markup.escape(plan.address))


def needs(plan: BookletPlan) -> Section:
    """Papers, tools and prints."""
    blocks = (_papers(plan), listed([*_tools(plan), *_prints(plan)]))
    return Section(_("What you need"), blocks, level=2)


def _papers(plan: BookletPlan) -> Block:
    counted = Counter((each.role, each.size) for sheet in plan.sheets for each in sheet.sheets)
    heads = (_("Used for"), _("Paper"), _("Sheets"), _("Size of each"))
    kinds = {Kind.PLAIN: _("plain"), Kind.PATTERNED: _("patterned"), Kind.ANY: _("any")}
    rows = [
        (
            _role(plan, role),
            _paper(plan, role, kinds),
            str(count),
            told_size(size.width, size.height, plan.bench.unit) if size else "",
        )
        for (role, size), count in counted.items()
    ]
    return grid(heads, rows, kind="papers")


def _role(plan: BookletPlan, role_id: str) -> str:
    role = plan.recipe.role(role_id)
    return title(role.title if role else "") or role_id


def _paper(plan: BookletPlan, role: str, kinds: dict[Kind, str]) -> str:
    """The paper of a role by name, so that nothing hangs on its colour; else which kind is wanted."""
    if plan.colourway is None:
        wanted = plan.recipe.role(role)
        return kinds[wanted.kind if wanted else Kind.ANY]
    choice = plan.colourway.choice(role)
    named = _("{paper}, reverse side") if choice.side is Side.BACK else "{paper}"
    return named.format(paper=title(choice.paper.title))


def _tools(plan: BookletPlan) -> Iterator[str]:
    bench = plan.bench
    if plan.steps:
        yield _trimmer(bench, board_for(plan.steps).deep)
    if bench.ruler.width:
        yield _("A ruler {width} wide.").format(width=told(bench.ruler.width, bench.unit))
    else:
        yield _("A ruler.")
    for adhesive in plan.adhesives:
        yield _adhesive(adhesive, bench)


def _trimmer(bench: Bench, longest: int) -> str:
    """What it must be able to do: `longest` is the longest cut of the recipe, ticks."""
    told = {
        Measures.KEPT: _("An arm trimmer that cuts at least {length}; its scale shows the part that stays."),
        Measures.FALLING: _("An arm trimmer that cuts at least {length}; its scale shows the part that falls."),
    }
    return told[bench.trimmer.measures].format(length=told_up(longest, bench.unit))


def _adhesive(adhesive: Adhesive, bench: Bench) -> str:
    said = {
        Wetness.DRY: _("Dry adhesive tape, {width} wide, photo-safe."),
        Wetness.LIQUID: _("Liquid glue that lays a bead of {width}, photo-safe."),
    }
    return said[adhesive.wetness].format(width=told(adhesive.width, bench.unit))


def _prints(plan: BookletPlan) -> Iterator[str]:
    count = len(plan.photos)
    if count:
        told = ngettext(
            "{count} photograph; its size is in the table of photographs.",
            "{count} photographs; their sizes are in the table of photographs.",
            count,
        )
        yield told.format(count=count)
