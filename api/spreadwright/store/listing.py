"""Lists of documents: filtered, searched, in order, page by page.

A page is found from the last row of the one before (keyset), never by counting rows, so that nothing is seen twice
and nothing is skipped while others write, and the thousandth page costs what the first one does.

What is asked for is rare or common. What is rare is looked up in its own index and sorted; otherwise the documents are
walked in their order until the page is full. Either way the work depends on the page, not on how much there is. A walk
that has come far and not met a page of them is given up for looking up more: they may all stand at the other end.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Select, func, select, tuple_
from sqlalchemy.orm import Session

from spreadwright.errors import UnknownName
from spreadwright.store.criteria import among, conditions, ways
from spreadwright.store.cursors import cursor, place
from spreadwright.store.database import Database
from spreadwright.store.kinds import kind_named
from spreadwright.store.rows import document_of
from spreadwright.store.tables import ContentRow, DocumentRow
from spreadwright.store.values import Document, State
from spreadwright.store.wanted import MOST_LIMIT, SORTS, Wanted
from spreadwright.store.words import clean, sought

RARE = 600
"""So many documents are looked up one by one. Looking one up costs five times what passing one costs, and of 100,000 a
walk passes 3,500 until it has met a page of what 600 of them are."""
FAR, SEVERAL = 4000, 6000
"""So many are passed in a walk before as many as that are looked up."""
_TABLE = DocumentRow.__table__
_NOT_LOOKED_AT = {"digest", "pictures", "summary", "names", "review_note"}
_LOOKED_AT = [column for column in _TABLE.c if column.name not in _NOT_LOOKED_AT]


@dataclass(frozen=True, slots=True)
class Page:
    """Some of the documents of a list.

    Attributes:
        next: What the next page is asked for with; None at the end.
    """

    documents: tuple[Document, ...]
    next: str | None = None


class Listing:
    """All documents of one kind."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def page(self, wanted: Wanted) -> Page:
        """One page.

        Raises:
            UnknownName: There is no such kind or order.
            BadCursor: `after` marks no place in this list.
        """
        order = _Order(wanted)
        kind_named(wanted.kind)
        limit = max(1, min(wanted.limit, MOST_LIMIT))
        if _finds_nothing(wanted):
            return Page(())
        with self._database.reading() as session:
            keys = [key for each in _branches(wanted) for key in _first(session, wanted, each, order, limit + 1)]
            found = _documents(session, keys, order)
        shown = found[:limit]
        last = shown[-1][0] if len(found) > limit else None
        mark = cursor(wanted.sort, order.of(last)[0], last.key) if last else None
        return Page(tuple(document_of(row, data) for row, data in shown), mark)

    def count(self, wanted: Wanted, *, most: int = 1000) -> int:
        """How many there are, so many at most."""
        if _finds_nothing(wanted):
            return 0
        with self._database.reading() as session:
            total = 0
            for branch in _branches(wanted):
                some = _chosen(session, wanted, branch, _few(session, wanted, branch, RARE)).limit(most)
                total += session.scalar(select(func.count()).select_from(some.subquery())) or 0
        return min(total, most)


@dataclass(frozen=True, slots=True)
class _Branch:
    """Documents of one state, of one owner or of all: what one index holds in order."""

    state: State
    owner: str | None = None


