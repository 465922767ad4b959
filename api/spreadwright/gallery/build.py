"""From a collection to a folder of pages, all at once or not at all."""

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Executor
from datetime import datetime
from pathlib import Path

from spreadwright.errors import InvalidDocument
from spreadwright.gallery.make import recipe_orders
from spreadwright.gallery.making import Workshop, brought, refuse
from spreadwright.gallery.offline import offline_files
from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.overview.feeds import feed_files, feed_links, sitemap_files
from spreadwright.gallery.overview.pages import overviews
from spreadwright.gallery.overview.paper_set import paper_set_files
from spreadwright.gallery.prose.commands import Command
from spreadwright.gallery.prose.run import run_mkdocs
from spreadwright.gallery.shell import shell
from spreadwright.gallery.site import Site
from spreadwright.gallery.work.documents import Documents, collected, paper_set_of
from spreadwright.gallery.work.folder import replaced
from spreadwright.gallery.work.kept import Kept
from spreadwright.gallery.work.works import theme
from spreadwright.model import PaperSet
from spreadwright.store import Collection
from spreadwright.words import speaking

Progress = Callable[[int, int, str], None]


def build(
    collection: Collection | Documents,
    output: Path,
    *,
    site: Site | None = None,
    dated: datetime | None = None,
    executor: Executor | None = None,
    processes: int | None = None,
    kept: Kept | None = None,
    commands: Sequence[Command] = (),
    progress: Progress | None = None,
) -> None:
    """Write the gallery of a collection into a folder; the same collection gives the same bytes.

    Whatever lay there before stays whole until everything is built.

    Args:
        collection: Recipes, paper sets and benches, or their documents.
        output: The folder to write; made when missing, replaced when it holds an earlier gallery.
        site: Its languages, its address, and the service that it may ask.
        dated: For the feeds, which a gallery without a date, or without an address, has none of.
        executor: Where recipes are made; worker processes of our own when left out. A program that lets us start
            them keeps its beginning under ``if __name__ == "__main__"``.
        processes: How many of our own; as many as there are cores when left out, and 1 is this process itself.
        kept: What was made before, and need not be made again.
        commands: For the reference of the command line, which they describe themselves.
        progress: Told after each recipe: how many are done, how many there are, and its id.

    Raises:
        InvalidDocument: A recipe or a paper set carries an error.
        InvalidDocuments: Several do.
        NotAGallery: The folder holds something else.
        CannotWrite: The folder cannot be written.
        CannotDraw: A picture could not be drawn.
        GalleryNotBuilt: The pages themselves did not build.
    """
    site = site or Site()
    documents = collection if isinstance(collection, Documents) else collected(collection)
    workshop = Workshop(executor, processes, kept)
    papers = _paper_sets(documents)
    orders = recipe_orders(documents, site)
    with replaced(output) as stage:
        run_mkdocs(site, stage, commands)
        facts: dict[int, tuple[Facts, ...]] = {}
        for each in brought(orders, workshop):
            _write(each.files, stage)
            if each.facts is None:
                continue
            facts[each.place] = each.facts
            if progress:
                progress(len(facts), len(orders), orders[each.place].recipe.id)
        _write_overviews([facts[number] for number in range(len(orders))], papers, site, dated, stage)
        _write(sitemap_files(site, (page.relative_to(stage).as_posix() for page in stage.rglob("*.html"))), stage)
    if kept:
        kept.trim()


def _paper_sets(documents: Documents) -> tuple[PaperSet, ...]:
    papers, broken = [], []
    for each in documents.paper_sets:
        try:
            papers.append(paper_set_of(each))
        except InvalidDocument as reason:
            broken.append(reason)
    refuse(broken)
    return tuple(papers)


def _write_overviews(
    recipes: Sequence[tuple[Facts, ...]],
    papers: Sequence[PaperSet],
    site: Site,
    dated: datetime | None,
    stage: Path,
) -> None:
    around = shell(site, theme())
    _write(offline_files(around, site), stage)
    for each in papers:
        _write(paper_set_files(each), stage)
    _write(feed_files([facts[0] for facts in recipes], site, dated, around.name), stage)
    for number, language in enumerate(site.languages):
        with speaking(language):
            found = overviews([facts[number] for facts in recipes], papers, feed_links(site, dated))
            for template, path, shown in found:
                _write({site.home(language) + path: around.page(template, path, language, shown)}, stage)


def _write(files: Mapping[str, bytes], stage: Path) -> None:
    for path, data in files.items():
        file = stage / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
