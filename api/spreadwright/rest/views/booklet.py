"""A recipe as a booklet to print."""

from flask import request

from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import named_papers
from spreadwright.rest.forms import Arguments, pdf_form
from spreadwright.rest.queries import BookletQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import proven
from spreadwright.tasks.booklet import Dress, Format, dress, recipe_address
from spreadwright.tasks.booklet import booklet as booklet_pdf

blueprint = Resources("booklet", __name__, description=__doc__)


def _booklet(arguments: Arguments, recipe: Reading[Recipe], bench: Bench, worn: Dress | None, address: str) -> bytes:
    return booklet_pdf(
        recipe,
        bench,
        worn,
        paper=Format(arguments["page"]),
        language=arguments.get("language") or recipe.model.language,
        address=address,
    )


@blueprint.resource("/recipes/<recipe_id>/booklet", pdf_form(_booklet), query=BookletQuery)
def booklet(arguments: Arguments, recipe_id: str) -> Documents:
    """Everything that a class needs, to print: cover, cuts, piles, gluing and photographs; its code leads back here."""
    recipe = collection().recipe(recipe_id)
    bench = collection().bench(arguments.get("bench"), unit=recipe.model.unit)
    named, colourway = named_papers(arguments.get("set"), arguments.get("colourway")), arguments.get("colourway")
    worn = dress(proven(recipe), named, collection().sound_paper_sets(), colourway)
    return recipe, bench, worn, _address(recipe_id)


def _address(recipe_id: str) -> str:
    """Where the recipe is served; empty when the client named a host too long for a code."""
    try:
        return recipe_address(request.url_root, recipe_id)
    except ValueError:
        return ""
