"""How documents are written inside a transaction: a new one, and the next revision of one that is there."""

from datetime import datetime

from sqlalchemy.orm import Session

from spreadwright.errors import InvalidDocument, UnknownName, has_errors
from spreadwright.store.errors import StaleWrite
from spreadwright.store.kinds import kind_named
from spreadwright.store.lineage import keep_lineage, lineage_findings, lineage_rows
from spreadwright.store.prepared import Prepared
from spreadwright.store.rows import (
    MOST_OF_NAME,
    advance,
    digest_of,
    document_of,
    fact_columns,
    index,
    keep_contents,
    row_of,
)
from spreadwright.store.tables import DocumentRow, LineageRow, RevisionRow
from spreadwright.store.values import Action, Document, Head, State
from spreadwright.store.words import clean


def new_row(
    session: Session, ready: Prepared, name: str, who: str, now: datetime, pictures: tuple[bytes, ...]
) -> DocumentRow:
    """A new document with all that it is found by, as a draft at revision 1.

    Raises:
        InvalidDocument: Its parents have something against it.
    """
    parents = _parents(session, ready, clean(who), None)
    keep_contents(session, (ready.data, *pictures))
    row = DocumentRow(
        kind=ready.kind,
        id=name,
        revision=1,
        digest=digest_of(ready.data),
        state=State.DRAFT.value,
        owner=clean(who)[:MOST_OF_NAME],
        created_at=now,
        changed_at=now,
        review_note="",
        pictures=dict(ready.pictures),
        **fact_columns(ready.facts),
    )
    session.add(row)
    session.flush()
    index(session, row.key, ready.facts)
    keep_lineage(session, row.key, parents)
    return row


def rewritten(
    session: Session,
    head: Head,
    ready: Prepared,
    action: Action,
    *,
    who: str,
    at: datetime,
    note: str,
    pictures: tuple[bytes, ...] = (),
) -> Document:
    """Other content for a document, as its next revision; the same content again changes nothing.

    Raises:
        StaleWrite: It is not at that head any more.
        InvalidDocument: Its parents have something against it.
    """
    row = current(session, head)
    digest = digest_of(ready.data)
    is_same = digest == row.digest and ready.pictures == row.pictures and row.state != State.DELETED
    if not is_same:
        parents = _parents(session, ready, row.owner, row.key)
        keep_contents(session, (ready.data, *pictures))
        state = State.DRAFT.value if row.state == State.DELETED else row.state
        new = {**fact_columns(ready.facts), "digest": digest, "pictures": dict(ready.pictures), "state": state}
        advance(session, row, action, who=who, at=at, note=note, **new)
        index(session, row.key, ready.facts)
        keep_lineage(session, row.key, parents)
    return document_of(row, ready.data)


def current(session: Session, head: Head) -> DocumentRow:
    """The row of a head, locked, if it is still the latest one.

    Raises:
        StaleWrite: It is not.
    """
    row = row_of(session, head.kind, head.id, gone=True, locked=True)
    if row.revision != head.revision:
        raise StaleWrite(kind_named(head.kind).word, head.id, head.revision, row.revision)
    return row


def revision_row(session: Session, row: DocumentRow, number: int) -> RevisionRow:
    """One revision of a document.

    Raises:
        UnknownName: It has none of that number.
    """
    found = session.get(RevisionRow, (row.key, number)) if 0 < number <= row.revision else None
    if found is None:
        raise UnknownName("revision", str(number), (str(row.revision),))
    return found


def _parents(session: Session, ready: Prepared, owner: str, child_key: int | None) -> list[LineageRow]:
    parents = lineage_rows(session, ready.kind, ready.document, owner, child_key)
    findings = lineage_findings(parents, ready.document)
    if has_errors(findings):
        raise InvalidDocument(ready.facts.title, findings)
    return parents
