"""A recipe's page elsewhere: its address, the square code that leads there, the lines that show it on other pages."""

from dataclasses import dataclass
from urllib.parse import quote, urljoin

from markupsafe import escape

from spreadwright.gallery.recipe.paths import card_path, picture_path
from spreadwright.model import Recipe
from spreadwright.tasks.draw import code_svg
from spreadwright.words import gettext as _

UNKNOWN = "https://gallery.invalid/"
"""Stands for the address of a gallery that does not know its own; a script puts it in where the page is read."""


@dataclass(frozen=True, slots=True)
class Shared:
    """Where a page is found by everybody; what is absolute is empty where the gallery does not know its address.

    Attributes:
        address: Of the page, absolute.
        picture: Of the picture that stands for it, absolute.
        code: Where the square code lies in the site; empty likewise.
        snippet: HTML that shows the recipe on somebody else's page.
    """

    address: str
    picture: str
    code: str
    snippet: str


def shared(recipe: Recipe, path: str, site: str) -> Shared:
    """How the page of a recipe is shared.

    Args:
        path: Of the page in the site.
        site: The address of the gallery, absolute; empty where it is not known.
    """
    address = absolute(site or UNKNOWN, path.removesuffix("index.html"))
    picture = absolute(site or UNKNOWN, card_path(recipe.id))
    snippet = _snippet(recipe, address, picture)
    return (
        Shared(address, picture, picture_path(recipe.id, "code.svg"), snippet) if site else Shared("", "", "", snippet)
    )


def absolute(site: str, path: str) -> str:
    """The address of a path of the site.

    >>> absolute("https://albums.example/ours", "recipes/one page/")
    'https://albums.example/ours/recipes/one%20page/'
    """
    return urljoin(site.rstrip("/") + "/", quote(path))


def code_file(recipe: Recipe, found: Shared) -> dict[str, bytes]:
    """The square code, as a file of the site; none without an address."""
    return {found.code: code_svg(found.address, recipe.title)} if found.code else {}


def _snippet(recipe: Recipe, address: str, picture: str) -> str:
    names = ", ".join(recipe.authors)
    said = _("{title} by {names}").format(title=recipe.title, names=names) if names else recipe.title
    caption = f"{said}, {recipe.licence}" if recipe.licence else said
    return (
        f'<figure lang="{escape(recipe.language)}">\n'
        f'  <a href="{escape(address)}"><img src="{escape(picture)}" width="1200" height="630" '
        f'style="max-width: 100%; height: auto" alt="{escape(recipe.title)}"></a>\n'
        f"  <figcaption>{escape(caption)}</figcaption>\n"
        "</figure>"
    )
