"""HTML to PDF: the only door to the library that does it.

It is imported when first needed, since it takes longer to load than most commands to run. It may fetch nothing but the
shipped fonts.
"""

from collections.abc import Callable
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from spreadwright.drawing import fonts
from spreadwright.drawing.fonts import SCRIPTS, Typeface
from spreadwright.errors import CannotDraw

if TYPE_CHECKING:
    from jinja2 import Template

FAMILIES = {"sans": ("SANS", "SANS_MEDIUM", "SANS_BOLD"), "text": ("TEXT", "TEXT_ITALIC")}
_WEIGHTS = {"SANS": "400", "SANS_MEDIUM": "500", "SANS_BOLD": "700", "TEXT": "400", "TEXT_ITALIC": "400"}


def family(name: str) -> str:
    """The fonts of a family, as a list for CSS: a file for each script, asked in turn.

    >>> family("sans")
    'sans-latin, sans-latin-ext, sans-greek, sans-cyrillic'
    """
    return ", ".join(f"{name}-{script}" for script in SCRIPTS)


def font_faces() -> str:
    """The CSS rules for every shipped font."""
    return "\n".join(
        f"@font-face {{ font-family: {name}-{script}; font-weight: {_WEIGHTS[face]}; "
        f"font-style: {'italic' if 'ITALIC' in face else 'normal'}; "
        f'src: url("font:{Typeface[face].value}-{script}.ttf"); }}'
        for name, faces in FAMILIES.items()
        for face in faces
        for script in SCRIPTS
    )


@cache
def template(package: str, name: str) -> "Template":
    """A page of HTML that lies in a package; whatever is put into it is escaped."""
    from jinja2 import Environment, StrictUndefined

    environment = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    return environment.from_string(text_of(package, name))


def text_of(package: str, name: str) -> str:
    """A text file that lies in a package."""
    return files(package).joinpath(name).read_text(encoding="utf-8")


def printed(html: str, css: str, *, what: str = "The booklet", told: Callable[[str], None] = lambda _: None) -> bytes:
    """A page of HTML as a tagged PDF; the same words give the same bytes.

    Args:
        html: All of it, pictures included.
        css: What is said of its looks beside the shipped fonts.
        what: What is printed, for whom it cannot be.
        told: Is told what is done next.

    Raises:
        CannotDraw: The library, or one that it needs, is missing or refused; its error is the cause.
    """
    try:
        import weasyprint
        from weasyprint.text.fonts import FontConfiguration

        fetcher = _fetcher()
        known = FontConfiguration()
        sheet = weasyprint.CSS(string=font_faces() + css, font_config=known, url_fetcher=fetcher)
        told("laying out the pages")
        document = weasyprint.HTML(string=html, url_fetcher=fetcher).render(stylesheets=[sheet], font_config=known)
        told(f"writing {len(document.pages)} pages")
        return bytes(document.write_pdf(pdf_tags=True, finisher=_titled) or b"")
    except Exception as cause:  # the library raises whatever its parser and its binding raise
        raise CannotDraw(what) from cause


def _titled(_: Any, pdf: Any) -> None:
    """Readers show the title, not the name of the file."""
    pdf.catalog["ViewerPreferences"] = "<< /DisplayDocTitle true >>"


def _fetcher() -> Any:
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    class Shipped(URLFetcher):  # type: ignore[misc]
        """Gives the shipped fonts and pictures that stand in the page, and nothing else in the world."""

        def fetch(self, url: str, headers: dict[str, str] | None = None) -> URLFetcherResponse:
            """The font that an address of ours names, or the picture that an address is."""
            scheme, _, name = url.partition(":")
            if scheme == "data":
                return super().fetch(url, headers)
            if scheme != "font" or "/" in name:
                raise ValueError(f"nothing is fetched from {url[:80]}")
            return URLFetcherResponse(url, files(fonts.__name__).joinpath(name).read_bytes())

    return Shipped()
