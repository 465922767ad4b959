"""From a collection to a folder of pages, all at once or not at all."""

import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import Executor
from concurrent.futures.process import BrokenProcessPool
from contextlib import nullcontext
from datetime import datetime
from pathlib import Path

from spreadwright.errors import InvalidDocument, InvalidDocuments
from spreadwright.gallery.documents import Documents, collected, paper_set_of
from spreadwright.gallery.facts import Facts
from spreadwright.gallery.feeds import feed_files, feed_links, sitemap_files
from spreadwright.gallery.fingerprints import fingerprint
from spreadwright.gallery.folder import replaced
from spreadwright.gallery.jobs import RecipeOrder, recipe_orders
from spreadwright.gallery.kept import Kept
from spreadwright.gallery.make import Made, made_recipe
from spreadwright.gallery.offline import offline_files
from spreadwright.gallery.overviews import overviews
from spreadwright.gallery.paper_set_page import paper_set_files
from spreadwright.gallery.run import run_mkdocs
from spreadwright.gallery.shell import GalleryNotBuilt, shell
from spreadwright.gallery.site import Site
from spreadwright.gallery.workers import Here, Workers, carried_out
from spreadwright.gallery.works import works
from spreadwright.model import PaperSet
from spreadwright.store import Collection
from spreadwright.words import speaking

Progress = Callable[[int, int, str], None]


def build(
    collection: Collection,
    output: Path,
    *,
    site: Site | None = None,
    dated: datetime | None = None,
    executor: Executor | None = None,
    processes: int | None = None,
    kept: Kept | None = None,
    progress: Progress | None = None,
) -> None:
    """Write the gallery of a collection into a folder; the same collection gives the same bytes.

    Whatever lay there before stays whole until everything is built.

    Args:
        collection: Recipes, paper sets and benches.
        output: The folder to write; made when missing, replaced when it holds an earlier gallery.
        site: Its languages, its address, and the service that it may ask.
        dated: For the feeds, which a gallery without a date, or without an address, has none of.
        executor: Where recipes are made; worker processes of our own when left out. A program that lets us start
            them keeps its beginning under ``if __name__ == "__main__"``.
        processes: How many of our own; as many as there are cores when left out, and 1 is this process itself.
        kept: What was made before, and need not be made again.
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
    documents, now = collected(collection), works()
    papers = _paper_sets(documents)
    orders = recipe_orders(documents, site, now)
    with replaced(output) as stage:
        run_mkdocs(site, stage)
        facts: dict[int, tuple[Facts, ...]] = {}
        for number, made in _made(orders, kept, executor, processes):
            _write(made.files, stage)
            facts[number] = made.facts
            if progress:
                progress(len(facts), len(orders), orders[number].recipe.id)
        _write_overviews([facts[number] for number in range(len(orders))], papers, site, now, dated, stage)
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
    _refuse(broken)
    return tuple(papers)


def _made(
    orders: Sequence[RecipeOrder], kept: Kept | None, executor: Executor | None, processes: int | None
) -> Iterator[tuple[int, Made]]:
    """What came of each order, by its number: first what is kept, then the rest in order of completion.

    All are tried, so that whoever mends documents is told of every one that is broken.
    """
    shared: dict[int, bytes] = {}
    keys = [fingerprint(order, shared) for order in orders]
    missing = []
    for number, key in enumerate(keys):
        if kept and (made := kept.get(key)):
            yield number, made
        else:
            missing.append(number)
    broken: dict[int, InvalidDocument] = {}
    with _executor(executor, processes, len(missing)) as chosen:
        for place, future in carried_out(made_recipe, [orders[number] for number in missing], chosen):
            number = missing[place]
            try:
                made = future.result()
            except InvalidDocument as reason:
                broken[number] = reason
                continue
            except BrokenProcessPool as reason:
                raise GalleryNotBuilt("a process that helped has died; try fewer of them") from reason
            if kept:
                kept.put(keys[number], made)
            yield number, made
    _refuse([broken[number] for number in sorted(broken)])


def _executor(given: Executor | None, processes: int | None, orders: int) -> Executor | nullcontext[Executor]:
    """What is given stays its giver's; what is ours ends with the block."""
    if given is not None:
        return nullcontext(given)
    count = min(processes or _cores(), orders)
    return Here() if count <= 1 else Workers(count)


def _cores() -> int:
    """How many this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _refuse(broken: Sequence[InvalidDocument]) -> None:
    if len(broken) == 1:
        raise broken[0]
    if broken:
        raise InvalidDocuments(broken)


def _write_overviews(
    recipes: Sequence[tuple[Facts, ...]],
    papers: Sequence[PaperSet],
    site: Site,
    now: str,
    dated: datetime | None,
    stage: Path,
) -> None:
    around = shell(site, now)
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
