"""The paper that contact sheets and test strips are printed on."""

from spreadwright.drawing.booklet.families import family
from spreadwright.drawing.booklet.plan import Format
from spreadwright.drawing.booklet.press import text_of

_PAGES = {Format.A4: "210mm 297mm", Format.LETTER: "8.5in 11in"}


def style(name: str, paper: Format) -> str:
    """A style sheet of this package for one paper."""
    return (
        text_of(__package__, name)
        .replace("PAGE_SIZE", _PAGES[paper])
        .replace("SANS", family("sans"))
        .replace("TEXT", family("text"))
    )