class _Order:
    """By one column, and by key where that is equal."""

    def __init__(self, wanted: Wanted) -> None:
        name = wanted.sort.removeprefix("-")
        if name not in SORTS:
            raise UnknownName("order", wanted.sort, [*SORTS, *(f"-{each}" for each in SORTS)])
        self.is_down = wanted.sort.startswith("-")
        self.column = SORTS[name]
        self._after = place(wanted.after, wanted.sort, self._type()) if wanted.after else None

    def of(self, row: DocumentRow) -> tuple[Any, int]:
        """Where a row stands in it."""
        return getattr(row, self.column), row.key

    def applied(self, statement: Select[Any], table: Any) -> Select[Any]:
        """The statement in this order, from the place where it goes on."""
        keys = self._keys(table)
        ordered = statement.order_by(*(key.desc() if self.is_down else key for key in keys))
        if self._after is None:
            return ordered
        here, there = tuple_(*keys), tuple_(*self._after[: len(keys)])
        return ordered.where(here < there if self.is_down else here > there)

    def far(self, session: Session, wanted: Wanted, branch: _Branch) -> ColumnElement[bool] | None:
        """What holds until a walk has come far; None where it ends before that. One index knows."""
        keys = self._keys(_TABLE.c)
        all_of_them = select(*keys).where(_TABLE.c.kind == wanted.kind, _TABLE.c.state == branch.state.value)
        place = session.execute(self.applied(all_of_them, _TABLE.c).offset(FAR).limit(1)).first()
        if place is None:
            return None
        here, there = tuple_(*keys), tuple_(*place)
        return here >= there if self.is_down else here <= there

    def _keys(self, table: Any) -> list[Any]:
        column = getattr(table, self.column)
        return [column] if self.column == "id" else [column, table.key]  # an id is unique in its kind

    def _type(self) -> type:
        found: type = DocumentRow.__table__.columns[self.column].type.python_type
        return datetime if self.column.endswith("_at") else found


def _finds_nothing(wanted: Wanted) -> bool:
    """Whether words were given and none of them is one, or text that no document can hold."""
    given = (wanted.owner or "", *(value for _, value in wanted.labels))
    return bool(wanted.words.strip() and not sought(wanted.words)) or any(clean(text) != text for text in given)


def _branches(wanted: Wanted) -> Iterator[_Branch]:
    yield from (_Branch(state) for state in wanted.states)
    if wanted.also_of is not None:
        others = (state for state in (State.DRAFT, State.WITHDRAWN) if state not in wanted.states)
        yield from (_Branch(state, wanted.also_of) for state in others)


def _first(session: Session, wanted: Wanted, branch: _Branch, order: _Order, most: int) -> Sequence[int]:
    """The keys of the first rows of a branch that meet every criterion."""
    few = _few(session, wanted, branch, RARE)
    is_choosy = wanted.is_choosy or branch.owner is not None
    end = order.far(session, wanted, branch) if few is None and is_choosy else None
    if end is not None:
        met = session.scalars(_chosen(session, wanted, branch, None, order).where(end).limit(most)).all()
        if len(met) == most:
            return met
        few = _few(session, wanted, branch, SEVERAL)
    return session.scalars(_chosen(session, wanted, branch, few, order).limit(most)).all()


def _chosen(
    session: Session, wanted: Wanted, branch: _Branch, few: Sequence[int] | None, order: _Order | None = None
) -> Select[int]:
    """The keys of the rows of a branch that meet every criterion; where few do that meet one of them, of these."""
    dialect = session.get_bind().dialect.name
    table: Any = _TABLE.c
    if few is not None:  # a limit keeps the database from walking the whole order after all
        table = select(*_LOOKED_AT).where(among(few, dialect)).limit(len(few) + 1).subquery().c
    statement = select(table.key).where(
        table.state == branch.state.value,
        *([table.owner == branch.owner] if branch.owner is not None else []),
        *conditions(table, wanted, dialect),
    )
    return order.applied(statement, table) if order else statement


def _few(session: Session, wanted: Wanted, branch: _Branch, most: int) -> list[int] | None:
    """The keys of the rows that meet some criterion, if it is one that so many meet at most."""
    dialect = session.get_bind().dialect.name
    own = [select(DocumentRow.key).where(DocumentRow.kind == wanted.kind, DocumentRow.owner == branch.owner)]
    first: Iterable[Any] = (each.limit(most + 1) for each in own) if branch.owner is not None else ()
    for way in (*first, *ways(wanted, branch.state, dialect, most + 1)):
        keys = session.scalars(way).all()
        if len(keys) <= most:
            return [int(key) for key in keys]
    return None


def _documents(session: Session, keys: Sequence[int], order: _Order) -> list[tuple[DocumentRow, bytes]]:
    """The rows of these keys with their content, in order."""
    dialect = session.get_bind().dialect.name
    whole = select(DocumentRow, ContentRow.data).join(ContentRow, ContentRow.digest == DocumentRow.digest)
    found = [(row, data) for row, data in session.execute(whole.where(among(keys, dialect)))]
    return sorted(found, key=lambda each: order.of(each[0]), reverse=order.is_down)
