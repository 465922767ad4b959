"""What a query means: which recipe, on whose bench, in which papers, named or not."""

from spreadwright import colour
from spreadwright.document import Reading
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.rest.forms import Arguments
from spreadwright.rest.service import collection
from spreadwright.tasks import fitting_set


def on_bench(arguments: Arguments, recipe_id: str) -> tuple[Reading[Recipe], Bench]:
    """The recipe of an id, and the bench that is named, or the one that suits its unit.

    Raises:
        UnknownName, Gone: There is no such recipe or bench.
        InvalidDocument: The bench carries an error.
    """
    recipe = collection().recipe(recipe_id)
    return recipe, collection().bench(arguments.get("bench"), unit=recipe.model.unit)


def sets_for(set_id: str | None) -> tuple[PaperSet, ...]:
    """The paper set that is named, else all that are sound; raises like `papers_for`."""
    return (collection().paper_set(set_id),) if set_id else collection().sound_paper_sets()


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
