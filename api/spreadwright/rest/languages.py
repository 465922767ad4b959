"""In which language a client gets instructions: RFC 9110, section 12.5.4, over the catalogues that there are."""

from collections.abc import Iterable

from flask import request

from spreadwright.document import Reading
from spreadwright.model import Recipe
from spreadwright.rest.forms import Arguments
from spreadwright.words import LANGUAGES, SOURCE, known


def chosen(arguments: Arguments, documents: Iterable[object]) -> str:
    """The language that the query names; else the one that the client likes best; else the recipe's; else English."""
    named = arguments.get("language")
    if named:
        return str(named)
    own = next((each.model.language for each in documents if _is_recipe(each)), SOURCE)  # type: ignore[attr-defined]
    return liked(request.accept_languages) or known(own) or SOURCE


def _is_recipe(document: object) -> bool:
    return isinstance(document, Reading) and isinstance(document.model, Recipe)


def liked(accept: Iterable[tuple[str, float]]) -> str:
    """The language that is spoken here and liked best, of two liked equally the earlier; empty where there is none.

    Args:
        accept: Language tags with their qualities, 0 to 1. One with a region means its language, too.

    >>> liked([("pt-BR", 1.0), ("de-AT", 0.8), ("en", 0.5)])
    'de'
    """
    spoken = [(known(tag), quality) for tag, quality in accept if quality > 0]
    best = max((each for each in spoken if each[0] in LANGUAGES), key=lambda each: each[1], default=("", 0.0))
    return best[0]
