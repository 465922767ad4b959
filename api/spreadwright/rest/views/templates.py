"""The placement of a recipe at full size, to print and tape together."""

from spreadwright.document import Reading
from spreadwright.errors import PrintTooLong
from spreadwright.model import Bench, Recipe
from spreadwright.rest.choices import on_bench
from spreadwright.rest.forms import Arguments, pdf_form
from spreadwright.rest.queries import TemplatesQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import service
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.templates import template_plan
from spreadwright.tasks.templates import templates as templates_pdf

blueprint = Resources("templates", __name__, description=__doc__)


def _printed(arguments: Arguments, recipe: Reading[Recipe], bench: Bench) -> bytes:
    paper, most = Format(arguments["page"]), service().settings.print_pages
    count = template_plan(recipe, bench, paper).total
    if count > most:
        raise PrintTooLong(count, most, "pages")
    return templates_pdf(recipe, bench, paper)


@blueprint.resource("/recipes/<recipe_id>/templates", pdf_form(_printed), query=TemplatesQuery)
def templates(arguments: Arguments, recipe_id: str) -> Documents:
    """The placement at full size over several sheets of paper, with marks to tape them together by and a scale.

    More than 200 pages are answered with 422 and `print-too-long`, unless the service is set up otherwise.
    """
    return on_bench(arguments, recipe_id)
