"""Layouts that share a tag or an author: each has a page, and the index knows them all."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.overview.names import author_path, tag_path


@dataclass(frozen=True, slots=True)
class Group:
    """The layouts of one name, and where their page lies below the home of a language."""

    name: str
    path: str
    recipes: tuple[Facts, ...]


def tags(recipes: Sequence[Facts]) -> tuple[Group, ...]:
    """A group for every tag, by name."""
    return _groups(recipes, lambda recipe: recipe.tags, tag_path)


def authors(recipes: Sequence[Facts]) -> tuple[Group, ...]:
    """A group for every author, by name."""
    return _groups(recipes, lambda recipe: recipe.authors, author_path)


def _groups(
    recipes: Sequence[Facts], names_of: Callable[[Facts], Iterable[str]], path_of: Callable[[str], str]
) -> tuple[Group, ...]:
    found: dict[str, list[Facts]] = {}
    for recipe in recipes:
        for name in dict.fromkeys(names_of(recipe)):
            found.setdefault(name, []).append(recipe)
    by_name = sorted(found, key=lambda name: (name.casefold(), name))
    return tuple(Group(name, path_of(name), tuple(found[name])) for name in by_name)
