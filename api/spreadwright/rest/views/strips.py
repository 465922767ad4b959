"""How a colourway is seen without colour, and by people who do not tell all colours apart."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.choices import papers_for
from spreadwright.rest.contact_envelopes import StripOfSights
from spreadwright.rest.forms import Arguments, json_form, pdf_form, picture_forms
from spreadwright.rest.queries import StripQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import chosen_colourway, proven
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.contact_answers import strip_answer
from spreadwright.tasks.strip import Strip, strip, strip_pdf, strip_svg

blueprint = Resources("test-strips", __name__, description=__doc__)


def _strip(arguments: Arguments, recipe: Reading[Recipe], papers: PaperSet) -> Strip:
    return strip(recipe, papers, chosen_colourway(proven(recipe), papers, arguments.get("colourway")))


def _answer(*found: Any) -> dict[str, Any]:
    return strip_answer(_strip(*found))


def _svg(*found: Any) -> bytes:
    return strip_svg(_strip(*found))


def _pdf(arguments: Arguments, *found: Any) -> bytes:
    return strip_pdf(_strip(arguments, *found), Format(arguments["page"]))


@blueprint.resource(
    "/recipes/<recipe_id>/test-strip",
    json_form(_answer, StripOfSights),
    *picture_forms(_svg)[:2],
    pdf_form(_pdf),
    query=StripQuery,
)
def strip_of_sights(arguments: Arguments, recipe_id: str) -> Documents:
    """One colourway in colour, as a grey print and under three colour-vision deficiencies, with what is lost."""
    recipe = collection().recipe(recipe_id)
    return recipe, papers_for(recipe.model, arguments.get("set"), arguments.get("colourway"))
