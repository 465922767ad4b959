"""The documents that whoever asks may read: everybody what is published, owners and reviewers the rest too."""

from collections.abc import Callable
from typing import Any, NoReturn, TypeVar

from flask import g

from spreadwright.document import Reading
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.rest.identity import may_see, may_see_drafts
from spreadwright.store.collection import BENCH_OF_UNIT
from spreadwright.store.errors import Gone
from spreadwright.store.opening import Store
from spreadwright.store.rows import unknown
from spreadwright.store.values import Document, Head, State

_Found = TypeVar("_Found")


class Shelf:
    """Look-ups for the request at hand; what may not be read is as unknown as what is not there."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def head(self, kind: str, name: str) -> Head:
        """The latest revision of a document.

        Raises:
            UnknownName: There never was one, or it is not for whoever asks.
            Gone: It is deleted, and whoever asks may know that it was there.
        """
        return self._seen(self._found(self._store.documents.head, kind, name))

    def document(self, kind: str, name: str) -> Document:
        """A document as it stands; raises like `head`."""
        found = self._found(self._store.documents.get, kind, name)
        self._seen(found.head)
        return found

    def recipe(self, recipe_id: str) -> Reading[Recipe]:
        """The recipe of an id, as read; raises like `head`."""
        self.head("recipes", recipe_id)
        return self._store.shelves.recipe(recipe_id)

    def paper_set(self, set_id: str) -> PaperSet:
        """The paper set of an id; raises like `head`, and InvalidDocument where it carries an error."""
        self.head("paper-sets", set_id)
        return self._store.shelves.paper_set(set_id)

    def sound_paper_sets(self) -> tuple[PaperSet, ...]:
        """Every published paper set without an error, by id."""
        return self._store.shelves.sound_paper_sets()

    def bench(self, bench_id: str | None = None, *, unit: Unit = Unit.INCH) -> Bench:
        """The bench of an id, or the one that suits a document's unit; raises like `paper_set`."""
        name = bench_id or BENCH_OF_UNIT[unit]
        self.head("benches", name)
        return self._store.shelves.bench(name)

    def reading(self, document: Document) -> Reading[Any]:
        """A document, read."""
        return self._store.readings.of(document)

    def _found(self, look: Callable[[str, str], _Found], kind: str, name: str) -> _Found:
        try:
            return look(kind, name)
        except Gone:
            head = self._store.documents.head(kind, name, gone=True)
            if not may_see_drafts(head) and not self._store.history.is_known(head):
                self._refuse(head)
            raise

    def _seen(self, head: Head) -> Head:
        if not may_see(head):
            self._refuse(head)
        if head.state is not State.PUBLISHED:
            tell_own()
        return head

    def _refuse(self, head: Head) -> NoReturn:
        with self._store.database.reading() as session:
            raise unknown(session, head.kind, head.id)  # word for word what is said of an id that nothing has


def tell_own() -> None:
    """Something is read that is not for everybody."""
    g.is_own = True


def is_own() -> bool:
    """Whether something was read that is not for everybody."""
    return bool(g.get("is_own", False))
