"""Which paper set is meant when a query does not name one."""

from spreadwright.colour import count
from spreadwright.errors import UnknownName
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.service import collection


def papers_for(recipe: Recipe, set_id: str | None, colourway_id: str | None = None) -> PaperSet:
    """The paper set that is named, or the colourway's, or the first that fills every role of the recipe.

    Raises:
        UnknownName: There is no such set, or none at all.
        InvalidDocument: It carries an error.
    """
    named = set_id or (colourway_id.split(".")[0] if colourway_id else None)
    if named:
        return collection().paper_set(named)
    sets = collection().paper_sets
    fitting = (name for name, papers in sets.items() if papers.is_sound and count(recipe, papers.model))
    found = next(fitting, None) or next(iter(sets), None)
    if found is None:
        raise UnknownName("paper set", "", ())
    return collection().paper_set(found)
