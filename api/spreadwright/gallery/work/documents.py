"""The documents that a gallery shows, as bytes: they travel to other processes, and tell what changed."""

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from spreadwright.document import Reading, read_bench, read_paper_set, read_recipe
from spreadwright.errors import InvalidDocument, UnreadableDocument, UnreadablePicture, error
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.store import Collection, document_bytes
from spreadwright.store.collection import sound
from spreadwright.words import SOURCE


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
    """The documents of a collection; recipes are not looked into.

    Raises:
        InvalidDocument: A file cannot be read, or a bench carries an error.
    """
    recipes = tuple(Document(name, _data(name, file)) for name, file in collection.files().items())
    sets = tuple(
        with_pictures(name, _data(name, file), collection.pictures(name))
        for name, file in collection.files("paper-sets").items()
    )
    return Documents(recipes, sets, tuple((unit, _bench(collection, unit)) for unit in Unit))


def _bench(collection: Collection, unit: Unit) -> Document:
    bench = collection.bench(unit=unit)
    return Document(bench.id, collection.benches[bench.id].data)


def _data(name: str, file: Path) -> bytes:
    with _refusing(name):
        return document_bytes(file)


@contextmanager
def _refusing(name: str) -> Iterator[None]:
    """What is no document at all is refused like one that carries an error."""
    try:
        yield
    except UnreadableDocument as reason:
        raise InvalidDocument(name, [error("unreadable", reason.where, reason.reason, reason.remedy)]) from reason


def with_pictures(name: str, data: bytes, find: Callable[[str], bytes]) -> Document:
    """A paper set with the pictures that reading it asks for; what cannot be had is told when it is read again.

    Args:
        name: The id of the set.
        data: The document.
        find: Gives a picture by its name, or raises `UnreadablePicture`.

    Raises:
        InvalidDocument: It is no document at all.
    """
    found: dict[str, bytes] = {}

    def noted(picture: str) -> bytes:
        found[picture] = find(picture)
        return found[picture]

    with _refusing(name):
        read_paper_set(data, name, noted)
    return Document(name, data, tuple(sorted(found.items())))


def recipe_of(document: Document) -> Reading[Recipe]:
    """The recipe, as read, sound or not.

    Raises:
        InvalidDocument: It is no document at all.
    """
    with _refusing(document.id):
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

    with _refusing(document.id):
        return sound(read_paper_set(document.data, document.id, None if document.pictures is None else find))


@lru_cache(maxsize=8)
def bench_of(document: Document) -> Bench:
    """The bench; raises like `paper_set_of`."""
    with _refusing(document.id):
        return sound(read_bench(document.data, document.id))
