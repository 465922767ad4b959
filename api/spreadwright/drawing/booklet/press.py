"""HTML to PDF: the only door to the library that does it.

It is imported when first needed, since it takes longer to load than most commands to run. It may fetch nothing but the
shipped fonts.
"""

from collections.abc import Callable, Mapping
from copy import deepcopy
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any
from xml.etree.ElementTree import Element, tostring

from spreadwright.drawing import fonts
from spreadwright.drawing.booklet.families import family, font_faces
from spreadwright.drawing.canvas import Canvas, Lettering
from spreadwright.drawing.millimetres import mm
from spreadwright.errors import CannotDraw, PrintTooLong
from spreadwright.geometry import Size

if TYPE_CHECKING:
    from jinja2 import Template


@cache
def template(package: str, name: str) -> "Template":
    """A page of HTML that lies in a package; whatever is put into it is escaped."""
    from jinja2 import Environment, StrictUndefined

    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    return environment.from_string(text_of(package, name))


def text_of(package: str, name: str) -> str:
    """A text file that lies in a package."""
    return files(package).joinpath(name).read_text(encoding="utf-8")


def style(package: str, name: str, paper: Size, **left_open: str) -> str:
    """A style sheet that lies in a package: for a paper, in the shipped fonts, with what else it leaves open.

    >>> style("spreadwright.drawing.contact", "strip.css", Size(3200, 6400))[:24]
    '@page { size: 10mm 20mm;'
    """
    size = {"PAGE_SIZE": f"{mm(paper.width)}mm {mm(paper.height)}mm"}
    css = text_of(package, name)
    for word, said in {**size, **left_open, "SANS": family("sans"), "TEXT": family("text")}.items():
        css = css.replace(word, said)
    return css


def printed(
    html: str,
    css: str,
    pictures: Mapping[str, Canvas],
    *,
    what: str = "The booklet",
    told: Callable[[str], None] = lambda _: None,
    most_pages: int | None = None,
) -> bytes:
    """A page of HTML as a tagged PDF; the same words give the same bytes.

    Args:
        html: All of it.
        css: What is said of its looks beside the shipped fonts.
        pictures: Those of the page, by address.
        what: What is printed, for whom it cannot be.
        told: Is told what is done next.
        most_pages: Are printed; any number when None.

    Raises:
        PrintTooLong: There are more, which is found before they are written.
        CannotDraw: The library, or one that it needs, is missing or refused; its error is the cause.
    """
    try:
        import weasyprint
        from weasyprint.text.fonts import FontConfiguration

        from spreadwright.drawing.booklet.stamp import Stamps

        fetcher = _fetcher(pictures)
        known = FontConfiguration()
        sheet = weasyprint.CSS(string=font_faces() + css, font_config=known, url_fetcher=fetcher)
        told("laying out the pages")
        stamps = Stamps(pictures, known)
        page = weasyprint.HTML(string=html, url_fetcher=fetcher)
        document = page.render(stylesheets=[sheet], font_config=known, cache=stamps.by_address)
        if most_pages is not None and len(document.pages) > most_pages:
            raise PrintTooLong(len(document.pages), most_pages, "pages")
        told(f"writing {len(document.pages)} pages")
        return bytes(document.write_pdf(pdf_tags=True, finisher=_titled) or b"")
    except PrintTooLong:
        raise
    except Exception as cause:  # the library raises whatever its parser and its binding raise
        raise CannotDraw(what) from cause


def _titled(_: Any, pdf: Any) -> None:
    """Readers show the title, not the name of the file."""
    pdf.catalog["ViewerPreferences"] = "<< /DisplayDocTitle true >>"


def _fetcher(pictures: Mapping[str, Canvas]) -> Any:
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    class Shipped(URLFetcher):  # type: ignore[misc]
        """Gives the shipped fonts and the pictures of the page, and nothing else in the world."""

        def fetch(self, url: str, headers: dict[str, str] | None = None) -> URLFetcherResponse:
            """The font that an address of ours names, or the picture that an address is."""
            scheme, _, name = url.partition(":")
            if url in pictures:
                held = {"Content-Type": "image/svg+xml"}
                return URLFetcherResponse(url, searchable(pictures[url]), held)
            if scheme == "data":
                return super().fetch(url, headers)
            if scheme != "font" or "/" in name:
                raise ValueError(f"nothing is fetched from {url[:80]}")
            return URLFetcherResponse(url, files(fonts.__name__).joinpath(name).read_bytes())

    return Shipped()


def searchable(canvas: Canvas) -> bytes:
    """A picture as SVG, its words repeated unseen where they stand, so that they can be found and marked."""
    root = deepcopy(canvas.root)
    copies = dict(zip(canvas.root.iter(), root.iter(), strict=True))
    parents = {child: parent for parent in root.iter() for child in parent}
    for lettering in canvas.lettering:
        outlines = copies[lettering.outlines]
        parent = parents[outlines]
        parent.insert(list(parent).index(outlines) + 1, _unseen(lettering))
    return bytes(tostring(root, encoding="utf-8"))


def _unseen(lettering: Lettering) -> Element:
    x, y = lettering.at
    held = {"x": mm(x), "y": mm(y), "font-size": mm(lettering.size), "font-family": family("sans"), "fill": "none"}
    element = Element("text", held)
    element.text = lettering.words
    return element
