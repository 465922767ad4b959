"""The revisions of documents: listed, read back, compared; those of deleted ones too."""

import json

from sqlalchemy import select

from spreadwright.store.comparing import changes
from spreadwright.store.database import Database
from spreadwright.store.rows import content_of, revision_of, row_of
from spreadwright.store.tables import RevisionRow
from spreadwright.store.values import Change, Revision
from spreadwright.store.writes import revision_row


class History:
    """What has become of documents."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def revisions(self, kind: str, name: str, *, before: int | None = None, limit: int = 50) -> tuple[Revision, ...]:
        """The revisions of a document, the newest first.

        Args:
            before: Only those with smaller numbers.

        Raises:
            UnknownName: There never was such a document.
        """
        with self._database.reading() as session:
            row = row_of(session, kind, name, gone=True)
            below = max(0, min(before, row.revision + 1)) if before is not None else row.revision + 1
            mine = select(RevisionRow).where(RevisionRow.document_key == row.key, RevisionRow.number < below)
            return tuple(map(revision_of, session.scalars(mine.order_by(RevisionRow.number.desc()).limit(limit))))

    def revision(self, kind: str, name: str, number: int) -> tuple[Revision, bytes]:
        """One revision, and what stood in the document then.

        Raises:
            UnknownName: There never was such a document, or it has no revision of that number.
        """
        with self._database.reading() as session:
            found = revision_row(session, row_of(session, kind, name, gone=True), number)
            return revision_of(found), content_of(session, found.digest)

    def compare(self, kind: str, name: str, first: int, second: int) -> tuple[Change, ...]:
        """What differs between two revisions; raises like `revision`."""
        was, now = (json.loads(self.revision(kind, name, number)[1]) for number in (first, second))
        return tuple(changes(was, now))

    def content(self, digest: str) -> bytes:
        """The content of a hash, which never changes.

        Raises:
            UnknownName: Nothing here has it.
        """
        with self._database.reading() as session:
            return content_of(session, digest)
