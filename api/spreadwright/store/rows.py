"""Rows of documents and their revisions: found, advanced by one revision, and made values of."""

import re
from collections.abc import Iterable, Mapping
from datetime import datetime
from hashlib import sha256
from typing import Any, cast

from sqlalchemy import ColumnElement, CursorResult, and_, delete, insert, select, text, update
from sqlalchemy.dialects.postgresql import insert as pg_insert
from sqlalchemy.dialects.sqlite import insert as sqlite_insert
from sqlalchemy.orm import Session

from spreadwright.errors import UnknownName
from spreadwright.store.errors import Gone, StaleWrite
from spreadwright.store.facts import labels, marks, words_found_by
from spreadwright.store.kinds import kind_named
from spreadwright.store.tables import ContentRow, DocumentRow, LabelRow, RevisionRow
from spreadwright.store.values import Action, Document, Facts, Head, Revision, State
from spreadwright.store.words import clean, searchable

HEAD = (
    DocumentRow.kind,
    DocumentRow.id,
    DocumentRow.revision,
    DocumentRow.digest,
    DocumentRow.state,
    DocumentRow.owner,
    DocumentRow.changed_at,
)

CONTENTS_TURN = 0x5950_5259
"""The advisory lock of PostgreSQL that writers of contents share, and that cleaning has alone."""
MOST_OF_NAME = 200
"""Characters of who writes."""
_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def digest_of(data: bytes) -> str:
    """SHA-256, hexadecimal."""
    return sha256(data).hexdigest()


def is_id(name: str) -> bool:
    """Whether text may be the id of a document."""
    return len(name) <= 64 and _ID.fullmatch(name) is not None


def named(kind: str, name: str) -> ColumnElement[bool]:
    """The one document of that kind and id."""
    return and_(DocumentRow.kind == kind, DocumentRow.id == name)


def row_of(session: Session, kind: str, name: str, *, gone: bool = False, locked: bool = False) -> DocumentRow:
    """The row of a document.

    Args:
        gone: A deleted one will do.
        locked: Nobody else changes it until this transaction ends.

    Raises:
        UnknownName: There never was one.
        Gone: It is deleted.
    """
    if not is_id(name):
        raise UnknownName(kind_named(kind).word, name, None)
    found = select(DocumentRow).where(named(kind, name))
    row = session.scalar(found.with_for_update() if locked else found)
    if row is None:
        raise unknown(session, kind, name)
    if row.state == State.DELETED and not gone:
        raise Gone(kind_named(kind).word, name, row.changed_at, head_of(row).etag)
    return row


def unknown(session: Session, kind: str, name: str) -> UnknownName:
    """What is said of an id that nothing has, with those that begin alike."""
    word = kind_named(kind).word
    public = select(DocumentRow.id).where(DocumentRow.kind == kind, DocumentRow.state == State.PUBLISHED.value)
    near = public.where(DocumentRow.id >= name[:1], DocumentRow.id < name[:1] + "\U0010ffff").order_by(DocumentRow.id)
    known = session.scalars(near.limit(200)).all() or session.scalars(public.order_by(DocumentRow.id).limit(20)).all()
    return UnknownName(word, name, known)


def keep_contents(session: Session, contents: Iterable[bytes]) -> None:
    """Bytes under their hashes; those that are there already stay as they are.

    In the order of their hashes, so that two writers never wait for each other. Until the transaction ends nobody takes
    any content away, since this one may be about to refer to what was there already.
    """
    rows = sorted({digest_of(data): data for data in contents}.items())
    is_sqlite = session.get_bind().dialect.name == "sqlite"
    if not is_sqlite:
        session.execute(text("SELECT pg_advisory_xact_lock_shared(:turn)"), {"turn": CONTENTS_TURN})
    build = sqlite_insert if is_sqlite else pg_insert
    for digest, data in rows:
        session.execute(build(ContentRow).values(digest=digest, data=data).on_conflict_do_nothing())


def content_of(session: Session, digest: str) -> bytes:
    """The bytes of a hash.

    Raises:
        UnknownName: No document has or had it.
    """
    data = session.scalar(select(ContentRow.data).where(ContentRow.digest == digest))
    if data is None:
        raise UnknownName("content", digest, None)
    return data


