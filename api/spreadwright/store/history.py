"""The revisions of documents: listed, read back, compared; those of deleted ones too.

A revision is public when its document was published from then on, until the next one. What stood in drafts stays with
those who may read drafts, whatever becomes of the document later: callers say by `public` for whom they ask.
"""

import json

from sqlalchemy import select

from spreadwright.errors import UnknownName
from spreadwright.store.comparing import changes
from spreadwright.store.database import Database
from spreadwright.store.rows import content_of, revision_of, row_of
from spreadwright.store.tables import RevisionRow
from spreadwright.store.values import Change, Revision, State
from spreadwright.store.writes import revision_row


class History:
    """What has become of documents."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def revisions(
        self, kind: str, name: str, *, before: int | None = None, limit: int = 50, public: bool = False
    ) -> tuple[Revision, ...]:
        """The revisions of a document, the newest first.

        Args:
            before: Only those with smaller numbers.
            public: Only those that everybody may read.

        Raises:
            UnknownName: There never was such a document.
        """
        with self._database.reading() as session:
            row = row_of(session, kind, name, gone=True)
            below = max(0, min(before, row.revision + 1)) if before is not None else row.revision + 1
            mine = select(RevisionRow).where(RevisionRow.document_key == row.key, RevisionRow.number < below)
            mine = mine.where(RevisionRow.state == State.PUBLISHED.value) if public else mine
            return tuple(map(revision_of, session.scalars(mine.order_by(RevisionRow.number.desc()).limit(limit))))

    def revision(self, kind: str, name: str, number: int, *, public: bool = False) -> tuple[Revision, bytes]:
        """One revision, and what stood in the document then.

        Args:
            public: Only if everybody may read it.

        Raises:
            UnknownName: There never was such a document, or it has no revision of that number.
        """
        with self._database.reading() as session:
            row = row_of(session, kind, name, gone=True)
            found = revision_row(session, row, number)
            if public and found.state != State.PUBLISHED:
                raise UnknownName("revision", str(number), ())
            return revision_of(found), content_of(session, found.digest)

    def compare(self, kind: str, name: str, first: int, second: int, *, public: bool = False) -> tuple[Change, ...]:
        """What differs between two revisions; takes and raises what `revision` does."""
        was, now = (json.loads(self.revision(kind, name, each, public=public)[1]) for each in (first, second))
        return tuple(changes(was, now))

    def content(self, digest: str) -> bytes:
        """The content of a hash, which never changes.

        Raises:
            UnknownName: Nothing here has it.
        """
        with self._database.reading() as session:
            return content_of(session, digest)
