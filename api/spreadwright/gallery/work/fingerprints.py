"""Fingerprints of what something follows from: equal values have equal ones, in every process and on every machine."""

from dataclasses import fields, is_dataclass
from enum import Enum
from hashlib import sha256
from typing import Any

_Known = dict[int, bytes]


def fingerprint(value: object, known: _Known | None = None) -> str:
    """The fingerprint of a value made of frozen dataclasses, tuples, enums, text, bytes and numbers, in hexadecimal.

    Args:
        value: Kept alive by the caller for as long as `known`.
        known: What was worked out for parts that several values share; filled on the way.

    >>> fingerprint(("a", "bc")) == fingerprint(("ab", "c"))
    False
    """
    return _digest(value, {} if known is None else known).hex()


def _digest(value: Any, known: _Known) -> bytes:
    if is_dataclass(value) and not isinstance(value, type):
        if id(value) not in known:
            parts = [getattr(value, each.name) for each in fields(value)]
            known[id(value)] = _together(type(value).__name__, parts, known)
        return known[id(value)]
    if isinstance(value, tuple):
        return _together("tuple", list(value), known)
    if isinstance(value, Enum):
        return _together(type(value).__name__, [value.value], known)
    if isinstance(value, bytes):
        return sha256(b"bytes:" + value).digest()
    if value is None or isinstance(value, (str, int, float)):
        return sha256(f"{type(value).__name__}:{value!r}".encode()).digest()
    raise TypeError(f"{type(value).__name__} has no fingerprint")


def _together(name: str, parts: list[Any], known: _Known) -> bytes:
    return sha256(name.encode() + b"".join(_digest(part, known) for part in parts)).digest()
