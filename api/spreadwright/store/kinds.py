"""The kinds of documents that are kept. A new kind is one entry here."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from spreadwright.document import Pictures, Reading, read_bench, read_paper_set, read_recipe
from spreadwright.errors import Finding, UnknownName
from spreadwright.model import Bench
from spreadwright.store.collection import Collection
from spreadwright.store.facts import bench_facts, paper_set_facts, recipe_facts
from spreadwright.store.values import Facts
from spreadwright.tasks import check, recipe_findings


@dataclass(frozen=True, slots=True)
class DocumentKind:
    """One kind of document.

    Attributes:
        name: In addresses: ``paper-sets``.
        word: In sentences: ``paper set``.
        schema: Of its schema: ``paper-set``.
        read: From bytes, id, and what finds pictures.
        facts: What it is found by.
        findings: What a check says about one that is to be published.
        of_folder: The documents of this kind in a folder, by id.
    """

    name: str
    word: str
    schema: str
    read: Callable[[bytes, str, Pictures | None], Reading[Any]]
    facts: Callable[[Reading[Any]], Facts]
    findings: Callable[[Reading[Any]], tuple[Finding, ...]]
    of_folder: Callable[[Collection], dict[str, Reading[Any]]]


def _recipe(data: bytes, name: str, _: Pictures | None) -> Reading[Any]:
    return read_recipe(data, name)


def _bench(data: bytes, name: str, _: Pictures | None) -> Reading[Any]:
    return read_bench(data, name)


def _own_findings(reading: Reading[Any]) -> tuple[Finding, ...]:
    """Of what needs no bench; a bench is its own."""
    if isinstance(reading.model, Bench):
        return check(reading, reading.model).findings
    return reading.findings


KINDS: dict[str, DocumentKind] = {
    kind.name: kind
    for kind in (
        DocumentKind(
            "recipes", "recipe", "recipe", _recipe, recipe_facts, recipe_findings, lambda folder: folder.recipes
        ),
        DocumentKind(
            "paper-sets",
            "paper set",
            "paper-set",
            read_paper_set,
            paper_set_facts,
            _own_findings,
            lambda folder: folder.paper_sets,
        ),
        DocumentKind("benches", "bench", "bench", _bench, bench_facts, _own_findings, lambda folder: folder.benches),
    )
}
"""By the name in addresses."""


def kind_named(name: str) -> DocumentKind:
    """The kind of that name.

    Raises:
        UnknownName: There is none.
    """
    if name not in KINDS:
        raise UnknownName("kind of document", name, KINDS)
    return KINDS[name]
