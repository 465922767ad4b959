"""What layouts are found by: the kinds of choice, the order that they come in, the words that they are found by."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.typesetting import licence_name
from spreadwright.tasks.difficulty import Level, level_words
from spreadwright.words import gettext as _

_CUTS = (5, 10, 15, 20, 30)
"""Where one choice of cuts ends and the next begins."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One value to choose, what it is called, and how many layouts have it."""

    value: str
    title: str
    count: int


@dataclass(frozen=True, slots=True)
class Kind:
    """What may be chosen by, and the choices, in the order in which they are offered."""

    name: str
    title: str
    choices: tuple[Choice, ...]


@dataclass(frozen=True, slots=True)
class _Reader:
    """How one kind is read from a recipe: its values with their titles, and what they are sorted by."""

    name: str
    title: str
    values: Callable[[Facts], Iterable[tuple[str, str]]]
    rank: Callable[[str, str], Any]


def kinds(recipes: Sequence[Facts]) -> tuple[Kind, ...]:
    """Every kind that tells these recipes apart or says something of them, in the language that is spoken."""
    return tuple(kind for reader in _readers() if (kind := _kind(reader, recipes)).choices)


def found_by(recipes: Sequence[Facts]) -> list[dict[str, Any]]:
    """Of every recipe what a script needs to find it: values by kind, what orders it, words."""
    readers = _readers()
    return [
        {
            "id": recipe.id,
            "values": {
                reader.name: found
                for reader in readers
                if (found := [value for value, _title in reader.values(recipe)])
            },
            "order": {
                "title": recipe.title,
                "photos": recipe.photos,
                "sheets": recipe.sheets,
                "cuts": recipe.cuts,
                "difficulty": recipe.difficulty.points,
            },
            "text": " ".join((recipe.title, recipe.summary, *recipe.tags, *recipe.authors, *recipe.roles)),
        }
        for recipe in recipes
    ]


def laid_out(recipes: Iterable[Facts]) -> tuple[Facts, ...]:
    """The order in which layouts lie on the table: double pages, then single ones, which would leave gaps among them.

    Within each the gentlest come first, so that somebody new to this begins at the top.
    """
    return tuple(sorted(recipes, key=lambda recipe: (-recipe.pages, recipe.difficulty.points, recipe.title, recipe.id)))


def cuts_value(cuts: int) -> str:
    """The choice that a number of cuts belongs to.

    >>> [cuts_value(number) for number in (0, 5, 6, 30, 31)]
    ['0-5', '0-5', '6-10', '21-30', '31-']
    """
    least = 0
    for most in _CUTS:
        if cuts <= most:
            return f"{least}-{most}"
        least = most + 1
    return f"{least}-"


def _cuts_title(value: str) -> str:
    least, most = value.split("-")
    if not most:
        return _("{least} and more").format(least=least)
    return (
        _("up to {most}").format(most=most) if least == "0" else _("{least} to {most}").format(least=least, most=most)
    )


def _readers() -> tuple[_Reader, ...]:
    return (
        _Reader("pages", _("Pages"), lambda one: [_number(one.pages)], _by_number),
        _Reader("photos", _("Photos"), lambda one: [_number(one.photos)], _by_number),
        _Reader("sheets", _("Sheets of paper"), lambda one: [_number(one.sheets)], _by_number),
        _Reader("plain", _("Plain papers"), lambda one: [_number(one.plain)], _by_number),
        _Reader("patterned", _("Patterned papers"), lambda one: [_number(one.patterned)], _by_number),
        _Reader("cuts", _("Cuts"), lambda one: [_cuts(one.cuts)], _by_number),
        _Reader("difficulty", _("Asks for"), lambda one: [_level(one.difficulty.level)], _by_level),
        _Reader("size", _("Page size"), lambda one: [(one.page.value, one.page.both)], _by_number),
        _Reader(
            "in", _("Paper set"), lambda one: [(each.set_id, each.set_title) for each in one.thumbnails], _by_title
        ),
        _Reader("tag", _("Tag"), lambda one: [(tag, tag) for tag in one.tags], _by_title),
        _Reader("author", _("Author"), lambda one: [(name, name) for name in one.authors], _by_title),
        _Reader("licence", _("Licence"), lambda one: _licence(one.licence), _by_title),
    )


def _kind(reader: _Reader, recipes: Sequence[Facts]) -> Kind:
    titles: dict[str, str] = {}
    counts: dict[str, int] = {}
    for recipe in recipes:
        for value, title in dict(reader.values(recipe)).items():
            titles.setdefault(value, title)
            counts[value] = counts.get(value, 0) + 1
    offered = sorted(titles, key=lambda value: reader.rank(value, titles[value]))
    return Kind(reader.name, reader.title, tuple(Choice(value, titles[value], counts[value]) for value in offered))


def _number(count: int) -> tuple[str, str]:
    return str(count), str(count)


def _cuts(cuts: int) -> tuple[str, str]:
    return cuts_value(cuts), _cuts_title(cuts_value(cuts))


def _level(level: Level) -> tuple[str, str]:
    return level.value, level_words(level)


def _licence(licence: str) -> list[tuple[str, str]]:
    return [(licence, licence_name(licence))] if licence else []


def _by_number(value: str, _title: str) -> float:
    return float(value.split("-")[0].split("x")[0])


def _by_level(value: str, _title: str) -> int:
    return list(Level).index(Level(value))


def _by_title(value: str, title: str) -> tuple[str, str]:
    return title.casefold(), value
