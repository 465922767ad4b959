"""How a document is made once, however often it is asked for, and under an id that nobody has."""

from collections.abc import Iterator, Mapping
from secrets import token_hex

from sqlalchemy import insert, select
from sqlalchemy.exc import IntegrityError

from spreadwright.store.database import Database
from spreadwright.store.errors import KeyReused
from spreadwright.store.prepared import Prepared
from spreadwright.store.rows import add_revision, content_of, document_of, named
from spreadwright.store.tables import DocumentRow, RequestKeyRow
from spreadwright.store.values import Action, Created, RequestKey
from spreadwright.store.words import fitting
from spreadwright.store.writes import new_row

_NUMBERED = 9
"""So many documents of one title are numbered; what comes later gets digits that nobody guesses."""


def created(
    database: Database,
    ready: Prepared,
    name: str,
    who: str,
    *,
    note: str,
    key: RequestKey | None,
    pictures: Mapping[str, bytes],
) -> Created | None:
    """The new document; None when its id is taken."""
    now = database.now()
    try:
        with database.writing() as session:
            if session.scalar(select(DocumentRow.key).where(named(ready.kind, name))) is not None:
                return None
            row = new_row(session, ready, name, who, now, tuple(pictures.values()))
            if key:
                values = {
                    "owner": fitting(key.owner, 200),
                    "key": fitting(key.key, 255),
                    "fingerprint": key.fingerprint,
                }
                session.execute(insert(RequestKeyRow).values(**values, document_key=row.key, made_at=now))
            add_revision(session, row, Action.CREATED, who=who, at=now, note=note)
            return Created(document_of(row, ready.data))
    except IntegrityError:  # somebody else took the id, or sent the key, in the same moment
        return made_before(database, key)


def made_before(database: Database, key: RequestKey | None) -> Created | None:
    """What the same request has made already.

    Raises:
        KeyReused: The key belongs to another request.
    """
    if key is None:
        return None
    with database.reading() as session:
        made = session.get(RequestKeyRow, (fitting(key.owner, 200), fitting(key.key, 255)))
        if made is None:
            return None
        if made.fingerprint != key.fingerprint:
            raise KeyReused(key.key)
        row = session.get_one(DocumentRow, made.document_key)
        return Created(document_of(row, content_of(session, row.digest)), is_replay=True)


def names_from(base: str) -> Iterator[str]:
    """Ids to try, one after the other."""
    yield base
    yield from (f"{base}-{number}" for number in range(2, _NUMBERED + 1))
    yield f"{base[:50].rstrip('-')}-{token_hex(6)}"
