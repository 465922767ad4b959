"""The collection: a folder of documents, read once.

recipes/*.json  paper-sets/*.json  benches/*.json      (recipes lie at the top of the folder)
paper-sets/NAME/*.png, *.jpg                           (the pictures of the paper set NAME)
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import cached_property, partial
from pathlib import Path
from typing import TypeVar

from spreadwright import shipped
from spreadwright.document import Pictures, Reading, read_bench, read_paper_set, read_recipe, slug
from spreadwright.errors import InvalidDocument, UnknownName, UnreadableDocument, error
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.store.files import document_bytes
from spreadwright.store.pictures import pictures_beside

Model = TypeVar("Model", Recipe, PaperSet, Bench)

BENCH_OF_UNIT = {Unit.INCH: "bench-inch", Unit.CENTIMETRE: "bench-metric", Unit.MILLIMETRE: "bench-metric"}
"""The bench that is meant when none is named: one that speaks the unit of the document."""


class Collection:
    """Recipes, paper sets and benches by id; the id is the name of the file.

    Args:
        folder: The shipped collection when left out.
    """

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder or shipped.folder("recipes")

    @cached_property
    def recipes(self) -> dict[str, Reading[Recipe]]:
        """Every recipe, by id in alphabetical order, sound or not."""
        return _read_all(self.folder, read_recipe)

    @cached_property
    def paper_sets(self) -> dict[str, Reading[PaperSet]]:
        """Every paper set, by id in alphabetical order."""
        files = _files(self.folder / "paper-sets")
        return {name: _read(file, name, _with_pictures(file)) for name, file in files.items()}

    @cached_property
    def benches(self) -> dict[str, Reading[Bench]]:
        """Every bench, by id in alphabetical order: those that ship, and the folder's own beside or in their place."""
        ours = _read_all(shipped.folder("recipes") / "benches", read_bench)
        return dict(sorted({**ours, **_read_all(self.folder / "benches", read_bench)}.items()))

    def files(self, kind: str = "") -> dict[str, Path]:
        """Where the recipes lie, or what is in `paper-sets` or `benches`, by id in alphabetical order."""
        return _files(self.folder / kind)

    def recipe(self, recipe_id: str) -> Reading[Recipe]:
        """The recipe of an id, as read.

        Raises:
            UnknownName: The collection has no such recipe.
        """
        return _find(self.recipes, "recipe", recipe_id)

    def paper_set(self, set_id: str) -> PaperSet:
        """The paper set of an id.

        Raises:
            UnknownName: The collection has no such paper set.
            InvalidDocument: It carries an error.
        """
        return sound(_find(self.paper_sets, "paper set", set_id))

    def pictures(self, set_id: str) -> Pictures:
        """What finds the pictures of the paper set of an id.

        Raises:
            UnknownName: The collection has no such paper set.
        """
        files = _files(self.folder / "paper-sets")
        if set_id not in files:
            raise UnknownName("paper set", set_id, files)
        return pictures_beside(files[set_id])

    def sound_paper_sets(self) -> tuple[PaperSet, ...]:
        """Every paper set without an error, by id."""
        return tuple(reading.model for reading in self.paper_sets.values() if reading.is_sound)

    def bench(self, bench_id: str | None = None, *, unit: Unit = Unit.INCH) -> Bench:
        """The bench of an id, or the one that suits a document's unit when no id is given; raises like `paper_set`."""
        return sound(_find(self.benches, "bench", bench_id or BENCH_OF_UNIT[unit]))


def _read_all(folder: Path, read: Callable[[bytes, str], Reading[Model]]) -> dict[str, Reading[Model]]:
    return {name: _read(file, name, read) for name, file in _files(folder).items()}


def _with_pictures(file: Path) -> Callable[[bytes, str], Reading[PaperSet]]:
    return partial(read_paper_set, pictures=pictures_beside(file))


def _files(folder: Path) -> dict[str, Path]:
    """The documents of a folder by id, in the order of their ids."""
    found: dict[str, Path] = {}
    for file in sorted(folder.glob("*.json"), key=lambda file: file.stem):
        found[_id(file.stem, found)] = file
    return dict(sorted(found.items()))


def _id(stem: str, taken: Iterable[str]) -> str:
    """The name of the file, made fit for web addresses where it is not, and numbered where it is taken."""
    plain = slug(stem, "document")
    numbered = (plain, *(f"{plain}-{number}" for number in range(2, len(list(taken)) + 3)))
    return next(name for name in numbered if name not in taken)


def _read(file: Path, document_id: str, read: Callable[[bytes, str], Reading[Model]]) -> Reading[Model]:
    """One file; what is no document is kept as a reading that says so, and hides none of the others."""
    try:
        return read(document_bytes(file), document_id)
    except UnreadableDocument as reason:
        finding = error("unreadable", reason.where, reason.reason, reason.remedy)
        return replace(read(b"{}", document_id), findings=(finding,), data=b"")


def _find(documents: dict[str, Reading[Model]], kind: str, name: str) -> Reading[Model]:
    if name not in documents:
        raise UnknownName(kind, name, documents)
    return documents[name]


def sound(reading: Reading[Model]) -> Model:
    """What a document says.

    Raises:
        InvalidDocument: It carries an error.
    """
    if not reading.is_sound:
        raise InvalidDocument(reading.model.title, reading.findings)
    return reading.model
