"""Every recipe of a gallery: what is kept from before is taken, the rest is made in several processes."""

import os
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import Executor, Future
from concurrent.futures.process import BrokenProcessPool
from contextlib import nullcontext
from dataclasses import dataclass, replace

from spreadwright.errors import InvalidDocument, InvalidDocuments
from spreadwright.gallery.make import MadeRecipe, RecipeOrder, made_recipe
from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.recipe.page import RecipePictures
from spreadwright.gallery.refusals import GalleryNotBuilt
from spreadwright.gallery.work.fingerprints import fingerprint
from spreadwright.gallery.work.kept import Kept
from spreadwright.gallery.work.workers import Here, Workers, carried_out


@dataclass(frozen=True, slots=True)
class Workshop:
    """Where recipes are made, and where results are kept.

    Attributes:
        executor: Where they are made; processes of our own where there is none.
        processes: How many of our own; as many as there are cores where it is not said, and 1 is this process itself.
        kept: What was made before, if anything is kept.
    """

    executor: Executor | None = None
    processes: int | None = None
    kept: Kept | None = None

    def open_for(self, orders: int) -> Executor | nullcontext[Executor]:
        """Something that carries out so many orders; what is given stays its giver's, ours ends with the block."""
        if self.executor is not None:
            return nullcontext(self.executor)
        count = min(self.processes or _cores(), orders)
        return Here() if count <= 1 else Workers(count)


@dataclass(frozen=True, slots=True)
class Brought:
    """What there is of one recipe, by its place among the orders.

    Attributes:
        files: Contents by path within the site.
        facts: In each language; None as long as its pages are still to come.
    """

    place: int
    files: Mapping[str, bytes]
    facts: tuple[Facts, ...] | None


def brought(orders: Sequence[RecipeOrder], workshop: Workshop) -> Iterator[Brought]:
    """Every recipe: first what is kept, then what is made in order of completion.

    All are tried, so that whoever mends documents is told of every one that is broken.

    Raises:
        InvalidDocument: A recipe carries an error.
        InvalidDocuments: Several do.
        CannotDraw: A picture could not be drawn.
        GalleryNotBuilt: A template is faulty, or a process has died.
    """
    missing: list[_Missing] = []
    for place, (order, keys) in enumerate(zip(orders, _keys(orders), strict=True)):
        files, facts, pictures = _known(keys, workshop.kept)
        if facts is None:
            missing.append(_Missing(place, replace(order, pictures=pictures), keys))
        if files:
            yield Brought(place, files, facts)
    broken: dict[int, InvalidDocument] = {}
    with workshop.open_for(len(missing)) as executor:
        for number, future in carried_out(made_recipe, [each.order for each in missing], executor):
            try:
                yield _brought(missing[number], future, workshop.kept)
            except InvalidDocument as reason:
                broken[missing[number].place] = reason
    refuse([broken[place] for place in sorted(broken)])


def refuse(broken: Sequence[InvalidDocument]) -> None:
    """Raise what there is to raise."""
    if len(broken) == 1:
        raise broken[0]
    if broken:
        raise InvalidDocuments(broken)


@dataclass(frozen=True, slots=True)
class _Keys:
    """Under what the pictures and the pages of a recipe are kept."""

    pictures: str
    pages: str


@dataclass(frozen=True, slots=True)
class _Missing:
    """A recipe of which not everything is kept."""

    place: int
    order: RecipeOrder
    keys: _Keys


def _keys(orders: Sequence[RecipeOrder]) -> Iterator[_Keys]:
    """Pictures follow from documents and code alone: a change of the theme, or of the languages, leaves them."""
    shared: dict[int, bytes] = {}
    for order in orders:
        pictures = fingerprint(("pictures", order.recipe, order.documents, order.code), shared)
        yield _Keys(pictures, fingerprint(("pages", pictures, order.lineage, order.site, order.theme), shared))


def _known(
    keys: _Keys, kept: Kept | None
) -> tuple[Mapping[str, bytes], tuple[Facts, ...] | None, RecipePictures | None]:
    """The files that are kept, and what is known by them; pages are of no use without their pictures."""
    pictures = kept.get(keys.pictures, RecipePictures) if kept else None
    pages = kept.get(keys.pages, tuple[Facts, ...]) if kept and pictures else None
    files = {**(pictures.files if pictures else {}), **(pages.files if pages else {})}
    return files, pages.told if pages else None, pictures.told if pictures else None


def _brought(missing: _Missing, future: Future[MadeRecipe], kept: Kept | None) -> Brought:
    try:
        made = future.result()
    except BrokenProcessPool as reason:
        raise GalleryNotBuilt("a process that helped has died; try fewer of them") from reason
    if kept:
        kept.put(missing.keys.pages, made.pages)
    if kept and made.pictures:
        kept.put(missing.keys.pictures, made.pictures)
    files = {**(made.pictures.files if made.pictures else {}), **made.pages.files}
    return Brought(missing.place, files, made.pages.told)


def _cores() -> int:
    """How many this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
