"""Which paper set is meant when a query does not name one."""

from spreadwright import colour
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.service import collection
from spreadwright.tasks import fitting_set


def papers_for(recipe: Recipe, set_id: str | None, colourway_id: str | None = None) -> PaperSet:
    """The paper set that is named, or the colourway's, or the first that fills every role of the recipe.

    Raises:
        UnknownName: There is no such set, or none at all.
        InvalidDocument: It carries an error.
    """
    return named_papers(set_id, colourway_id) or fitting_set(recipe, collection().sound_paper_sets())


def named_papers(set_id: str | None, colourway_id: str | None) -> PaperSet | None:
    """The paper set that is named, or the colourway's; None when neither is."""
    named = set_id or (colour.set_of(colourway_id) if colourway_id else None)
    return collection().paper_set(named) if named else None
