"""What nothing needs any more is removed: old keys of requests, jobs that are over, past counts, loose contents.

Each step removes a bounded number in a transaction of its own, so that writers wait for milliseconds. What a revision
refers to is never removed, not even by a writer who refers to it in the same moment (`rows.keep_contents`).
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from sqlalchemy import ColumnElement, delete, func, select, text, tuple_
from sqlalchemy import true as always

from spreadwright.store.counters import Counting
from spreadwright.store.database import Database
from spreadwright.store.jobs import Jobs
from spreadwright.store.rows import CONTENTS_TURN
from spreadwright.store.tables import ContentRow, DocumentRow, RequestKeyRow, RevisionRow

MOST = 500
"""Rows that one step removes."""


@dataclass(frozen=True, slots=True)
class Cleaned:
    """How many of each were removed."""

    keys: int
    jobs: int
    counters: int
    contents: int


class Cleaning:
    """Removes what nothing needs any more."""

    def __init__(self, database: Database, jobs: Jobs, counters: Counting) -> None:
        self._database, self._jobs, self._counters = database, jobs, counters

    def sweep(self, *, keys: timedelta, jobs: timedelta, pause: Callable[[], None] = lambda: None) -> Cleaned:
        """Everything that is to go by now, step by step.

        Args:
            keys: How long a request is known by its key.
            jobs: How long what came out of a job is kept.
            pause: Is called after each step that removed something.
        """
        now = self._database.now()
        return Cleaned(
            keys=_all(lambda: self._old_keys(keys), pause),
            jobs=_all(lambda: self._jobs.forget(now - jobs), pause),
            counters=_all(self._counters.forget, pause),
            contents=_all(self._loose_contents, pause),
        )

    def _old_keys(self, kept: timedelta) -> int:
        old = RequestKeyRow.made_at < self._database.now() - kept
        found = select(RequestKeyRow.owner, RequestKeyRow.key).where(old).limit(MOST)
        with self._database.reading() as session:  # whoever finds nothing keeps nobody waiting
            rows = [tuple(row) for row in session.execute(found)]
        if rows:
            with self._database.writing() as session:
                session.execute(delete(RequestKeyRow).where(tuple_(RequestKeyRow.owner, RequestKeyRow.key).in_(rows)))
        return len(rows)

    def _loose_contents(self) -> int:
        """Looked for at leisure; what was found is looked at once more while nobody can begin to refer to it."""
        with self._database.reading() as session:
            found = session.scalars(select(ContentRow.digest).where(self._is_loose()).limit(MOST)).all()
        if found:
            with self._database.writing() as session:
                if not self._database.is_sqlite:  # there writers take turns anyway
                    session.execute(text("SELECT pg_advisory_xact_lock(:turn)"), {"turn": CONTENTS_TURN})
                session.execute(delete(ContentRow).where(ContentRow.digest.in_(found), self._is_loose()))
        return len(found)

    def _is_loose(self) -> ColumnElement[bool]:
        """Whether no document and no revision refers to a content, neither as what stands in it nor as a picture."""
        in_documents = select(DocumentRow.digest)
        in_revisions = select(RevisionRow.digest)
        each = func.json_each if self._database.is_sqlite else func.jsonb_each_text
        shown = each(RevisionRow.pictures).table_valued("key", "value")
        as_pictures = select(shown.c.value).select_from(RevisionRow).join(shown, always())
        return ContentRow.digest.not_in(in_documents.union(in_revisions, as_pictures))


def _all(step: Callable[[], int], pause: Callable[[], None]) -> int:
    total = 0
    while done := step():
        total += done
        pause()
    return total
