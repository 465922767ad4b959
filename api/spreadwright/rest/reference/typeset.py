"""Plain HTML in the look of the gallery, escaped by construction."""

import re
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape


def page(name: str, root: str, **values: Any) -> bytes:
    """A page by the name of its template.

    Args:
        name: Without `.html`.
        root: The path that the service is mounted at, without a slash at its end.
        values: What the template shows.
    """
    return _environment().get_template(f"{name}.html").render(root=root, **values).encode()


@cache
def _environment() -> Environment:
    loader = PackageLoader("spreadwright.rest.reference", "pages")
    environment = Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    environment.filters["coded"] = coded
    environment.filters["breakable"] = breakable
    return environment


def coded(text: str) -> Markup:
    """Text with what stands between backticks as code.

    >>> coded("Ask with `n` < 9.")
    Markup('Ask with <code>n</code> &lt; 9.')
    """
    return Markup(re.sub(r"`([^`]+)`", r"<code>\1</code>", str(escape(text))))


def breakable(path: str) -> Markup:
    """A path that a narrow line breaks before a slash, not within a word.

    >>> breakable("/recipes/{id}")
    Markup('/recipes<wbr>/{id}')
    """
    return Markup("<wbr>/").join(path.split("/")).removeprefix("<wbr>")
