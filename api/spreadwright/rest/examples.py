"""Examples for the OpenAPI document, taken from the collection, so that each of them can be tried."""

import json
from typing import Any

from spreadwright.colour import count, first
from spreadwright.lengths import Unit
from spreadwright.store import BENCH_OF_UNIT, Collection
from spreadwright.store.importing import IMPORTER
from spreadwright.store.opening import Store
from spreadwright.store.wanted import Wanted

DOCUMENT = "document of "
"""Before the kind of a document, in examples: a whole one."""
_PIECES = {
    "schema": "pieces/1",
    "title": "One page",
    "unit": "in",
    "pieces": [{"name": "left", "size": ["7", "7"]}, {"name": "right", "size": ["3 1/2", "5"], "times": 2}],
    "stock": [{"size": ["12", "12"]}],
}


def examples_from(collection: Collection, store: Store) -> dict[str, Any]:
    """A value for each parameter, all of them fitting together; for those that name documents as the collection has."""
    examples = {"start": 0, "limit": 20, "width": 1200, "sheet": 1, "kind": "recipe", "version": "1"}
    examples |= {"seconds": 2.5, "seed": 1, "n": 1, "stock": "12x12"}
    examples |= {"job_id": "qO3xN0W1yGqk2m0bT5uZJ8aV", "code": "no-plan", "picture": "rope.png"}
    examples |= {DOCUMENT + "pieces": _PIECES}
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
            DOCUMENT + "recipe": json.loads(collection.recipe(recipe.id).data),
            DOCUMENT + "paper-set": json.loads(collection.paper_sets[papers.id].data),
            "url": f"http://localhost/recipes/{recipe.id}/",
            "digest": store.documents.head("recipes", recipe.id).digest,
        }
    return examples | _of_lists(store)


def _of_lists(store: Store) -> dict[str, Any]:
    examples = {"q": "window", "tag": "home", "author": "The Spreadwright maintainers", "licence": "CC-BY-4.0"}
    examples |= {"lang": "en", "state": "published", "owner": IMPORTER, "sort": "id", "fields": "id,title,links"}
    examples |= {
        "role": "plain",
        "page_size": "12x12",
        "pages": "1..2",
        "sheets": "..9",
        "photos": "2..",
        "cuts": "..40",
    }
    after = store.listing.page(Wanted("recipes", limit=1)).next
    examples |= {"maxwidth": "1200", "maxheight": "1200", "format": "json"}
    return {**examples, "number": "1", "since": 1, "before": 9, "note": "Two photos more.", "id": "low-shelf"} | (
        {"after": after} if after else {}
    )
