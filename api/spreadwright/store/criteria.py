"""What a list is asked for, as conditions on rows, and as ways to the few rows that meet a rare one."""

from collections.abc import Iterator
from typing import Any

from sqlalchemy import BigInteger, ColumnElement, Select, TextClause, exists, func, select, text
from sqlalchemy.sql.selectable import TextualSelect

from spreadwright.store.tables import DocumentRow, LabelRow
from spreadwright.store.values import State
from spreadwright.store.wanted import Range, Wanted
from spreadwright.store.words import sought

_SEARCH = {
    "sqlite": "SELECT rowid AS key FROM search WHERE search MATCH :words LIMIT :most",
    "postgresql": "SELECT document_key AS key FROM search WHERE words @@ CAST(:words AS tsquery) LIMIT :most",
}
_FOUND_IN = {"sqlite": func.instr, "postgresql": func.strpos}
Ways = Select[Any] | TextualSelect | TextClause


def conditions(table: Any, wanted: Wanted, dialect: str) -> list[ColumnElement[bool]]:
    """Every condition besides state and place, on a table of documents or a part of it."""
    return [
        table.kind == wanted.kind,
        *([table.owner == wanted.owner] if wanted.owner is not None else []),
        *_size(table, wanted),
        *(bound for name, each in wanted.ranges.items() for bound in _within(getattr(table, name), each)),
        *(exists(_labelled(field, value).where(LabelRow.document_key == table.key)) for field, value in wanted.labels),
        *(_FOUND_IN[dialect](table.words, f" {word}") > 0 for word in sought(wanted.words)),
    ]


def ways(wanted: Wanted, state: State, dialect: str, most: int) -> Iterator[Any]:
    """Statements that give the keys of rows that meet one criterion, so many at most; the mostly rare first."""
    words = sought(wanted.words)
    if words:
        yield text(_SEARCH[dialect]).bindparams(words=_query(words, dialect), most=most).columns(key=BigInteger())
    for field, value in wanted.labels:
        yield _labelled(field, value).limit(most)
    mine = select(DocumentRow.key).where(DocumentRow.kind == wanted.kind).limit(most)
    if wanted.owner is not None:
        yield mine.where(DocumentRow.owner == wanted.owner)
    public = mine.where(DocumentRow.state == state.value)
    if wanted.page_size:
        yield public.where(*_size(DocumentRow, wanted))
    for name, each in wanted.ranges.items():
        yield public.where(*_within(getattr(DocumentRow, name), each))


def _labelled(field: str, value: str) -> Select[Any]:
    return select(LabelRow.document_key).where(LabelRow.field == field, LabelRow.value == value)


def _size(table: Any, wanted: Wanted) -> list[ColumnElement[bool]]:
    if wanted.page_size is None:
        return []
    width, height = wanted.page_size
    return [table.page_width == width, table.page_height == height]


def _within(column: Any, bounds: Range) -> list[ColumnElement[bool]]:
    return [
        *([column >= bounds.least] if bounds.least is not None else []),
        *([column <= bounds.most] if bounds.most is not None else []),
    ]


def _query(words: tuple[str, ...], dialect: str) -> str:
    """Every word as the beginning of one; words are letters and digits, so nothing needs escaping."""
    if dialect == "sqlite":
        return " ".join(f'"{word}"*' for word in words)
    return " & ".join(f"'{word}':*" for word in words)
