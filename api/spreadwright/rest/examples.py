"""Examples for the OpenAPI document, taken from the collection, so that each of them can be tried."""

from typing import Any

from spreadwright.colour import count, first
from spreadwright.lengths import Unit
from spreadwright.store import BENCH_OF_UNIT, Collection


def examples_from(collection: Collection) -> dict[str, Any]:
    """A value for each parameter, all of them fitting together; for those that name documents as the collection has."""
    examples = {"start": 0, "limit": 20, "width": 1200, "sheet": 1, "kind": "recipe", "version": "1"}
    examples |= {"seconds": 2.5, "seed": 1, "n": 1, "stock": "12x12"}
    examples |= {"page": "a4", "language": "en", "border": "wide", "focus": "1=30,40"}
    examples |= dict.fromkeys(("bench_id", "bench"), BENCH_OF_UNIT[Unit.INCH])
    sets = [each.model for each in collection.paper_sets.values() if each.is_sound]
    for papers in sets[:1]:
        examples |= {"set_id": papers.id, "paper_id": papers.papers[0].id}
    pairs = ((each.model, papers) for each in collection.recipes.values() for papers in sets if each.is_sound)
    fitting = next(((recipe, papers) for recipe, papers in pairs if count(recipe, papers)), None)
    if fitting:
        recipe, papers = fitting
        examples |= {
            "recipe_id": recipe.id,
            "recipe": recipe.id,
            "set": papers.id,
            "colourway": first(recipe, papers).id,
        }
    return examples
