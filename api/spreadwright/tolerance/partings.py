"""What a cut does to the sizes of paper: one part is measured, the other is what remains."""

from collections.abc import Iterable
from dataclasses import dataclass

from spreadwright.cutting import CutStep
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Measures, Trimmer
from spreadwright.tolerance.deviation import Source

CUT = "cut"
"""The kind of source that a cut is."""


@dataclass(frozen=True, slots=True)
class Parting:
    """One cut, seen as a measurement.

    Attributes:
        sheets: The numbers of the equal sheets that are cut together: they share one error.
        axis: Whether it makes columns or rows.
        on_board: What is cut, as a place on the sheet, ticks.
        measured: The part that the scale measures, likewise.
        rest: The other part.
        reading: What the scale shows, ticks.
        source: The error of this cut; its number is that of the step.
    """

    sheets: tuple[int, ...]
    axis: Axis
    on_board: Rect
    measured: Rect
    rest: Rect
    reading: int
    source: Source

    @property
    def shift(self) -> int:
        """By how much the reading is more than what was wanted, ticks."""
        return self.reading - self.axis.along(self.measured)


def partings(steps: Iterable[CutStep], trimmer: Trimmer) -> tuple[Parting, ...]:
    """Every cut as a measurement, in the order in which they are made."""
    return tuple(_parting(step, trimmer) for step in steps)


def _parting(step: CutStep, trimmer: Trimmer) -> Parting:
    shares = (step.kept.rect, step.falling.rect)
    measured, rest = shares if step.measures is Measures.KEPT else shares[::-1]
    source = Source(CUT, step.number, trimmer.accuracy)
    return Parting(step.sheets, step.axis, step.on_board, measured, rest, step.reading, source)
