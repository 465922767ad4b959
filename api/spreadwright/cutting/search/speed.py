"""Inner loops that are compiled: they keep to whole numbers, flat arrays of them, and other such loops.

A packed count takes several words of 62 bits, so that sums of two never reach the sign.
"""

from collections.abc import Callable
from typing import Any, TypeVar

import numba
import numpy

Loop = TypeVar("Loop", bound=Callable[..., Any])

WORD_BITS = 62
"""Bits of one word of a packed count."""

Ints = Any
"""A flat array of whole numbers of 64 bits."""

Table = Any
"""Rows of whole numbers of 64 bits."""

Floats = Any
"""A flat array of numbers of double precision."""

LOOPS: list[Any] = []
"""Every loop that has been handed to the compiler."""


def compiled(loop: Loop) -> Loop:
    """The loop, compiled at its first call and kept on disk where that is possible."""
    try:
        decorated: Any = numba.njit(cache=True, nogil=True)(loop)
    except RuntimeError:  # no folder in which compiled loops could be kept
        decorated = numba.njit(nogil=True)(loop)
    LOOPS.append(decorated)
    kept: Loop = decorated
    return kept


def zeros(count: int) -> Ints:
    """An array of `count` noughts."""
    return numpy.zeros(count, dtype="int64")


def filled(count: int, value: int) -> Ints:
    """An array of `count` equal numbers."""
    return numpy.full(count, value, dtype="int64")


def ints(values: list[int]) -> Ints:
    """The array of these numbers."""
    return numpy.array(values, dtype="int64")


def table(rows: int, columns: int, value: int) -> Table:
    """Rows of equal numbers."""
    return numpy.full((rows, columns), value, dtype="int64")


def floats(values: list[float]) -> Floats:
    """The array of these numbers."""
    return numpy.array(values, dtype="float64")
