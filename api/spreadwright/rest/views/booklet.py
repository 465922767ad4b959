"""A recipe as a booklet to print."""

from contextlib import nullcontext

from flask import request

from spreadwright.document import Reading
from spreadwright.errors import PrintTooLong
from spreadwright.model import Bench, Recipe, part_count
from spreadwright.rest.choices import named_papers, on_bench
from spreadwright.rest.forms import Arguments, pdf_form
from spreadwright.rest.queries import BookletQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection, service
from spreadwright.rest.turns import turn
from spreadwright.rest.working import told
from spreadwright.tasks import proven
from spreadwright.tasks.booklet import Dress, Format, dress, recipe_address
from spreadwright.tasks.booklet import booklet as booklet_pdf

blueprint = Resources("booklet", __name__, description=__doc__)


_LONG, _SECONDS = 60, 13
"""More pieces than this take seconds: they are a job, and wait for a turn."""
_STEPS = 6
"""How many words a booklet tells on its way."""


def _booklet(arguments: Arguments, recipe: Reading[Recipe], bench: Bench, worn: Dress | None, address: str) -> bytes:
    count = part_count(recipe.model)
    steps = iter(range(1, 1000))
    with turn(_SECONDS) if count > _LONG else nullcontext():
        return booklet_pdf(
            recipe,
            bench,
            worn,
            paper=Format(arguments["page"]),
            language=arguments.get("language") or recipe.model.language,
            address=address,
            most_pages=service().settings.print_pages,
            told=lambda words: told(min(1.0, next(steps) / _STEPS), words),
        )


def _expected_s(_: Arguments, recipe: Reading[Recipe], *__: object) -> float:
    count = part_count(recipe.model)
    most = service().settings.booklet_pieces
    if count > most:
        raise PrintTooLong(count, most)
    return _SECONDS if count > _LONG else 0


@blueprint.resource("/recipes/<recipe_id>/booklet", pdf_form(_booklet), query=BookletQuery, expected_s=_expected_s)
def booklet(arguments: Arguments, recipe_id: str) -> Documents:
    """Everything that a class needs, to print: cover, cuts, piles, gluing and photographs; its code leads back here.

    A recipe of more than 300 pieces, or a booklet of more than 200 pages, is answered with 422 and `print-too-long`,
    unless the service is set up otherwise; a recipe of more than 60 pieces is a job.
    """
    recipe, bench = on_bench(arguments, recipe_id)
    colourway = arguments.get("colourway")
    named = named_papers(arguments.get("set"), colourway)
    worn = dress(proven(recipe), named, collection().sound_paper_sets(), colourway)
    return recipe, bench, worn, _address(recipe_id)


def _address(recipe_id: str) -> str:
    """Where the recipe is served; empty when the client named a host too long for a code."""
    try:
        return recipe_address(request.url_root, recipe_id)
    except ValueError:
        return ""
