"""Other orders of the same cuts: parallel cuts of one part may be made in any order, and either part measured.

Up to four parts side by side every order is tried; of more parts only those that take one off an end each time, single
parts or all that is left measured, from one end throughout.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spreadwright.cutting import CutSheet
from spreadwright.geometry import Rect
from spreadwright.lengths import nearest
from spreadwright.model import Axis, Measures, Trimmer
from spreadwright.tolerance.partings import Parting
from spreadwright.tolerance.trace import Traced, traced

MOST_TRIED_OUT = 4
"""Five parts side by side have 224 orders."""


@dataclass(frozen=True, slots=True)
class Run:
    """Parallel cuts of one part, in their order."""

    cuts: tuple[Parting, ...]

    @property
    def axis(self) -> Axis:
        """What they make."""
        return self.cuts[0].axis

    @property
    def whole(self) -> Rect:
        """The part that they cut."""
        return self.cuts[0].on_board

    @property
    def edges(self) -> tuple[int, ...]:
        """Where its parts begin and end along the axis, ticks on the sheet."""
        rects = [rect for cut in self.cuts for rect in (cut.measured, cut.rest)]
        if self.axis is Axis.COLUMNS:
            return tuple(sorted({edge for rect in rects for edge in (rect.left, rect.right)}))
        return tuple(sorted({edge for rect in rects for edge in (rect.top, rect.bottom)}))

    def span(self, start: int, stop: int) -> Rect:
        """Some of its parts together: those from `start` to before `stop`."""
        near, far, whole = self.edges[start], self.edges[stop], self.whole
        if self.axis is Axis.COLUMNS:
            return Rect.between(near, whole.top, far, whole.bottom)
        return Rect.between(whole.left, near, whole.right, far)


def runs(cuts: Sequence[Parting]) -> tuple[Run, ...]:
    """The cuts of one sheet as runs of parallel ones, in the order of their first cuts."""
    found: list[list[Parting]] = []
    run_of: dict[tuple[Rect, Axis], list[Parting]] = {}
    for cut in cuts:
        run = run_of.get((cut.on_board, cut.axis))
        if run is None:
            found.append(run := [])
        run.append(cut)
        run_of[cut.measured, cut.axis] = run_of[cut.rest, cut.axis] = run
    return tuple(Run(tuple(run)) for run in found)


@dataclass(frozen=True, slots=True)
class Turn:
    """One cut of an order: of the parts from `start` to before `stop`, between those before and after `at`."""

    start: int
    at: int
    stop: int
    is_first_measured: bool


Order = tuple[Turn, ...]


def orders(count: int) -> Iterator[Order]:
    """The orders that are tried of a run of `count` parts."""
    if count <= MOST_TRIED_OUT:
        yield from _every(0, count)
        return
    for is_first_measured in (True, False):
        yield tuple(Turn(i, i + 1, count, is_first_measured) for i in range(count - 1))
        yield tuple(Turn(0, i, i + 1, is_first_measured) for i in range(count - 1, 0, -1))


def _every(start: int, stop: int) -> Iterator[Order]:
    if stop - start == 1:
        yield ()
        return
    for at in range(start + 1, stop):
        for is_first_measured in (True, False):
            for before in _every(start, at):
                for after in _every(at, stop):
                    yield (Turn(start, at, stop, is_first_measured), *before, *after)


def reordered(run: Run, order: Order, trimmer: Trimmer) -> tuple[Parting, ...] | None:
    """The run in another order; None where its trimmer could not hold or show it."""
    cuts = tuple(_cut(run, turn, old, trimmer) for turn, old in zip(order, run.cuts, strict=True))
    held = [cut.measured if trimmer.measures is Measures.KEPT else cut.rest for cut in cuts]
    is_safe = all(run.axis.along(rect) >= trimmer.shortest for rect in held)
    return cuts if is_safe and all(0 < cut.reading < run.axis.along(cut.on_board) for cut in cuts) else None


def _cut(run: Run, turn: Turn, old: Parting, trimmer: Trimmer) -> Parting:
    parts = (run.span(turn.start, turn.at), run.span(turn.at, turn.stop))
    measured, rest = parts if turn.is_first_measured else parts[::-1]
    reading = nearest(run.axis.along(measured), trimmer.graduation)
    return Parting(old.sheets, run.axis, run.span(turn.start, turn.stop), measured, rest, reading, old.source)


@dataclass(frozen=True, slots=True)
class Reordering:
    """Another order of one run.

    Attributes:
        sheets: The equal sheets that are cut together by it.
        cuts: The run in that order.
        found: The sides of all parts of the layout that it gives.
    """

    sheets: tuple[CutSheet, ...]
    cuts: tuple[Parting, ...]
    found: Traced


def reorderings(
    sheets: Sequence[CutSheet], cuts: Sequence[Parting], found: Traced, trimmer: Trimmer
) -> Iterator[Reordering]:
    """Every other order of one run at a time, always in the same succession.

    Args:
        sheets: All sheets of the layout.
        cuts: All of its cuts.
        found: The sides that these give.
        trimmer: The trimmer that should make them.
    """
    for numbers in dict.fromkeys(cut.sheets for cut in cuts):
        stack = tuple(sheet for sheet in sheets if sheet.number in numbers)
        own = [cut for cut in cuts if cut.sheets == numbers]
        for run in runs(own):
            for order in orders(len(run.cuts) + 1):
                changed = reordered(run, order, trimmer)
                if changed is not None:
                    yield Reordering(stack, changed, found | traced(stack, _replaced(own, run, changed)))


def _replaced(cuts: Sequence[Parting], run: Run, changed: Sequence[Parting]) -> list[Parting]:
    """The changed run where the first of its cuts stood: whatever is cut further comes later."""
    first = cuts.index(run.cuts[0])
    after = [cut for cut in cuts[first:] if cut not in run.cuts]
    return [*cuts[:first], *changed, *after]
