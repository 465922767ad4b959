"""Bytes to model and findings, for every kind of document."""

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from typing import Any, Generic, TypeVar

from spreadwright.document.bench import bench_model
from spreadwright.document.paper_set import paper_set_model
from spreadwright.document.pictures import Pictures
from spreadwright.document.pieces import pieces_model
from spreadwright.document.recipe import recipe_model
from spreadwright.document.schema import kind_of, schema_findings
from spreadwright.document.text import value
from spreadwright.errors import Finding, UnreadableDocument, has_errors
from spreadwright.model import Bench, PaperSet, PieceList, Recipe

Model = TypeVar("Model")


@dataclass(frozen=True, slots=True)
class Reading(Generic[Model]):
    """What was read: the document as JSON, the model as far as it goes, what is wrong with its form, and its bytes.

    It follows from its id and its bytes, so these alone are hashed.
    """

    kind: str
    document: dict[str, Any] = field(hash=False)
    model: Model = field(hash=False)
    findings: tuple[Finding, ...] = field(hash=False)
    data: bytes = field(default=b"", repr=False)

    @property
    def is_sound(self) -> bool:
        """Whether the form of the document carries no error."""
        return not has_errors(self.findings)


def read_recipe(data: bytes, recipe_id: str = "") -> Reading[Recipe]:
    """A recipe from its bytes.

    Raises:
        UnreadableDocument: The bytes are no JSON object, or are too many.
    """
    return _read(data, "recipe", recipe_id, recipe_model)


def read_paper_set(data: bytes, set_id: str = "", pictures: Pictures | None = None) -> Reading[PaperSet]:
    """A paper set from its bytes, with the pictures of its papers if they came along; raises like `read_recipe`."""
    return _read(data, "paper-set", set_id, partial(paper_set_model, pictures=pictures))


def read_bench(data: bytes, bench_id: str = "") -> Reading[Bench]:
    """A bench from its bytes; raises like `read_recipe`."""
    return _read(data, "bench", bench_id, bench_model)


def read_pieces(data: bytes, list_id: str = "") -> Reading[PieceList]:
    """A piece list from its bytes; raises like `read_recipe`."""
    return _read(data, "pieces", list_id, pieces_model)


AnyReading = Reading[Recipe] | Reading[PaperSet] | Reading[Bench] | Reading[PieceList]


def read_any(data: bytes, pictures: Pictures | None = None) -> AnyReading:
    """A document of the kind that it says it is; one that says nothing is read as a recipe.

    Args:
        data: The document.
        pictures: Finds what a paper set names; None where it came without its folder.
    """
    document = _object(data)
    kind = kind_of(document)
    if kind == "paper-set":
        return _reading(document, data, kind, "", partial(paper_set_model, pictures=pictures))
    if kind == "bench":
        return _reading(document, data, kind, "", bench_model)
    if kind == "pieces":
        return _reading(document, data, kind, "", pieces_model)
    return _reading(document, data, "recipe", "", recipe_model)


_Build = Callable[[Any, str], tuple[Model, tuple[Finding, ...]]]


def _read(data: bytes, kind: str, document_id: str, build: "_Build[Model]") -> Reading[Model]:
    return _reading(_object(data), data, kind, document_id, build)


def _reading(
    document: dict[str, Any], data: bytes, kind: str, document_id: str, build: "_Build[Model]"
) -> Reading[Model]:
    model, lengths = build(document, document_id or slug(document.get("title"), kind))
    return Reading(kind, document, model, (*schema_findings(document, kind), *lengths), data)


def _object(data: bytes) -> dict[str, Any]:
    found = value(data)
    if not isinstance(found, dict):
        raise UnreadableDocument("The document is no JSON object.", "Begin it with { and end it with }.")
    return found


def slug(title: Any, fallback: str) -> str:
    """An id made from a title: ``Low tide, two`` gives ``low-tide-two``."""
    if not isinstance(title, str):
        return fallback
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:60].strip("-") or fallback
