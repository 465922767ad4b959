"""What a document is derived from, what is derived from it, and what their licences ask.

The licence that binds is that of the revision from which a document was first derived: a licence that was given is
not taken back by a later one.
"""

from collections.abc import Mapping
from typing import Any

from sqlalchemy import delete, select
from sqlalchemy.orm import Session

from spreadwright.errors import Finding, error
from spreadwright.store.database import Database
from spreadwright.store.licences import may_follow, terms
from spreadwright.store.rows import HEAD, head_of, row_of
from spreadwright.store.tables import DocumentRow, LineageRow
from spreadwright.store.values import Head, State

MEMBER = "derived_from"


class Lineage:
    """Parents and children, one step either way."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def parents(self, kind: str, name: str) -> tuple[Head, ...]:
        """What it is derived from, in the order in which it says so; deleted ones too."""
        with self._database.reading() as session:
            key = row_of(session, kind, name, gone=True).key
            found = select(*HEAD).join(LineageRow, LineageRow.parent_key == DocumentRow.key)
            rows = session.execute(found.where(LineageRow.child_key == key).order_by(LineageRow.place))
            return tuple(head_of(row) for row in rows)

    def children(self, kind: str, name: str, *, most: int = 100) -> tuple[Head, ...]:
        """What is published and derived from it, by id, so many at most."""
        with self._database.reading() as session:
            key = row_of(session, kind, name, gone=True).key
            found = select(*HEAD).join(LineageRow, LineageRow.child_key == DocumentRow.key)
            mine = found.where(LineageRow.parent_key == key, DocumentRow.state == State.PUBLISHED.value)
            return tuple(head_of(row) for row in session.execute(mine.order_by(DocumentRow.id).limit(most)))


def lineage_rows(
    session: Session, kind: str, document: Mapping[str, Any], owner: str, child_key: int | None
) -> list[LineageRow]:
    """The parents that a document names and that are here for its owner, as they bind it."""
    names = _named(document)
    if not names:
        return []
    found = select(DocumentRow).where(DocumentRow.kind == kind, DocumentRow.id.in_(names))
    parents = {row.id: row for row in session.scalars(found)}
    known = {
        row.parent_key: row for row in session.scalars(select(LineageRow).where(LineageRow.child_key == child_key))
    }
    rows = []
    for place, name in enumerate(names):
        parent = parents.get(name)
        before = known.get(parent.key) if parent else None
        if parent is None or parent.key == child_key or not (before or _is_open(parent, owner)):
            continue
        rows.append(
            LineageRow(
                parent_key=parent.key,
                parent_revision=before.parent_revision if before else parent.revision,
                parent_licence=before.parent_licence if before else parent.licence,
                place=place,
            )
        )
    return rows


def lineage_findings(rows: list[LineageRow], document: Mapping[str, Any]) -> tuple[Finding, ...]:
    """What the parents have against it: those that are not here, and those whose licence says otherwise."""
    licence = str(document.get("licence") or "")
    bound = {row.place: row for row in rows}
    findings: list[Finding] = []
    for place, name in enumerate(_named(document)):
        where = f"/{MEMBER}/{place}"
        row = bound.get(place)
        if row is None:
            message = f"There is no “{name}” here that this could be derived from."
            findings.append(error("unknown-parent", where, message, "Name the id of another document of this kind."))
        elif terms(row.parent_licence).forbids_changes:
            message = f"“{name}” is under {row.parent_licence}, which allows nothing to be derived from it."
            findings.append(error("parent-forbids-changes", where, message, "Ask its authors for another licence."))
        elif terms(row.parent_licence).binds and not may_follow(licence, row.parent_licence):
            said = f"this is under {licence}" if licence else "this names no licence"
            message = f"“{name}” is to be shared alike, under {row.parent_licence}, and {said}."
            findings.append(error("licence-not-alike", where, message, f"Share this under {row.parent_licence} too."))
    return tuple(findings)


def keep_lineage(session: Session, child_key: int, rows: list[LineageRow]) -> None:
    """Puts these parents in the place of those that were kept."""
    session.execute(delete(LineageRow).where(LineageRow.child_key == child_key))
    for row in rows:
        row.child_key = child_key
    session.add_all(rows)


def _is_open(parent: DocumentRow, owner: str) -> bool:
    """Whether somebody may begin to derive from it: it is published, or a draft of their own."""
    is_own = parent.owner == owner and parent.state != State.DELETED
    return parent.state == State.PUBLISHED or is_own


def _named(document: Mapping[str, Any]) -> list[str]:
    found = document.get(MEMBER)
    return list(dict.fromkeys(str(name) for name in found)) if isinstance(found, list) else []
