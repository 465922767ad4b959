"""The spread as it will lie on the table, in any papers."""

from spreadwright.document import Reading
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.choices import papers_for
from spreadwright.rest.forms import Arguments, picture_forms
from spreadwright.rest.queries import PreviewQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import chosen_colourway, proven
from spreadwright.tasks.draw import preview_svg

blueprint = Resources("preview", __name__, description=__doc__)


def _spread(arguments: Arguments, recipe: Reading[Recipe], papers: PaperSet) -> bytes:
    colourway = chosen_colourway(proven(recipe), papers, arguments.get("colourway"))
    return preview_svg(recipe, colourway, papers=papers.title)


@blueprint.resource("/recipes/<recipe_id>/preview", *picture_forms(_spread), query=PreviewQuery)
def preview(arguments: Arguments, recipe_id: str) -> Documents:
    """The spread in one colourway."""
    recipe = collection().recipe(recipe_id)
    return recipe, papers_for(recipe.model, arguments.get("set"), arguments.get("colourway"))
