"""What a command is given: a file, standard input, or the id of a document in the collection."""

import sys
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

from spreadwright import colour, store, tasks
from spreadwright.document import (
    MOST_BYTES,
    AnyReading,
    Pictures,
    Reading,
    canonical,
    is_short,
    pieces_in_short,
    read_any,
    read_bench,
    read_paper_set,
    read_pieces,
    read_recipe,
    stock_in_short,
)
from spreadwright.errors import InvalidDocument, UnknownName, UnreadableDocument
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PaperSet, PieceList, Recipe
from spreadwright.store import Collection

Model = TypeVar("Model")


def document_bytes(source: str, collection: Collection) -> bytes:
    """The bytes of a file, of standard input (`-`), or of the collection's recipe, paper set or bench of that id.

    Never reads more than a document may have.

    Raises:
        UnknownName: There is neither such a file nor such a document.
        UnreadableDocument: The file cannot be opened.
    """
    if source == "-":
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    if _is_file(source):
        return store.document_bytes(Path(source))
    kept = _kept(source, collection)
    if not kept.data:  # kept with the reason why it cannot be read
        finding = kept.findings[0]
        raise UnreadableDocument(finding.message, finding.remedy, where=finding.where)
    return kept.data


def _kept(source: str, collection: Collection) -> Reading[Any]:
    """What the collection has of that id; paper sets, which bring pictures along, are not read to find a recipe."""
    if source in collection.recipes:
        return collection.recipes[source]
    known: dict[str, Reading[Any]] = {**collection.benches, **collection.paper_sets}
    if source not in known:
        raise UnknownName("file or recipe", source, collection.recipes)
    return known[source]


def _is_file(source: str) -> bool:
    try:
        return Path(source).is_file()
    except OSError:  # too long for a file's name, and the like
        return False


def recipe(source: str, collection: Collection) -> Reading[Recipe]:
    """A recipe, as read; see `document_bytes`."""
    return read_recipe(document_bytes(source, collection), _id(source))


def document(source: str, collection: Collection) -> AnyReading:
    """A document of any kind, as read; see `document_bytes`."""
    return read_any(document_bytes(source, collection), _pictures(source, collection))


def _pictures(source: str, collection: Collection) -> Pictures | None:
    """What finds the pictures beside a paper set; None for standard input, with which none come along."""
    if source != "-" and _is_file(source):
        return store.pictures_beside(Path(source))
    is_kept = source not in collection.recipes and source in collection.paper_sets
    return collection.pictures(source) if is_kept else None


def pieces_or_recipe(source: str, stock: Sequence[str], collection: Collection) -> AnyReading:
    """A document as `document` reads it, or a piece list in short, with its stock.

    Raises:
        UnreadableDocument: An item of a list in short cannot be read; also as `document_bytes`.
    """
    is_name = source == "-" or source in collection.recipes or Path(source[:_LONGEST_NAME]).is_file()
    if is_name or not is_short(source):
        return document(source, collection)
    return read_pieces(canonical(pieces_in_short(source, stock)))


def stock_list(stock: Sequence[str], unit: Unit) -> PieceList:
    """A piece list that wants nothing, with the stock that is given in short."""
    return read_pieces(canonical({"unit": unit.value, "stock": stock_in_short(stock, unit)})).model


_LONGEST_NAME = 200
"""The system refuses to look for a file of a name much longer."""


def paper_set(source: str, collection: Collection) -> PaperSet:
    """A sound paper set; see `document_bytes`.

    Raises:
        InvalidDocument: It carries an error.
    """
    if source in collection.paper_sets:
        return collection.paper_set(source)
    if not _is_file(source) and source != "-":
        raise UnknownName("file or paper set", source, collection.paper_sets)
    return _sound(source, collection, partial(read_paper_set, pictures=_pictures(source, collection)))


def paper_sets(name: str | None, collection: Collection) -> tuple[PaperSet, ...]:
    """The one that is named, or every sound one of the collection; see `paper_set`."""
    return (paper_set(name, collection),) if name else collection.sound_paper_sets()


def papers_for(found: Recipe, set_id: str | None, colourway_id: str | None, collection: Collection) -> PaperSet:
    """The set that is named, the colourway's, or the first that fills every role of a recipe; see `paper_set`."""
    return named_papers(set_id, colourway_id, collection) or tasks.fitting_set(found, collection.sound_paper_sets())


def named_papers(set_id: str | None, colourway_id: str | None, collection: Collection) -> PaperSet | None:
    """The set that is named, or the colourway's; None when neither is named."""
    name = set_id or (colour.set_of(colourway_id) if colourway_id else None)
    return paper_set(name, collection) if name else None


def bench(source: str | None, collection: Collection, for_document: AnyReading) -> Bench:
    """A sound bench, or the one that suits the unit of a document when none is named; see `paper_set`."""
    if source is None or source in collection.benches:
        return collection.bench(source, unit=for_document.model.unit)
    if not _is_file(source) and source != "-":
        raise UnknownName("file or bench", source, collection.benches)
    return _sound(source, collection, read_bench)


def _sound(source: str, collection: Collection, read: Callable[[bytes, str], Reading[Model]]) -> Model:
    reading = read(document_bytes(source, collection), _id(source))
    if not reading.is_sound:
        raise InvalidDocument(source, reading.findings)
    return reading.model


def _id(source: str) -> str:
    return "" if source == "-" else Path(source).stem
