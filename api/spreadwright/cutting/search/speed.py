"""One source, two speeds: inner loops that a compiler takes when it is installed, and that Python runs when not.

Such a loop keeps to whole numbers, flat sequences and other such loops. Compiled, the sequences are arrays and a packed
count takes several 62-bit words; interpreted, they are lists, and one word is as long as it has to be.
"""

import os
from collections.abc import Callable
from importlib import import_module
from importlib.util import find_spec
from typing import Any, TypeVar

Loop = TypeVar("Loop", bound=Callable[..., Any])

IS_COMPILED = find_spec("numba") is not None and not os.environ.get("SPREADWRIGHT_INTERPRETED")
"""Whether inner loops are compiled. `SPREADWRIGHT_INTERPRETED` in the environment says no."""

WORD_BITS = 62 if IS_COMPILED else 1 << 30
"""Bits of one word of a packed count."""

Ints = Any
"""A flat sequence of whole numbers: an array when compiled, a list when not."""


def compiled(loop: Loop) -> Loop:
    """The loop, compiled at its first call and kept on disk where that is possible."""
    if not IS_COMPILED:
        return loop
    numba = import_module("numba")
    try:
        decorated: Loop = numba.njit(cache=True, nogil=True)(loop)
    except RuntimeError:  # no folder in which compiled loops could be kept
        decorated = numba.njit(nogil=True)(loop)
    return decorated


def zeros(count: int) -> Ints:
    """A sequence of `count` noughts."""
    return filled(count, 0)


def filled(count: int, value: int) -> Ints:
    """A sequence of `count` equal numbers."""
    if not IS_COMPILED:
        return [value] * count
    return import_module("numpy").full(count, value, dtype="int64")


def ints(values: list[int]) -> Ints:
    """The sequence of these numbers."""
    if not IS_COMPILED:
        return list(values)
    return import_module("numpy").array(values, dtype="int64")
