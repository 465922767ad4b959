"""Pieces and stock as people jot them down: ``7x7 left, 3 1/2x5! *2 right`` is a piece list's document in short.

An item is a size, `!` if the piece may not be turned, `*` and how many, and a name; commas lie between items, or
semicolons where commas stand in numbers.
"""

import re
from collections.abc import Iterator, Sequence
from typing import Any

from spreadwright.errors import UnreadableDocument, UnreadableLength
from spreadwright.lengths import Unit, ticks

DEFAULT_STOCK = ("12in x 12in",)
"""Whole sheets of the trade, as many as are needed: what is meant when no stock is named."""

_DIGIT = "0-9¼½¾⅐-⅞"
_UNITS = r"in(?:ch(?:es)?)?\b\.?|cm\b|mm\b|[\"″”]|''"
_LENGTH = rf"[-+−]?[.,]?[{_DIGIT}](?:[{_DIGIT}\s.,/⁄∕–‑-]*[{_DIGIT}.])?\s*(?:{_UNITS})?"
_TIMES_SIGN = r"\s*(?:[x×✕]|\bby\b)\s*"
_ITEM = re.compile(
    rf"(?P<width>{_LENGTH}){_TIMES_SIGN}(?P<height>{_LENGTH})\s*(?P<fixed>!?)\s*(?:\*\s*(?P<times>\d{{1,9}}))?\s*(?P<name>.*)",
    re.IGNORECASE | re.DOTALL,
)
_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_UNIT_AT_END = re.compile(rf"(?:{_UNITS})\s*$", re.IGNORECASE)
_MOST_SHOWN, _LONGEST_NAME, _LONGEST_TEXT = 40, 40, 100_000
_WRITE = "Write items like “7x7 left” or “3 1/2 x 5 *2 right”, with commas between them."


def is_short(text: str) -> bool:
    """Whether a text looks like this and not like the name of a document."""
    return re.match(rf"\s*{_LENGTH}{_TIMES_SIGN}", text, re.IGNORECASE) is not None or "," in text or ";" in text


def pieces_in_short(text: str, stock: Sequence[str] = (), unit: Unit = Unit.INCH) -> dict[str, Any]:
    """The document of a piece list that is given in short.

    Args:
        text: The pieces; those without a name are called `piece-1`, `piece-2` by their place in the list.
        stock: Sheets, each like ``12x12*2 print``: a size, how many (otherwise as many as are needed), a role.
        unit: Of lengths that carry none.

    Raises:
        UnreadableDocument: With the item that is wrong, and what is wrong with it.
    """
    pieces = [
        {"name": item.pop("word") or f"piece-{number}", **item}
        for number, item in enumerate(_items(text, "Piece", unit), start=1)
    ]
    sheets = stock_in_short(stock or DEFAULT_STOCK, unit)
    return {"schema": "pieces/1", "unit": unit.value, "pieces": pieces, "stock": sheets}


def stock_in_short(stock: Sequence[str], unit: Unit = Unit.INCH) -> list[dict[str, Any]]:
    """The `stock` of a piece list's document; see `pieces_in_short`."""
    sheets = []
    for item in _items(";".join(each.strip(" ,;") for each in stock), "Sheet", unit):
        word = item.pop("word")
        if item.pop("turn", None) is False:
            raise UnreadableDocument("A sheet carries “!”.", "Put it behind the pieces that may not be turned.")
        sheets.append({**item, **({"role": word} if word else {})})
    return sheets


def _items(text: str, kind: str, unit: Unit) -> Iterator[dict[str, Any]]:
    if len(text) > _LONGEST_TEXT:
        raise UnreadableDocument("The list is too long to be read in short.", "Write a document.")
    parts = [part.strip() for part in re.split(r"[;\n]" if ";" in text or "\n" in text else ",", text)]
    if not any(parts):
        raise UnreadableDocument(f"No {kind.lower()} is named.", _WRITE)
    for number, part in enumerate((part for part in parts if part), start=1):
        yield _item(part, f"{kind} {number}, “{_shown(part)}”,", unit)


def _item(part: str, who: str, unit: Unit) -> dict[str, Any]:
    found = _ITEM.fullmatch(part)
    if found is None:
        raise UnreadableDocument(f"{who} has no width and height.", _WRITE)
    height, word = found["height"].strip(), found["name"].strip().lower()
    shared = _UNIT_AT_END.search(height)
    width = found["width"].strip()
    if shared and not _UNIT_AT_END.search(width):  # “10 x 15 cm” means both
        width = f"{width} {shared[0]}"
    for side in (width, height):
        _refuse_length(side, who, unit)
    if word and (not _NAME.fullmatch(word) or len(word) > _LONGEST_NAME):
        raise UnreadableDocument(f"{who} ends in “{_shown(word)}”, which is no name.", "Use one word, like “mat-wide”.")
    times = {"times": int(found["times"])} if found["times"] else {}
    if times and not times["times"]:
        raise UnreadableDocument(f"{who} is wanted no times.", "Leave it out, or say how many.")
    return {"word": word, "size": [width, height], **times, **({"turn": False} if found["fixed"] else {})}


def _refuse_length(side: str, who: str, unit: Unit) -> None:
    try:
        length = ticks(side, unit)
    except UnreadableLength as reason:
        raise UnreadableDocument(f"{who} cannot be cut: {reason}", reason.remedy) from None
    if length <= 0:
        raise UnreadableDocument(f"{who} has a side of “{side}”.", "A side is more than nothing.")


def _shown(text: str) -> str:
    return text if len(text) <= _MOST_SHOWN else text[: _MOST_SHOWN - 1] + "…"
