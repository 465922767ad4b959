"""Pictures that may run on: what stands under a drawing, shared out over as many leaves of paper as it needs."""

from collections.abc import Sequence
from typing import Protocol

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.path import Point
from spreadwright.drawing.theme import MM

LEAF_HEIGHT = 265 * MM
"""What both A4 and letter paper take with a margin all round, ticks."""
NO_END = 10**9
"""The height of a picture for the screen, which is as long as it must be; ticks."""
SPACE_BETWEEN = 4 * MM


class Block(Protocol):
    """Something as wide as the text and as high as it says, ticks."""

    @property
    def height(self) -> int:
        """What it takes, ticks."""
        ...

    def draw(self, canvas: Canvas, at: Point, total: int) -> None:
        """Draw it with its top left corner at a point, `total` ticks wide."""
        ...

    def split(self, room: int) -> "tuple[Block | None, Block | None]":
        """What fits into `room` ticks, and the rest."""
        ...


Leaf = tuple[tuple[int, Block], ...]
"""The blocks of one leaf, each with its top, ticks."""


def leaves(blocks: Sequence[Block], *, first: int, further: int, height: int) -> tuple[Leaf, ...]:
    """The blocks one under the other, on as many leaves as they need; a first leaf there always is.

    Args:
        first: Where they begin on the first leaf, ticks from its top.
        further: Where they begin on the others.
        height: Where they end on each.
    """
    done: list[Leaf] = []
    current: list[tuple[int, Block]] = []
    top, waiting = first, list(blocks)
    while waiting:
        fitting, rest = waiting.pop(0).split(height - top)
        if fitting is None and rest is not None and not current and done:
            fitting, rest = rest, None  # higher than a whole leaf: it is shown all the same
        if fitting is not None:
            current.append((top, fitting))
            top += fitting.height + SPACE_BETWEEN
        if rest is not None:
            waiting.insert(0, rest)
            done.append(tuple(current))
            current, top = [], further
    return (*done, tuple(current))


def bottom_of(leaf: Leaf, start: int) -> int:
    """Where the last block of a leaf ends, ticks; `start` when there is none."""
    return max((top + block.height for top, block in leaf), default=start)
