"""What the pages follow from: each recipe with the paper sets and the bench that it is shown with."""

from collections.abc import Iterable
from dataclasses import dataclass

from spreadwright.document import Reading
from spreadwright.errors import NoColourway
from spreadwright.model import Bench, Colourway, PaperSet, Recipe
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway, proven


@dataclass(frozen=True, slots=True)
class RecipeJob:
    """One recipe, proven; the colourway that leads comes first."""

    reading: Reading[Recipe]
    bench: Bench
    colourways: tuple[tuple[PaperSet, Colourway], ...]

    @property
    def recipe(self) -> Recipe:
        """The recipe itself."""
        return self.reading.model


def sound_paper_sets(collection: Collection) -> tuple[PaperSet, ...]:
    """Every paper set, by id.

    Raises:
        InvalidDocument: One carries an error.
    """
    return tuple(collection.paper_set(set_id) for set_id in collection.paper_sets)


def recipe_jobs(collection: Collection, papers: tuple[PaperSet, ...]) -> tuple[RecipeJob, ...]:
    """Every recipe, by id.

    Raises:
        InvalidDocument: One carries an error on the bench that it is cut on.
    """
    return tuple(
        _job(reading, collection.bench(unit=reading.model.unit), _led_by(number, papers))
        for number, reading in enumerate(collection.recipes.values())
    )


def _job(reading: Reading[Recipe], bench: Bench, papers: tuple[PaperSet, ...]) -> RecipeJob:
    recipe = proven(reading, bench)
    return RecipeJob(reading, bench, tuple(_colourways(recipe, papers)))


def _led_by(number: int, papers: tuple[PaperSet, ...]) -> tuple[PaperSet, ...]:
    """The sets, beginning with another one for each recipe, so that neighbours do not lie in the same papers."""
    start = number % len(papers) if papers else 0
    return papers[start:] + papers[:start]


def _colourways(recipe: Recipe, papers: Iterable[PaperSet]) -> Iterable[tuple[PaperSet, Colourway]]:
    for each in papers:
        try:
            yield each, chosen_colourway(recipe, each)
        except NoColourway:
            continue
