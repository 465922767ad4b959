"""The documents that a gallery shows, as bytes: they travel to other processes, and tell what changed."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeVar

from spreadwright.document import Reading, read_bench, read_paper_set, read_recipe
from spreadwright.errors import InvalidDocument, UnreadablePicture
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.store import Collection
from spreadwright.words import SOURCE

Model = TypeVar("Model", Recipe, PaperSet, Bench)


@dataclass(frozen=True, slots=True)
class Document:
    """One document, and the pictures that it names, by name; None where it came without them."""

    id: str
    data: bytes
    pictures: tuple[tuple[str, bytes], ...] | None = ()


@dataclass(frozen=True, slots=True)
class Documents:
    """All that a gallery follows from; recipes and paper sets by id, a bench for each unit."""

    recipes: tuple[Document, ...]
    paper_sets: tuple[Document, ...]
    benches: tuple[tuple[Unit, Document], ...]

    def bench(self, unit: Unit) -> Document:
        """The bench that speaks a unit."""
        return dict(self.benches)[unit]


@dataclass(frozen=True, slots=True)
class Outline:
    """What can be told of a recipe without checking it; `derived_from` names recipes by id."""

    id: str
    title: str
    language: str
    derived_from: tuple[str, ...]


def outline_of(document: Document) -> Outline:
    """The outline of a recipe, of which nothing is known to be sound: what cannot be read is left out."""
    try:
        found = json.loads(document.data)
    except (ValueError, RecursionError):
        found = {}
    found = found if isinstance(found, dict) else {}
    title, language = (found.get(name) for name in ("title", "language"))
    parents = found.get("derived_from")
    return Outline(
        document.id,
        title if isinstance(title, str) else document.id,
        language if isinstance(language, str) else SOURCE,
        tuple(each for each in parents if isinstance(each, str)) if isinstance(parents, list) else (),
    )


def collected(collection: Collection) -> Documents:
    """The documents of a collection.

    Raises:
        InvalidDocument: A file is no document at all.
    """
    recipes = tuple(Document(name, _data(name, reading)) for name, reading in collection.recipes.items())
    sets = tuple(
        _with_pictures(name, _data(name, reading), collection.pictures(name))
        for name, reading in collection.paper_sets.items()
    )
    return Documents(recipes, sets, tuple((unit, _bench(collection, unit)) for unit in Unit))


def _bench(collection: Collection, unit: Unit) -> Document:
    bench = collection.bench(unit=unit)
    return Document(bench.id, collection.benches[bench.id].data)


def _data(name: str, reading: Reading[Model]) -> bytes:
    if not reading.data:  # kept with the reason why it cannot be read
        raise InvalidDocument(name, reading.findings)
    return reading.data


def _with_pictures(name: str, data: bytes, find: Callable[[str], bytes]) -> Document:
    """The pictures are those that reading the set asks for; what cannot be had is told when it is read again."""
    found: dict[str, bytes] = {}

    def noted(picture: str) -> bytes:
        found[picture] = find(picture)
        return found[picture]

    read_paper_set(data, name, noted)
    return Document(name, data, tuple(sorted(found.items())))


def recipe_of(document: Document) -> Reading[Recipe]:
    """The recipe, as read, sound or not."""
    return read_recipe(document.data, document.id)


@lru_cache(maxsize=64)
def paper_set_of(document: Document) -> PaperSet:
    """The paper set, with its pictures; the same object each time, since whatever is measured of it is kept with it.

    Raises:
        InvalidDocument: It carries an error.
    """

    def find(name: str) -> bytes:
        if name not in (pictures := dict(document.pictures or ())):
            told, remedy = "There is no such file.", f"Put it into the folder “{document.id}” beside the document."
            raise UnreadablePicture("picture-missing", told, remedy, name=name)
        return pictures[name]

    return _sound(read_paper_set(document.data, document.id, None if document.pictures is None else find))


@lru_cache(maxsize=8)
def bench_of(document: Document) -> Bench:
    """The bench; raises like `paper_set_of`."""
    return _sound(read_bench(document.data, document.id))


def _sound(reading: Reading[Model]) -> Model:
    if not reading.is_sound:
        raise InvalidDocument(reading.model.title, reading.findings)
    return reading.model
