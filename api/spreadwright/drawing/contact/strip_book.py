"""A test strip to print, with words that can be searched."""

from spreadwright.drawing.booklet.plan import Format
from spreadwright.drawing.booklet.press import printed, style, template
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.drawing.canvas import embedded, printable
from spreadwright.drawing.contact.strip import StripPlan, picture_size
from spreadwright.drawing.millimetres import mm
from spreadwright.words import spoken

_SHARE = {Format.A4: (1, 1), Format.LETTER: (9, 10)}
"""Of the size on A4, so that all of them stand on one page of letter paper, which is lower."""


def strip_pdf(plan: StripPlan, paper: Format = Format.A4) -> bytes:
    """The strip as PDF, in the language that is spoken; the same plan gives the same bytes.

    Raises:
        CannotDraw: The library that sets the pages refused.
    """
    size, (share, whole) = picture_size(plan), _SHARE[paper]
    html = template(__package__, "strip.html").render(
        language=spoken(),
        title=printable(plan.title),
        about=printable(plan.about),
        exposures=[
            {
                "picture": embedded(each.jpeg, "image/jpeg"),
                "alt": printable(f"{plan.title}. {each.name}."),
                "name": each.name,
                "sentences": [typeset(sentence) for sentence in each.sentences],
            }
            for each in plan.exposures
        ],
        wide=mm(size.width * share // whole),
        high=mm(size.height * share // whole),
        note=typeset(plan.note),
    )
    return printed(html, style(__package__, "strip.css", paper.size), {}, what="The test strip")
