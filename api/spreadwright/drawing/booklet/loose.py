"""Pictures printed as they are, each a page of its own size: their words can be found, marked and read aloud."""

from collections.abc import Sequence

from spreadwright.drawing.booklet.album import Album, Picture
from spreadwright.drawing.booklet.press import printed, template
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.millimetres import mm
from spreadwright.geometry import Size
from spreadwright.words import spoken


def loose_pages_pdf(pages: Sequence[Canvas], title: str, authors: Sequence[str] = ()) -> bytes:
    """Pictures as one PDF at full size, in the language that is spoken; the same pictures give the same bytes.

    Args:
        pages: In order; each is named by its title.
        title: What they are together.
        authors: Whose they are.

    Raises:
        CannotDraw: The library that sets the pages refused.
    """
    album, sizes = Album(), list(dict.fromkeys(page.size for page in pages))
    html = template(__package__, "loose.html").render(
        language=spoken(),
        title=title,
        authors=authors,
        pages=[(sizes.index(page.size), page.title, album.shown(Picture(page, page.title))) for page in pages],
    )
    return printed(html, _style(sizes), album.pictures, what="The PDF")


def _style(sizes: Sequence[Size]) -> str:
    pages = (
        f"@page of-{number} {{ size: {mm(size.width)}mm {mm(size.height)}mm; margin: 0; }}"
        f" .of-{number} {{ page: of-{number}; }}"
        for number, size in enumerate(sizes)
    )
    common = "body { margin: 0; } section { break-before: page; bookmark-level: 1; bookmark-label: attr(title); }"
    return " ".join([*pages, common, "img { display: block; }"])
