"""What a list is asked for, as conditions on rows, and as ways to the few rows that meet a rare one."""

import json
from collections.abc import Iterator, Sequence
from typing import Any

from sqlalchemy import ARRAY, BigInteger, ColumnElement, Select, any_, cast, exists, func, select, text

from spreadwright.store.facts import mark
from spreadwright.store.tables import DocumentRow, LabelRow
from spreadwright.store.values import State
from spreadwright.store.wanted import Range, Wanted
from spreadwright.store.words import sought

_SEARCH = {
    "sqlite": "SELECT rowid AS key FROM search WHERE search MATCH :words LIMIT :most",
    "postgresql": "SELECT document_key AS key FROM search WHERE words @@ CAST(:words AS tsquery) LIMIT :most",
}
_MOST = 2**31 - 1
_FOUND_IN = {"sqlite": func.instr, "postgresql": func.strpos}


def conditions(table: Any, wanted: Wanted, dialect: str) -> list[ColumnElement[bool]]:
    """Every condition besides state and place, on a table of documents or a part of it.

    Nothing is added to numbers for a reason: so no index of theirs is taken in the place of the one in order.
    """
    return [
        table.kind == wanted.kind,
        *([table.owner == wanted.owner] if wanted.owner is not None else []),
        *_size(table, wanted),
        *(bound for name, each in wanted.ranges.items() for bound in _within(getattr(table, name) + 0, each)),
        *(exists(_labelled(field, value).where(LabelRow.document_key == table.key)) for field, value in wanted.labels),
        *(_FOUND_IN[dialect](table.words, f" {word}") > 0 for word in sought(wanted.words)),
    ]


def ways(wanted: Wanted, state: State, dialect: str, most: int) -> Iterator[Any]:
    """Statements that give the keys of rows that meet some criteria, so many at most; the mostly rare first."""
    query = _query(wanted, dialect)
    if query:
        yield text(_SEARCH[dialect]).bindparams(words=query, most=most).columns(key=BigInteger())
    mine = select(DocumentRow.key).where(DocumentRow.kind == wanted.kind).limit(most)
    if wanted.owner is not None:
        yield mine.where(DocumentRow.owner == wanted.owner)
    for name, each in wanted.ranges.items():
        if not each.is_exact:
            yield mine.where(DocumentRow.state == state.value, *_within(getattr(DocumentRow, name), each))


def among(keys: Sequence[int], dialect: str) -> ColumnElement[bool]:
    """Rows of these keys, which travel as one value however many they are."""
    if dialect == "sqlite":
        each = func.json_each(json.dumps(list(keys))).table_valued("value")
        return DocumentRow.key.in_(select(each.c.value))
    return DocumentRow.key == any_(cast(list(keys), ARRAY(BigInteger)))


def _labelled(field: str, value: str) -> Select[Any]:
    return select(LabelRow.document_key).where(LabelRow.field == field, LabelRow.value == value)


def _size(table: Any, wanted: Wanted) -> list[ColumnElement[bool]]:
    if wanted.page_size is None:
        return []
    width, height = map(_fitting, wanted.page_size)
    return [table.page_width + 0 == width, table.page_height + 0 == height]


def _within(column: Any, bounds: Range) -> list[ColumnElement[bool]]:
    return [
        *([column >= _fitting(bounds.least)] if bounds.least is not None else []),
        *([column <= _fitting(bounds.most)] if bounds.most is not None else []),
    ]


def _fitting(number: int) -> int:
    """A number that no column holds more than, as one that databases take."""
    return max(-_MOST, min(number, _MOST))


def _query(wanted: Wanted, dialect: str) -> str:
    """Every word as the beginning of one, every mark whole; letters and digits alone, so nothing needs escaping."""
    exact = [mark(name, str(each.least)) for name, each in wanted.ranges.items() if each.is_exact]
    sizes = [mark("size", "{} {}".format(*wanted.page_size))] if wanted.page_size else []
    whole = [*(mark(field, value) for field, value in wanted.labels), *exact, *sizes]
    begun = sought(wanted.words)
    if dialect == "sqlite":
        return " ".join([*(f'"{word}"' for word in whole), *(f'"{word}"*' for word in begun)])
    return " & ".join([*(f"'{word}'" for word in whole), *(f"'{word}':*" for word in begun)])
