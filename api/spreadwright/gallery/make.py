"""From an order to bytes: the pages of one recipe in every language, and the files beside them. Pure."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from spreadwright.gallery.exchange_data import exchange_data
from spreadwright.gallery.facts import Facts, facts_of, recipe_path
from spreadwright.gallery.howto import howto
from spreadwright.gallery.instruction_pages import instruction_pages
from spreadwright.gallery.jobs import RecipeJob, RecipeOrder, recipe_job
from spreadwright.gallery.recipe_page import RecipePage, recipe_page, recipe_pictures
from spreadwright.gallery.sharing import Shared, code_file, shared
from spreadwright.gallery.shell import Shell, shell
from spreadwright.words import speaking

PageOf = tuple[str, str, dict[str, Any]]
"""A template, the path of a page below the home of its language, and what it is shown."""


@dataclass(frozen=True, slots=True)
class Made:
    """What came of one order.

    Attributes:
        files: Contents by path within the site, always with forward slashes.
        facts: What pages about many recipes need to know, in each language of the site.
    """

    files: dict[str, bytes]
    facts: tuple[Facts, ...]


def made_recipe(order: RecipeOrder) -> Made:
    """All that one recipe brings to the gallery.

    Raises:
        InvalidDocument: The recipe carries an error on the bench that it is cut on, or a paper set does.
        CannotDraw: A picture could not be drawn.
    """
    job, around = recipe_job(order), shell(order.site, order.works)
    with speaking(job.recipe.language):
        pictures, drawn = recipe_pictures(job)
    files = {**drawn, **code_file(job.recipe, _shared(job, job.site.languages[0]))}
    facts = []
    for language in order.site.languages:
        with speaking(language):
            page, own = recipe_page(job, pictures)
            facts.append(facts_of(page))
            files |= {order.site.home(language) + path: data for path, data in own.items()}
            files |= dict(_rendered(around, job, page, language))
    return Made(files, tuple(facts))


def _rendered(around: Shell, job: RecipeJob, page: RecipePage, language: str) -> Iterator[tuple[str, bytes]]:
    for template, path, shown in pages_of(job, page, language):
        yield job.site.home(language) + path, around.page(template, path, language, shown)


def pages_of(job: RecipeJob, page: RecipePage, language: str) -> Iterator[PageOf]:
    """The pages about one recipe, in the language that is spoken."""
    found = _shared(job, language)
    shown = {
        "recipe": page,
        "facts": facts_of(page),
        "lineage": job.lineage,
        "shared": found,
        "howto": howto(page, language, found.address, found.picture),
        "exchange_data": exchange_data(page.exchange) if page.exchange else None,
    }
    yield "recipe.html", page.path, shown
    yield from instruction_pages(page)


def _shared(job: RecipeJob, language: str) -> Shared:
    """How the page in a language is shared; the square code leads to the one in the first."""
    return shared(job.recipe, job.site.home(language) + recipe_path(job.recipe.id), job.site.address)
