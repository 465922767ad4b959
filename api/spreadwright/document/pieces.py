"""A piece list's document to its model."""

from collections import Counter
from typing import Any

from spreadwright.document.cursor import Cursor
from spreadwright.document.recipe import unit_of
from spreadwright.errors import Finding, error
from spreadwright.model import PieceList, Stock, Wanted

MOST_TIMES = 10_000
"""Of one piece or sheet, as in the schema."""
_MOST_WORTH = 1_000_000


def pieces_model(document: Any, list_id: str) -> tuple[PieceList, tuple[Finding, ...]]:
    """The model of a piece list's document, and what the schema cannot see is wrong with it."""
    findings: list[Finding] = []
    root = Cursor(document, unit_of(document), findings)
    model = PieceList(
        id=list_id,
        title=root.text("title", "Pieces"),
        unit=unit_of(document),
        pieces=tuple(wanted for item in root.child("pieces").items() if (wanted := _wanted(item)) is not None),
        stock=tuple(stock for item in root.child("stock").items() if (stock := _stock(item)) is not None),
    )
    return model, (*findings, *_clashes(model))


def _wanted(item: Cursor) -> Wanted | None:
    size = item.size("size")
    if size is None or not item.text("name"):
        return None
    return Wanted(
        item.text("name"),
        size,
        item.count("times", 1, 1, MOST_TIMES),
        item.flag("turn") or not item.has("turn"),
        item.text("role"),
        item.text("together"),
        item.count("value", 0, 0, _MOST_WORTH),
        item.where,
    )


def _stock(item: Cursor) -> Stock | None:
    size = item.size("size")
    if size is None:
        return None
    times = item.count("times", 0, 1, MOST_TIMES) or None
    return Stock(size, times, item.text("role"), item.count("cost", 1, 0, _MOST_WORTH), item.where)


def _clashes(model: PieceList) -> list[Finding]:
    """Names that look like a numbered one: `mat-1` beside two of `mat`."""
    total: Counter[str] = Counter()
    for wanted in model.pieces:
        total[wanted.name] += wanted.count
    findings = []
    for wanted in model.pieces:
        name, _, number = wanted.name.rpartition("-")
        if number.isdecimal() and 1 < total[name] >= int(number) > 0:
            message = f"“{wanted.name}” stands for two pieces: one of that name, and one of those numbered “{name}”."
            findings.append(error("piece-name-clash", f"{wanted.where}/name", message, "Rename one of them."))
    return findings
