"""From an order to bytes: the pages of one recipe in every language, and the files beside them. Pure."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Generic, TypeVar

from spreadwright.errors import InvalidDocument
from spreadwright.gallery.overview.facts import Facts, facts_of
from spreadwright.gallery.recipe.exchange import exchange
from spreadwright.gallery.recipe.exchange_data import exchange_script
from spreadwright.gallery.recipe.howto import howto
from spreadwright.gallery.recipe.instruction_pages import instruction_pages
from spreadwright.gallery.recipe.job import RecipeJob, recipe_job
from spreadwright.gallery.recipe.lineage import Lineage, lineages
from spreadwright.gallery.recipe.page import RecipePage, RecipePictures, recipe_page, recipe_pictures
from spreadwright.gallery.recipe.paths import page_path
from spreadwright.gallery.recipe.sharing import Shared, code_file, shared
from spreadwright.gallery.refusals import GalleryNotBuilt
from spreadwright.gallery.shell import PageOf, shell
from spreadwright.gallery.site import Site
from spreadwright.gallery.work import works
from spreadwright.gallery.work.documents import Document, Documents, outline_of
from spreadwright.model import Recipe
from spreadwright.words import speaking

Told = TypeVar("Told")


@dataclass(frozen=True, slots=True)
class RecipeOrder:
    """Everything that the pages and files of one recipe follow from, in a form that travels to any process.

    Attributes:
        recipe: The document.
        documents: The paper sets and benches.
        lineage: What the page says of other recipes.
        site: The gallery that they are for.
        code: The fingerprint of the code that is to make them, see `works`.
        theme: Likewise of the templates.
        pictures: What is known of the recipe's pictures, if there is no need to make them.
    """

    recipe: Document
    documents: Documents
    lineage: Lineage
    site: Site
    code: str
    theme: str
    pictures: RecipePictures | None = None


@dataclass(frozen=True, slots=True)
class Made(Generic[Told]):
    """Files, and what is to be known of them.

    Attributes:
        files: Contents by path within the site, always with forward slashes.
        told: It can be kept as JSON.
    """

    files: dict[str, bytes]
    told: Told


@dataclass(frozen=True, slots=True)
class MadeRecipe:
    """What came of one order: pictures, unless they were not asked for, and pages with facts in each language."""

    pictures: Made[RecipePictures] | None
    pages: Made[tuple[Facts, ...]]


def recipe_orders(documents: Documents, site: Site) -> tuple[RecipeOrder, ...]:
    """An order for every recipe, by id; each with the paper sets and benches, not with the other recipes."""
    others = Documents((), documents.paper_sets, documents.benches)
    relatives = lineages([outline_of(each) for each in documents.recipes])
    code, theme = works.code(), works.theme()
    return tuple(RecipeOrder(each, others, relatives[each.id], site, code, theme) for each in documents.recipes)


def made_recipe(order: RecipeOrder) -> MadeRecipe:
    """All that one recipe brings to the gallery.

    Raises:
        InvalidDocument: The recipe carries an error on the bench that it is cut on, or a paper set does.
        CannotDraw: A picture could not be drawn.
        GalleryNotBuilt: A template is faulty, or this process has another state of the code.
    """
    if order.code != works.code():
        raise GalleryNotBuilt("the code was changed meanwhile, or is another one where it runs; start again")
    try:
        job = recipe_job(order.recipe, order.documents)
    except InvalidDocument as reason:  # titles are anything; the id leads to the document
        raise InvalidDocument(order.recipe.id, reason.findings) from reason
    drawn = None if order.pictures else _drawn(job)
    pictures = drawn.told if drawn else order.pictures
    assert pictures is not None
    return MadeRecipe(drawn, _written(order, job, pictures))


def _drawn(job: RecipeJob) -> Made[RecipePictures]:
    with speaking(job.recipe.language):
        pictures, files = recipe_pictures(job)
    return Made(dict(files), pictures)


def _written(order: RecipeOrder, job: RecipeJob, pictures: RecipePictures) -> Made[tuple[Facts, ...]]:
    """The pages in every language, and the files with words in them."""
    site, around, worn = order.site, shell(order.site, order.theme), exchange(job.reading, job.proposals)
    files, facts = code_file(job.recipe, _shared(order, job.recipe, site.languages[0])), []
    for language in site.languages:
        with speaking(language):
            page, own = recipe_page(job, pictures, worn)
            facts.append(facts_of(page))
            files |= {site.home(language) + path: data for path, data in own.items()}
            for template, path, shown in pages_of(order, page, language):
                files[site.home(language) + path] = around.page(template, path, language, shown)
    return Made(files, tuple(facts))


def pages_of(order: RecipeOrder, page: RecipePage, language: str) -> Iterator[PageOf]:
    """The pages about one recipe, in the language that is spoken."""
    found = _shared(order, page.recipe, language)
    shown = {
        "recipe": page,
        "facts": facts_of(page),
        "lineage": order.lineage,
        "shared": found,
        "howto": howto(page, language, found.address, found.picture),
        "exchange_script": exchange_script(page.exchange) if page.exchange else None,
    }
    yield "recipe.html", page.path, shown
    yield from instruction_pages(page)


def _shared(order: RecipeOrder, recipe: Recipe, language: str) -> Shared:
    """How the page in a language is shared; the square code leads to the one in the first."""
    return shared(recipe, order.site.home(language) + page_path(recipe.id), order.site.address)
