"""Many spreads on one sheet: a recipe in many colourways, many recipes in one paper set."""

from collections.abc import Callable, Iterable
from contextlib import AbstractContextManager, nullcontext

from spreadwright.document import Reading
from spreadwright.model import PaperSet, Recipe
from spreadwright.rest.choices import sets_for
from spreadwright.rest.contact_envelopes import ContactSheet as Shape
from spreadwright.rest.forms import PNG, SVG, Arguments, Form, json_form, pdf_form
from spreadwright.rest.lists import links_after
from spreadwright.rest.parameters import wrong
from spreadwright.rest.queries import ContactSheetQuery, SetSheetQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection, service
from spreadwright.rest.turns import turn
from spreadwright.store.wanted import Wanted
from spreadwright.tasks.contact_answers import contact_answer
from spreadwright.tasks.contact_sheet import (
    ContactSheet,
    Format,
    colourways_sheet,
    recipes_sheet,
    sheet_pdf,
    sheet_png,
    sheet_svg,
)

blueprint = Resources("contact-sheets", __name__, description=__doc__)

_QUICK, _SECONDS = 6, 8
"""More spreads than this take seconds to make pixels of: they are a job, and wait for a turn."""

Sheet = Callable[..., ContactSheet]


def _patience(sheet: ContactSheet) -> AbstractContextManager[None]:
    return turn(_SECONDS) if len(sheet.frames) > _QUICK else nullcontext()


def _forms(sheet_of: Sheet) -> tuple[Form, ...]:
    def svg(arguments: Arguments, *found: object) -> bytes:
        return sheet_svg(sheet_of(arguments, *found))

    def png(arguments: Arguments, *found: object) -> bytes:
        sheet = sheet_of(arguments, *found)
        with _patience(sheet):
            return sheet_png(sheet, arguments["width"])

    def pdf(arguments: Arguments, *found: object) -> bytes:
        sheet = sheet_of(arguments, *found)
        with _patience(sheet):
            return sheet_pdf(sheet, Format(arguments["page"]))

    return (
        Form("svg", SVG, svg, {"type": "string"}, is_quick=True),
        Form("png", PNG, png, {"type": "string", "format": "binary"}),
        pdf_form(pdf),
        json_form(lambda *found: contact_answer(sheet_of(*found)), Shape, is_quick=True),
    )


def _of_recipe(arguments: Arguments, reading: Reading[Recipe], *sets: PaperSet) -> ContactSheet:
    return colourways_sheet(reading, sets, arguments["n"])


def _of_set(_: Arguments, papers: PaperSet, _after: str, *readings: Reading[Recipe]) -> ContactSheet:
    return recipes_sheet(readings, papers)


def _seconds_of_recipe(arguments: Arguments, *_: object) -> float:
    return _SECONDS if arguments["n"] > _QUICK else 0


def _seconds_of_set(_: Arguments, _papers: PaperSet, _after: str, *readings: Reading[Recipe]) -> float:
    return _SECONDS if len(readings) > _QUICK else 0


def _pages(_: Arguments, _papers: PaperSet, after: str, *_readings: Reading[Recipe]) -> Iterable[str]:
    return links_after(after)


@blueprint.resource(
    "/recipes/<recipe_id>/contact-sheet",
    *_forms(_of_recipe),
    query=ContactSheetQuery,
    expected_s=_seconds_of_recipe,
)
def contact_sheet(arguments: Arguments, recipe_id: str) -> Documents:
    """The recipe in the colourways that please most, each with its papers, score, reason and id.

    A picture or a JSON list; the PDF is paged. PNG and PDF of more than 6 spreads are a job.
    """
    return collection().recipe(recipe_id), *sets_for(arguments.get("set"))


@blueprint.resource(
    "/paper-sets/<set_id>/contact-sheet",
    *_forms(_of_set),
    query=SetSheetQuery,
    links=_pages,
    expected_s=_seconds_of_set,
)
def set_contact_sheet(arguments: Arguments, set_id: str) -> Documents:
    """The recipes of the collection in the papers of one set, each in its best colourway.

    Recipes that the set cannot fill are named with the reason. At most 24 come at a time; PNG and PDF of more than 6
    are a job, as for one recipe.
    """
    papers = collection().paper_set(set_id)
    wanted = Wanted(kind="recipes", limit=arguments["limit"], after=arguments.get("after"))
    found = service().store.listing.page(wanted)
    if not found.documents:
        raise wrong("after", "There are no recipes here.", "Leave it out.")
    return papers, found.next or "", *(collection().reading(each) for each in found.documents)