def advance(
    session: Session, row: DocumentRow, action: Action, *, who: str, at: datetime, note: str, **new: Any
) -> None:
    """One revision further, if nobody else has been there since the row was read.

    Raises:
        StaleWrite: Somebody has.
    """
    state = new.get("state", row.state)
    values = {**new, "state": state, "revision": row.revision + 1, "changed_at": at}
    mine = update(DocumentRow).where(DocumentRow.key == row.key, DocumentRow.revision == row.revision).values(**values)
    done = cast(CursorResult[Any], session.execute(mine.execution_options(synchronize_session=False)))
    if done.rowcount != 1:
        raise StaleWrite(kind_named(row.kind).word, row.id, row.revision, row.revision + 1)
    session.refresh(row)
    add_revision(session, row, action, who=who, at=at, note=note)


def add_revision(session: Session, row: DocumentRow, action: Action, *, who: str, at: datetime, note: str) -> None:
    """Writes down what a document has become."""
    session.execute(
        insert(RevisionRow).values(
            document_key=row.key,
            number=row.revision,
            action=action.value,
            state=row.state,
            digest=row.digest,
            pictures=row.pictures,
            who=clean(who)[:MOST_OF_NAME],
            at=at,
            note=clean(note),
        )
    )


def fact_columns(facts: Facts) -> dict[str, Any]:
    """What a row holds of the facts."""
    single = (
        "title",
        "summary",
        "licence",
        "language",
        "pages",
        "sheets",
        "photos",
        "cuts",
        "page_width",
        "page_height",
    )
    return {
        **{name: getattr(facts, name) for name in single},
        "names": {"roles": list(facts.roles), "authors": list(facts.authors), "tags": list(facts.tags)},
        "words": searchable(words_found_by(facts)),
    }


def index(session: Session, key: int, facts: Facts) -> None:
    """What the document is found by, in the place of what it was found by."""
    session.execute(delete(LabelRow).where(LabelRow.document_key == key))
    rows = [{"document_key": key, "field": field, "value": value} for field, value in labels(facts)]
    if rows:
        session.execute(insert(LabelRow), rows)
    index_words(session, key, (*words_found_by(facts), *marks(facts)))


def index_words(session: Session, key: int, words: tuple[str, ...]) -> None:
    """The words in the index of the database."""
    if session.get_bind().dialect.name == "sqlite":
        session.execute(text("DELETE FROM search WHERE rowid = :key"), {"key": key})
        session.execute(
            text("INSERT INTO search (rowid, words) VALUES (:key, :words)"), {"key": key, "words": " ".join(words)}
        )
        return
    session.execute(text("DELETE FROM search WHERE document_key = :key"), {"key": key})
    session.execute(
        text("INSERT INTO search (document_key, words) VALUES (:key, array_to_tsvector(CAST(:words AS text[])))"),
        {"key": key, "words": list(words)},
    )


def head_of(row: Any) -> Head:
    """The value of a row that has the columns of `HEAD`."""
    return Head(row.kind, row.id, row.revision, row.digest, State(row.state), row.owner, row.changed_at)


def document_of(row: DocumentRow, data: bytes) -> Document:
    """The value of a row with its content."""
    return Document(
        head_of(row), row.created_at, row.published_at, row.review_note, facts_of(row), data, dict(row.pictures)
    )


def facts_of(row: DocumentRow) -> Facts:
    """The facts that a row holds."""
    several: Mapping[str, list[str]] = row.names
    return Facts(
        row.title,
        row.summary,
        row.licence,
        row.language,
        row.pages,
        row.sheets,
        row.photos,
        row.cuts,
        row.page_width,
        row.page_height,
        tuple(several["roles"]),
        tuple(several["authors"]),
        tuple(several["tags"]),
    )


def revision_of(row: RevisionRow) -> Revision:
    """The value of a row."""
    return Revision(row.number, Action(row.action), State(row.state), row.digest, row.who, row.at, row.note)
