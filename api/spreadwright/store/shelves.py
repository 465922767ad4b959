"""Documents looked up as in a `Collection`, and as they are at the moment.

Drafts are found by their ids, too: who may see them is for others to say.
"""

from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from typing import Any

from sqlalchemy import select

from spreadwright.document import Pictures, Reading
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.store.collection import BENCH_OF_UNIT, sound
from spreadwright.store.database import Database
from spreadwright.store.documents import Documents
from spreadwright.store.errors import Gone
from spreadwright.store.readings import Readings
from spreadwright.store.tables import DocumentRow
from spreadwright.store.values import State

MOST_SETS = 200
"""Paper sets that are looked through where none is named."""
_SETS = (
    select(DocumentRow.id, DocumentRow.revision)
    .where(DocumentRow.kind == "paper-sets", DocumentRow.state == State.PUBLISHED.value)
    .order_by(DocumentRow.id)
    .limit(MOST_SETS)
)


class Shelves:
    """What is worked with."""

    def __init__(self, database: Database, documents: Documents, readings: Readings) -> None:
        self._database = database
        self._documents = documents
        self._readings = readings

    def recipe(self, recipe_id: str) -> Reading[Recipe]:
        """The recipe of an id, as read.

        Raises:
            UnknownName: There never was one.
            Gone: It is deleted.
        """
        return self._readings.latest("recipes", recipe_id)

    def paper_set(self, set_id: str) -> PaperSet:
        """The paper set of an id; raises like `recipe`, and InvalidDocument where it carries an error."""
        found: PaperSet = sound(self._readings.latest("paper-sets", set_id))
        return found

    def pictures(self, set_id: str) -> Pictures:
        """What finds the pictures of the paper set of an id; raises like `recipe`."""
        return partial(self._documents.picture, self._documents.get("paper-sets", set_id))

    def sound_paper_sets(self) -> tuple[PaperSet, ...]:
        """Every published paper set without an error, by id, so many at most."""
        with self._database.reading() as session:
            found = session.execute(_SETS).all()
        return tuple(reading.model for name, revision in found for reading in self._sets(name, revision))

    def _sets(self, name: str, revision: int) -> Iterator[Reading[Any]]:
        """The one of that name, unless it carries an error or was deleted a moment ago."""
        with suppress(Gone):
            reading = self._readings.at("paper-sets", name, revision)
            if reading.is_sound:
                yield reading

    def bench(self, bench_id: str | None = None, *, unit: Unit = Unit.INCH) -> Bench:
        """The bench of an id, or the one that suits a document's unit; raises like `paper_set`."""
        found: Bench = sound(self._readings.latest("benches", bench_id or BENCH_OF_UNIT[unit]))
        return found
