"""The templates put together: a first page that says how, and every tile on a page of its own."""

from markupsafe import Markup

from spreadwright.drawing.booklet.album import Album, Picture
from spreadwright.drawing.booklet.press import printed, style, template
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.millimetres import mm
from spreadwright.drawing.templates.plan import FRONT, TemplatePlan, leaves_of
from spreadwright.drawing.templates.sheet_map import line_signs, scale_picture, sheet_map
from spreadwright.drawing.templates.tile_page import page_of_pages, print_advice, tile_page
from spreadwright.drawing.theme import MM
from spreadwright.lengths import told_size
from spreadwright.words import gettext as _
from spreadwright.words import ngettext, spoken

_FRONT_MARGINS = 22 * MM
"""Above and below the first page."""


def templates_pdf(plan: TemplatePlan) -> bytes:
    """The templates as PDF, in the language that is spoken; the same plan gives the same bytes.

    Raises:
        CannotDraw: The library that sets the pages refused.
    """
    album = Album()
    html = templates_html(plan, album)
    return printed(html, _style(plan), album.pictures, what="The templates")


def tile_pages(plan: TemplatePlan) -> tuple[Canvas, ...]:
    """The pictures of all printed pages but the first."""
    return tuple(tile_page(plan, leaf) for leaf in leaves_of(plan))


def templates_html(plan: TemplatePlan, album: Album) -> str:
    """All pages as one document, its pictures in an album."""
    return template(__package__, "templates.html").render(
        language=spoken(),
        recipe=plan.recipe,
        is_lying=plan.is_lying,
        title=_("{title}: templates").format(title=plan.recipe.title),
        subject=_about(plan),
        about=typeset(_about(plan)),
        caution=_("Caution"),
        cautions=[typeset(line) for line in plan.cautions],
        steps=[typeset(line) for line in _steps(plan)],
        scale=_shown(album, scale_picture()),
        map=_shown(album, sheet_map(plan)),
        signs=_shown(album, line_signs(has_joins=len(plan.tiling.tiles) > 1)),
        number=page_of_pages(FRONT, plan.total),
        leaves=[{"title": canvas.title, "picture": _shown(album, canvas)} for canvas in tile_pages(plan)],
    )


def _shown(album: Album, canvas: Canvas) -> Markup:
    return album.shown(Picture(canvas, canvas.title))


def _about(plan: TemplatePlan) -> str:
    size = plan.page_size
    count = len(plan.tiling.tiles) * len(plan.pages)
    told = ngettext(
        "The placement at full size on {count} sheet of paper; each page of the album is {size}.",
        "The placement at full size on {count} sheets of paper; each page of the album is {size}.",
        count,
    )
    return told.format(count=count, size=told_size(size.width, size.height, plan.unit))


def _steps(plan: TemplatePlan) -> list[str]:
    steps = [print_advice()]
    if len(plan.tiling.tiles) > 1:
        steps.append(
            _(
                "Cut each printed page along its broken line at the left and at the top. Lay it over its neighbours so"
                " that marks of the same name lie on one another, and tape it down."
            )
        )
    steps.append(
        _(
            "Lay the template over the page of the album and prick the corners of the pieces through with a needle, or"
            " use it to lay all pieces out before you glue."
        )
    )
    return steps


def _style(plan: TemplatePlan) -> str:
    """The style sheet for the paper as it lies."""
    paper = plan.tiling.paper
    front = mm(paper.height - _FRONT_MARGINS)
    return style(__package__, "templates.css", paper, FRONT_HEIGHT=f"{front}mm")
