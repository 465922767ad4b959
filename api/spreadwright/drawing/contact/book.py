"""A contact sheet to print: pages of two or three spreads abreast, words as words, a bookmark for each spread."""

from fractions import Fraction
from typing import Any

from markupsafe import Markup, escape

from spreadwright.drawing.booklet.plan import Format
from spreadwright.drawing.booklet.press import printed, style, template
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.drawing.canvas import embedded, printable
from spreadwright.drawing.contact.frame import ContactSheet, Frame, frame_edge, frame_jpeg, frame_size, papers_line
from spreadwright.drawing.millimetres import mm
from spreadwright.drawing.theme import MM
from spreadwright.lengths import TICKS, Unit
from spreadwright.words import spoken

_WIDE, _NARROW = 90 * MM, 59 * MM
"""Of a column of two or of three, ticks."""
_PIXELS_PER_INCH = 190


def contact_pdf(sheet: ContactSheet, paper: Format = Format.A4) -> bytes:
    """The contact sheet as PDF, in the language that is spoken; the same sheet gives the same bytes.

    Raises:
        CannotDraw: The library that sets the pages refused.
    """
    return printed(contact_html(sheet), style(__package__, "contact.css", paper.size), {}, what="The contact sheet")


def contact_html(sheet: ContactSheet) -> str:
    """All of it as one page of HTML, its pictures within it."""
    columns, room = (2, _WIDE) if sheet.has_wide else (3, _NARROW)
    shown = [_shown(frame, Fraction(room, sheet.widest)) for frame in sheet.frames]
    return template(__package__, "contact.html").render(
        language=spoken(),
        sheet=sheet,
        about=typeset(sheet.about),
        notes=[typeset(note) for note in sheet.notes],
        shape="wide" if sheet.has_wide else "narrow",
        rows=[shown[start : start + columns] for start in range(0, len(shown), columns)],
        left_out=[{"name": each.name, "reason": typeset(each.reason)} for each in sheet.left_out],
    )


def _shown(frame: Frame, scale: Fraction) -> dict[str, Any]:
    """What the page says of one frame, whose picture is so much smaller than it is."""
    size = frame_size(frame)
    wide, high, edge = (round(length * scale) for length in (size.width, size.height, frame_edge(frame)))
    jpeg = frame_jpeg(frame, wide * _PIXELS_PER_INCH // TICKS[Unit.INCH])
    papers = papers_line(frame)
    return {
        "number": frame.number,
        "title": printable(frame.title),
        "bookmark": printable(f"{frame.number} {frame.title}, {frame.score}"),
        "picture": embedded(jpeg, "image/jpeg"),
        "alt": printable(f"{frame.layout.recipe.title}. {papers}."),
        "wide": mm(wide),
        "high": mm(high),
        "edge": mm(-edge),
        "score": frame.score,
        "papers": typeset(papers),
        "reason": typeset(frame.reason),
        "id": _breaking(frame.id),
    }


def _breaking(name: str) -> Markup:
    """An id that may be broken after its full stops, and is whole again when it is copied."""
    return escape(printable(name)).replace(".", Markup(".<wbr>"))
