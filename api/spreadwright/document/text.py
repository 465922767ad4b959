"""Bytes to a JSON value, refused before they can do harm.

JSON as RFC 8259 has it and nothing else: no NaN, no number beyond a double, no member twice, no lone surrogate;
bounded in bytes, in depth and in the number of values, so that everything after it is bounded too.
"""

import json
import re
from collections.abc import Iterator
from typing import Any

from spreadwright.document.pointer import pointer
from spreadwright.errors import UnreadableDocument

MOST_BYTES = 1024 * 1024
"""A large recipe has 20 kB."""
MOST_VALUES = 10_000
"""Members, items and values of one document; a large recipe has 1,500."""
DEEPEST = 64
"""Levels of nesting; a deep cut tree has 20."""

_SKIPPED = re.compile(r'"(?:[^"\\]|\\.)*"?|[^"\[\]{}]+', re.DOTALL)
_SMALLER = "Recipes and paper sets are small; split this one or remove what does not belong to it."


def value(data: bytes) -> Any:
    """The JSON value that the bytes hold.

    Raises:
        UnreadableDocument: With what is wrong, where it is, and what to do.
    """
    if len(data) > MOST_BYTES:
        raise UnreadableDocument(f"The document has more than {MOST_BYTES:,} bytes.", _SMALLER)
    text = _decoded(data)
    _refuse_deep(text)
    twice: dict[int, str] = {}
    found = _parsed(text, twice)
    _inspect(found, twice)
    return found


def _decoded(data: bytes) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as reason:
        raise UnreadableDocument(f"Byte {reason.start + 1} is not UTF-8.", "Save the document as UTF-8 text.") from None


def _refuse_deep(text: str) -> None:
    """Counts brackets outside strings, since the parser itself gives up in ways that cannot be caught everywhere."""
    depth = position = 0
    while position < len(text):
        skipped = _SKIPPED.match(text, position)
        if skipped:
            position = skipped.end()
            continue
        depth += 1 if text[position] in "[{" else -1
        if depth > DEEPEST:
            raise UnreadableDocument(
                f"The document nests deeper than {DEEPEST} levels.", "Cut trees need far fewer; flatten it."
            )
        position += 1


def _parsed(text: str, twice: dict[int, str]) -> Any:
    def members(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        built = dict(pairs)
        if len(built) < len(pairs):
            names = [name for name, _ in pairs]
            twice[id(built)] = next(name for i, name in enumerate(names) if name in names[:i])
        return built

    try:
        return json.loads(
            text, object_pairs_hook=members, parse_constant=_refuse_constant, parse_float=_float, parse_int=_int
        )
    except json.JSONDecodeError as reason:
        raise UnreadableDocument(
            f"This is no JSON: {reason.msg} at line {reason.lineno}, column {reason.colno}.",
            "Mend the document there; a missing comma or quotation mark is the usual cause.",
        ) from None


def _refuse_constant(name: str) -> Any:
    raise UnreadableDocument(f"JSON has no {name}.", "Write a number, or leave the member out.")


def _float(digits: str) -> float:
    number = float(digits)
    if number in (float("inf"), float("-inf")):
        raise UnreadableDocument(f"The number {digits[:40]} is too large.", "Lengths are text, such as “11 1/2”.")
    return number


def _int(digits: str) -> int:
    if len(digits) > 20:
        raise UnreadableDocument(
            f"A whole number of {len(digits):,} digits is too large.", "Lengths are text, such as “11 1/2”."
        )
    return int(digits)


def _inspect(found: Any, twice: dict[int, str]) -> None:
    """Refuses duplicate members and lone surrogates where they stand, and more values than a document may have."""
    for count, (path, item) in enumerate(_walk(found, ())):
        if count > MOST_VALUES:
            raise UnreadableDocument(f"The document holds more than {MOST_VALUES:,} values.", _SMALLER)
        if id(item) in twice:
            raise UnreadableDocument(
                f"The member “{_shown(twice[id(item)])}” stands twice in one object.",
                "Remove one of the two.",
                where=pointer(*path),
            )
        for text in (item,) if isinstance(item, str) else item if isinstance(item, dict) else ():
            if any("\ud800" <= c <= "\udfff" for c in text):
                raise UnreadableDocument(
                    "The text holds half of a character (a lone surrogate).", "Type it again.", where=pointer(*path)
                )


def _walk(item: Any, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], Any]]:
    yield path, item
    if isinstance(item, dict):
        for name, child in item.items():
            yield from _walk(child, (*path, name))
    elif isinstance(item, list):
        for index, child in enumerate(item):
            yield from _walk(child, (*path, index))


def _shown(name: str) -> str:
    return name[:40].encode("utf-8", "replace").decode()
