"""The latest revision of a document by the shortest way, since every request asks for it."""

from datetime import UTC, datetime

from spreadwright.store.database import Database
from spreadwright.store.values import Head, State

_SQL = "SELECT kind, id, revision, digest, state, owner, changed_at FROM documents WHERE kind = ? AND id = ?"


def quick_head(database: Database, kind: str, name: str) -> Head | None:
    """The head of a document, deleted or not; None when there never was one."""
    row = database.quick_row(_SQL, kind, name)
    if row is None:
        return None
    kind, name, revision, digest, state, owner, changed_at = row
    return Head(kind, name, revision, digest, State(state), owner, _moment(changed_at))


def _moment(kept: str | datetime) -> datetime:
    """SQLite keeps text in UTC, PostgreSQL a moment in any time zone."""
    if isinstance(kept, str):
        return datetime.fromisoformat(kept).replace(tzinfo=UTC)
    return kept.astimezone(UTC)
