"""The booklet put together: sections, page by page, as HTML with its style sheet, and printed."""

from collections.abc import Callable, Iterator

from spreadwright.drawing.booklet import cuts, exact, front, gluing, prints
from spreadwright.drawing.booklet.album import Album
from spreadwright.drawing.booklet.blocks import Section
from spreadwright.drawing.booklet.plan import BookletPlan, Format
from spreadwright.drawing.booklet.press import printed, style, template
from spreadwright.words import gettext as _
from spreadwright.words import spoken, title


def booklet_pdf(
    plan: BookletPlan,
    paper: Format,
    *,
    told: Callable[[str], None] = lambda _: None,
    most_pages: int | None = None,
) -> bytes:
    """The booklet as PDF, in the language that is spoken.

    Args:
        plan: What it shows.
        paper: What it is printed on.
        told: Is told what is done next.
        most_pages: Are printed; any number when None.

    Raises:
        PrintTooLong: There are more.
        CannotDraw: The library that sets the pages refused.
    """
    told("drawing the steps")
    album = Album()
    html = booklet_html(plan, album)
    return printed(html, _style(paper), album.pictures, told=told, most_pages=most_pages)


def booklet_html(plan: BookletPlan, album: Album) -> str:
    """All pages as one document, its pictures in an album."""
    return template(__package__, "booklet.html").render(
        language=spoken(),
        shown=album.shown,
        recipe=plan.recipe,
        subject=plan.recipe.summary,
        made_for=_made_for(plan),
        caution=_("Caution"),
        preview=front.preview(plan),
        about=front.about(plan),
        code=front.code(plan),
        sections=list(_sections(plan)),
    )


def _made_for(plan: BookletPlan) -> str:
    if plan.papers:
        told = _("For the bench “{bench}”, in the papers “{papers}”.")
        return told.format(bench=title(plan.bench.title), papers=title(plan.papers))
    return _("For the bench “{bench}”.").format(bench=title(plan.bench.title))


def _sections(plan: BookletPlan) -> Iterator[Section]:
    yield front.needs(plan)
    yield cuts.before_cutting(plan)
    yield from cuts.sheets(plan)
    yield cuts.piles(plan)
    if plan.exactness:
        yield exact.exactness(plan)
    yield gluing.before_gluing(plan)
    yield from gluing.pages(plan)
    if plan.photos:
        yield prints.photographs(plan)


def _style(paper: Format) -> str:
    """The style sheet for a paper, page numbers in the language that is spoken."""
    told = _("{page} of {pages}")
    before, __, rest = told.partition("{page}")
    between, __, after = rest.partition("{pages}")
    counted = f"{_quoted(before)} counter(page) {_quoted(between)} counter(pages) {_quoted(after)}"
    return style(__package__, "booklet.css", paper.size, PAGE_NUMBER=counted)


def _quoted(words: str) -> str:
    """A string of CSS."""
    return '"' + "".join(c if c.isalnum() or c == " " else f"\\{ord(c):x} " for c in words) + '"'
