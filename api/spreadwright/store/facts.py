"""What documents are found by: worked out from what was read, once for each revision."""

from collections.abc import Iterable
from functools import cache
from hashlib import sha256
from typing import Any

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.document import Reading
from spreadwright.errors import InvalidDocument
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.store.collection import Collection
from spreadwright.store.values import Facts
from spreadwright.store.words import clean, words_of
from spreadwright.tasks import proven

_LONGEST = 400
"""Of one name; the schemas allow less, the columns no more."""

COUNTED = ("pages", "sheets", "photos", "cuts")
"""What there is a number of, by the name in `Facts`."""
_UNWRITTEN = "\ue000"


def recipe_facts(reading: Reading[Recipe]) -> Facts:
    """Of a recipe."""
    recipe = reading.model
    size = recipe.spread.size
    return Facts(
        title=_line(recipe.title),
        summary=_text(recipe.summary),
        licence=_line(recipe.licence, 64),
        language=_line(recipe.language, 35),
        pages=len(recipe.spread.pages),
        sheets=sum(sheet.times for sheet in recipe.sheets),
        photos=len(recipe.photos),
        cuts=_cuts(reading),
        page_width=size.width if size else 0,
        page_height=size.height if size else 0,
        roles=_lines(role.id for role in recipe.roles),
        authors=_lines(recipe.authors),
        tags=_lines(recipe.tags),
    )


def paper_set_facts(reading: Reading[PaperSet]) -> Facts:
    """Of a paper set."""
    papers = reading.model
    return Facts(
        title=_line(papers.title),
        summary=_text(papers.summary),
        licence=_line(papers.licence, 64),
        language=_line(papers.language, 35),
        authors=_lines(papers.authors),
        tags=_lines(papers.tags),
    )


def bench_facts(reading: Reading[Bench]) -> Facts:
    """Of a bench."""
    return Facts(title=_line(reading.model.title))


def words_found_by(facts: Facts) -> tuple[str, ...]:
    """The words of everything that is written for people."""
    return words_of(facts.title, facts.summary, *facts.tags, *facts.authors, *facts.roles)


def labels(facts: Facts) -> list[tuple[str, str]]:
    """Everything that a document can have several of, or only some have, as field and value."""
    several = {"tag": facts.tags, "author": facts.authors, "role": facts.roles}
    one = {"licence": facts.licence, "language": facts.language}
    return [
        *((field, value) for field, values in several.items() for value in dict.fromkeys(values)),
        *((field, value) for field, value in one.items() if value),
    ]


def marks(facts: Facts) -> tuple[str, ...]:
    """The same, and what is counted, as words that nobody can write: so one index finds what meets them all."""
    counted = {name: getattr(facts, name) for name in COUNTED}
    size = ("size", f"{facts.page_width} {facts.page_height}")
    return tuple(mark(field, str(value)) for field, value in (*labels(facts), *counted.items(), size))


def mark(field: str, value: str) -> str:
    """One word for a field and its value; it begins with a character that no word of a language has."""
    return _UNWRITTEN + sha256(f"{field} {value}".encode()).hexdigest()[:16]


def _cuts(reading: Reading[Recipe]) -> int:
    """On the bench that speaks its unit; every order of cuts makes the same number."""
    try:
        recipe = proven(reading)
    except InvalidDocument:
        return 0
    return len(cut_steps(cut_sheets(recipe), _shipped().bench(unit=recipe.unit)))


@cache
def _shipped() -> Collection:
    return Collection()


def _lines(values: Iterable[Any]) -> tuple[str, ...]:
    return tuple(_line(value) for value in values)


def _line(value: Any, most: int = _LONGEST) -> str:
    return _text(value)[:most]


def _text(value: Any) -> str:
    return clean(str(value))
