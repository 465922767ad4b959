"""What lies beside a recipe's page: its steps one by one, and a script with what is told in the other unit."""

from collections.abc import Iterator

from spreadwright.gallery.recipe.instructions import Instructions
from spreadwright.gallery.recipe.page import RecipePage
from spreadwright.gallery.recipe.step_view import step_view
from spreadwright.gallery.shell import PageOf


def instruction_pages(page: RecipePage) -> Iterator[PageOf]:
    """All that is told of a recipe in files of its own, in the language that is spoken."""
    for told in page.told:
        shown = {"recipe": page, "view": step_view(told), "other": _other(page, told)}
        yield "steps.html", page.steps_path(told), shown
    for told in page.told[1:]:
        yield "recipe/told-script.html", page.script_path(told), {"recipe": page, "told": told}


def _other(page: RecipePage, told: Instructions) -> Instructions | None:
    return next((each for each in page.told if each is not told), None)
