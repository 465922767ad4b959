"""The maker's own tools: trimmer and ruler."""

from dataclasses import dataclass
from enum import StrEnum

from spreadwright.lengths import TICKS, Unit


class Measures(StrEnum):
    """Which part the trimmer's scale measures."""

    KEPT = "kept"
    FALLING = "falling"


@dataclass(frozen=True, slots=True)
class Trimmer:
    """A guillotine trimmer.

    Attributes:
        length: Longest cut, ticks.
        graduation: Distance between two marks of its scale, ticks.
        measures: The part kept under the clamp or the part falling off.
        shortest: Narrowest strip that can be held safely, ticks.
    """

    length: int
    graduation: int
    measures: Measures
    shortest: int


@dataclass(frozen=True, slots=True)
class Bench:
    """What one maker works with; `ruler_graduation` in ticks."""

    id: str
    title: str
    unit: Unit
    trimmer: Trimmer
    ruler_graduation: int


INCH_BENCH = Bench(
    "bench-inch",
    "12 in arm trimmer with an inch scale",
    Unit.INCH,
    Trimmer(12 * TICKS[Unit.INCH], TICKS[Unit.INCH] // 16, Measures.KEPT, TICKS[Unit.INCH] // 2),
    TICKS[Unit.INCH] // 16,
)
"""The bench that is meant when none is named; `recipes/benches/bench-inch.json` says the same."""
