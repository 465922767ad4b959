"""The revisions of documents: listed, read back, compared; those of deleted ones too.

A revision is public when its document was published from then on, until the next one. What stood in drafts stays with
those who may read drafts, whatever becomes of the document later: callers say by `public` for whom they ask. Of a
deleted document everybody knows if it was published until then.
"""

import json

from sqlalchemy import ColumnElement, and_, exists, or_, select
from sqlalchemy.orm import aliased

from spreadwright.errors import UnknownName
from spreadwright.store.comparing import changes
from spreadwright.store.database import Database
from spreadwright.store.rows import HEAD, content_of, head_of, named, revision_of, row_of
from spreadwright.store.tables import DocumentRow, RevisionRow
from spreadwright.store.values import Change, Head, Revision, State
from spreadwright.store.writes import revision_row

_MOST_ALIKE = 200
"""Documents of the same content that are looked through."""


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
                raise UnknownName("revision", str(number), None)
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

    def is_known(self, head: Head) -> bool:
        """Whether everybody may know of a document: it is published, or was until it was deleted."""
        with self._database.reading() as session:
            mine = select(DocumentRow.key).where(named(head.kind, head.id), _is_known())
            return session.scalar(mine) is not None

    def is_public(self, digest: str) -> bool:
        """Whether everybody may read the content of a hash: it was published, and what it stood in is still known."""
        then = select(RevisionRow.number).join(DocumentRow, DocumentRow.key == RevisionRow.document_key)
        then = then.where(RevisionRow.digest == digest, RevisionRow.state == State.PUBLISHED.value, _is_known())
        with self._database.reading() as session:
            return session.scalar(then.limit(1)) is not None

    def documents_with(self, digest: str) -> tuple[Head, ...]:
        """The documents that the content of a hash stands or stood in, so many at most."""
        revisions = select(RevisionRow.document_key).where(RevisionRow.digest == digest)
        found = select(*HEAD).where(DocumentRow.key.in_(revisions)).limit(_MOST_ALIKE)
        with self._database.reading() as session:
            return tuple(head_of(row) for row in session.execute(found))


def _is_known() -> ColumnElement[bool]:
    """Of a document: that everybody may know of it."""
    last = aliased(RevisionRow)
    was_public = exists().where(
        last.document_key == DocumentRow.key,
        last.number == DocumentRow.revision - 1,
        last.state == State.PUBLISHED.value,
    )
    is_deleted = DocumentRow.state == State.DELETED.value
    return or_(DocumentRow.state == State.PUBLISHED.value, and_(is_deleted, was_public))
