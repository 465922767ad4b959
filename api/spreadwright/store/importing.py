"""A folder of documents into the store, as often as one likes: what is there already stays as it is.

What has changed in the folder since becomes a new revision, unless somebody has changed it here: then that is kept.
What was deleted here stays deleted. The keeper of the folder vouches for it: everything is published as it lies there.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import select, text
from sqlalchemy.orm import Session

from spreadwright.document import Reading, canonical
from spreadwright.errors import InvalidDocument, UnreadablePicture
from spreadwright.store.collection import Collection
from spreadwright.store.database import Database
from spreadwright.store.kinds import KINDS
from spreadwright.store.lineage import MEMBER
from spreadwright.store.prepared import Prepared, measured
from spreadwright.store.rows import add_revision, digest_of, head_of, named
from spreadwright.store.tables import DocumentRow, RevisionRow
from spreadwright.store.values import Action, State
from spreadwright.store.writes import new_row, rewritten

IMPORTER = "collection"
"""Who owns what was imported, and writes its revisions."""
_TURN = 0x5950_5258
"""The advisory lock of PostgreSQL that imports hold."""


@dataclass(frozen=True, slots=True)
class Imported:
    """What an import did, as `kind/id`.

    Attributes:
        kept: Changed or deleted here, so the folder's was not taken.
        refused: Its parents have something against it.
    """

    added: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()
    same: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Found:
    """A document of the folder."""

    kind: str
    id: str
    reading: Reading[Any]
    pictures: dict[str, bytes]

    @property
    def data(self) -> bytes:
        """What is kept of it; nothing where the file cannot be read, which `Readings` says again."""
        return canonical(self.reading.document) if self.reading.data else b""

    @property
    def digests(self) -> dict[str, str]:
        return {name: digest_of(data) for name, data in self.pictures.items()}

    def ready(self) -> Prepared:
        """As it is to be kept."""
        return replace(measured(self.kind, self.reading, self.digests), data=self.data)


def import_collection(database: Database, collection: Collection) -> Imported:
    """Every document of a folder; processes that start together take turns."""
    found = list(_documents(collection))
    outcomes: dict[str, list[str]] = {"added": [], "changed": [], "same": [], "kept": [], "refused": []}
    with database.writing() as session:
        if not database.is_sqlite:
            session.execute(text("SELECT pg_advisory_xact_lock(:turn)"), {"turn": _TURN})
        for each in found:
            outcomes[_imported(session, each, database)].append(f"{each.kind}/{each.id}")
    return Imported(**{name: tuple(names) for name, names in outcomes.items()})


def _imported(session: Session, found: _Found, database: Database) -> str:
    """The name of what was done."""
    row = session.scalar(select(DocumentRow).where(named(found.kind, found.id)).with_for_update())
    try:
        if row is None:
            _add(session, found, database)
            return "added"
        if (row.digest, row.pictures) == (digest_of(found.data), found.digests):
            return "same"
        if row.state != State.PUBLISHED or _last_writer(session, row) != IMPORTER:
            return "kept"
        rewritten(
            session,
            head_of(row),
            found.ready(),
            Action.CHANGED,
            who=IMPORTER,
            at=database.now(),
            note="Imported.",
            pictures=tuple(found.pictures.values()),
        )
        return "changed"
    except InvalidDocument:  # raised before anything of it is written
        return "refused"


def _add(session: Session, found: _Found, database: Database) -> None:
    now = database.now()
    row = new_row(session, found.ready(), found.id, IMPORTER, now, tuple(found.pictures.values()))
    row.state, row.published_at = State.PUBLISHED.value, now
    session.flush()
    add_revision(session, row, Action.CREATED, who=IMPORTER, at=now, note="Imported.")


def _last_writer(session: Session, row: DocumentRow) -> str:
    return session.get_one(RevisionRow, (row.key, row.revision)).who


def _documents(collection: Collection) -> Iterator[_Found]:
    for kind in KINDS.values():
        readings = kind.of_folder(collection)
        for name in _parents_first(readings):
            pictures = dict(_pictures(collection, name, readings[name])) if kind.name == "paper-sets" else {}
            yield _Found(kind.name, name, readings[name], pictures)


def _parents_first(readings: dict[str, Reading[Any]]) -> list[str]:
    """Ids in an order in which no document stands before what it is derived from."""
    waiting, done = dict(readings), list[str]()
    while waiting:
        free = [name for name, each in waiting.items() if not _awaits(each, waiting, name)] or list(waiting)
        done += free
        for name in free:
            del waiting[name]
    return done


def _awaits(reading: Reading[Any], waiting: dict[str, Reading[Any]], name: str) -> bool:
    parents = reading.document.get(MEMBER)
    return isinstance(parents, list) and any(parent in waiting and parent != name for parent in map(str, parents))


def _pictures(collection: Collection, set_id: str, reading: Reading[Any]) -> Iterator[tuple[str, bytes]]:
    """Those that a paper set names and that lie beside it."""
    find = collection.pictures(set_id)
    faces = (face for paper in reading.model.papers for face in (paper.front, paper.back))
    for name in sorted({face.picture.name for face in faces if face.picture}):
        try:
            yield name, find(name)
        except UnreadablePicture:
            continue
