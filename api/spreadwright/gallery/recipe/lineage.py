"""Which recipes of a gallery come from which: one step either way."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.gallery.recipe.paths import page_path
from spreadwright.gallery.work.documents import Outline


@dataclass(frozen=True, slots=True)
class Relative:
    """A recipe that another comes from, or that comes from it; `path` is empty where it is not in the gallery."""

    title: str
    language: str
    path: str


@dataclass(frozen=True, slots=True)
class Lineage:
    """Where a recipe comes from, and what was made of it."""

    parents: tuple[Relative, ...] = ()
    children: tuple[Relative, ...] = ()


def lineages(outlines: Sequence[Outline]) -> dict[str, Lineage]:
    """The lineage of every recipe, by id; parents in the order in which a recipe names them, children by id."""
    known = {outline.id: outline for outline in outlines}
    children: dict[str, list[str]] = {own: [] for own in known}
    for child in sorted(known):
        for parent in known[child].derived_from:
            children.get(parent, []).append(child)
    return {
        own: Lineage(
            tuple(_relative(name, known.get(name)) for name in known[own].derived_from),
            tuple(_relative(name, known[name]) for name in children[own]),
        )
        for own in known
    }


def _relative(recipe_id: str, outline: Outline | None) -> Relative:
    if outline is None:
        return Relative(recipe_id, "", "")
    return Relative(outline.title, outline.language, page_path(recipe_id))
