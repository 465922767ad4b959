"""From a collection to a folder of pages, all at once or not at all."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path

from spreadwright.gallery.documents import collected, paper_set_of
from spreadwright.gallery.facts import Facts
from spreadwright.gallery.folder import replaced
from spreadwright.gallery.jobs import recipe_orders
from spreadwright.gallery.make import Made, made_recipe
from spreadwright.gallery.overviews import overviews
from spreadwright.gallery.paper_set_page import paper_set_files
from spreadwright.gallery.run import run_mkdocs
from spreadwright.gallery.shell import Shell, shell
from spreadwright.gallery.site import Site
from spreadwright.model import PaperSet
from spreadwright.store import Collection
from spreadwright.words import speaking

Progress = Callable[[int, int, str], None]


def build(collection: Collection, output: Path, *, site: Site | None = None, progress: Progress | None = None) -> None:
    """Write the gallery of a collection into a folder; the same collection gives the same bytes.

    Whatever lay there before stays whole until everything is built.

    Args:
        collection: Recipes, paper sets and benches.
        output: The folder to write; made when missing, replaced when it holds an earlier gallery.
        site: Its languages, its address, and the service that it may ask.
        progress: Told after each recipe: how many are done, how many there are, and its id.

    Raises:
        InvalidDocument: A recipe or a paper set carries an error.
        NotAGallery: The folder holds something else.
        CannotWrite: The folder cannot be written.
        CannotDraw: A picture could not be drawn.
        GalleryNotBuilt: The pages themselves did not build.
    """
    site = site or Site()
    documents = collected(collection)
    papers = tuple(paper_set_of(each) for each in documents.paper_sets)
    orders = recipe_orders(documents, site, "")
    with replaced(output) as stage:
        run_mkdocs(site, stage)
        recipes = []
        for number, order in enumerate(orders, start=1):
            recipes.append(_written(made_recipe(order), stage))
            if progress:
                progress(number, len(orders), order.recipe.id)
        _write_overviews(shell(site, ""), site, recipes, papers, stage)


def _write_overviews(
    around: Shell, site: Site, recipes: Sequence[Sequence[Facts]], papers: Iterable[PaperSet], stage: Path
) -> None:
    sets = tuple(papers)
    for each in sets:
        _write(paper_set_files(each), stage)
    for number, language in enumerate(site.languages):
        with speaking(language):
            for template, path, shown in overviews([facts[number] for facts in recipes], sets):
                _write({site.home(language) + path: around.page(template, path, language, shown)}, stage)


def _written(made: Made, stage: Path) -> tuple[Facts, ...]:
    _write(made.files, stage)
    return made.facts


def _write(files: Mapping[str, bytes], stage: Path) -> None:
    for path, data in files.items():
        file = stage / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
