"""What makers are given: one recipe, proven, on its benches and in its papers."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from hashlib import sha256

from spreadwright.document import Reading
from spreadwright.errors import NoColourway
from spreadwright.gallery.recipe.instructions import can_be_cut, other_unit
from spreadwright.gallery.work.documents import Document, Documents, bench_of, paper_set_of, recipe_of
from spreadwright.model import Bench, Colourway, PaperSet, Recipe
from spreadwright.tasks import proven
from spreadwright.tasks.ranking import Proposal, propose

SHOWN = 6
"""Colourways of one set that a recipe's page offers."""


@dataclass(frozen=True, slots=True)
class RecipeJob:
    """One recipe, proven.

    Attributes:
        bench: The one that speaks its unit.
        other_benches: The one that speaks the other unit, where the recipe can be cut on it.
        proposals: Its best colourways in each paper set that fills its roles; the set that leads comes first.
    """

    reading: Reading[Recipe]
    bench: Bench
    other_benches: tuple[Bench, ...]
    proposals: tuple[Proposal, ...]

    @property
    def recipe(self) -> Recipe:
        """The recipe itself."""
        return self.reading.model

    @property
    def colourways(self) -> tuple[tuple[PaperSet, Colourway], ...]:
        """The best colourway in each set; the one that leads comes first."""
        return tuple((each.sets[0], each.colourways[0].colourway) for each in self.proposals)


def recipe_job(document: Document, documents: Documents) -> RecipeJob:
    """A recipe, proven, in every paper set that fills its roles.

    Raises:
        InvalidDocument: The recipe carries an error on the bench that it is cut on, or a paper set does.
    """
    reading = recipe_of(document)
    bench = bench_of(documents.bench(reading.model.unit))
    recipe = proven(reading, bench)
    sets = tuple(paper_set_of(each) for each in documents.paper_sets)
    others = _others(reading, bench_of(documents.bench(other_unit(bench.unit))))
    proposals = tuple(_proposals(recipe, _led_by(recipe.id, sets)))
    return RecipeJob(reading, bench, others, proposals)


def _others(reading: Reading[Recipe], bench: Bench) -> tuple[Bench, ...]:
    """Its marks may be too coarse for the recipe, or a sheet too long for it."""
    return (bench,) if can_be_cut(reading, bench) else ()


def _led_by(recipe_id: str, papers: tuple[PaperSet, ...]) -> tuple[PaperSet, ...]:
    """The sets, beginning with another one for each recipe, so that neighbours seldom lie in the same papers."""
    start = sha256(recipe_id.encode()).digest()[0] % len(papers) if papers else 0
    return papers[start:] + papers[:start]


def _proposals(recipe: Recipe, papers: Iterable[PaperSet]) -> Iterator[Proposal]:
    for each in papers:
        try:
            yield propose(recipe, [each], SHOWN)
        except NoColourway:
            continue
