"""The maker's own tools: trimmer, ruler and adhesives."""

from dataclasses import dataclass
from enum import StrEnum

from spreadwright.lengths import TICKS, Unit


class Measures(StrEnum):
    """Which part the trimmer's scale measures."""

    KEPT = "kept"
    FALLING = "falling"


class Hand(StrEnum):
    """The hand that works the trimmer's arm: on that side is the blade, and on that side parts fall."""

    RIGHT = "right"
    LEFT = "left"


class Zero(StrEnum):
    """Where a ruler's scale begins."""

    END = "end"
    MIDDLE = "middle"


class Wetness(StrEnum):
    """How an adhesive goes on: from a roller as a tape, or as a liquid."""

    DRY = "dry"
    LIQUID = "liquid"


@dataclass(frozen=True, slots=True)
class Trimmer:
    """A guillotine trimmer.

    Attributes:
        length: Longest cut, ticks.
        graduation: Distance between two marks of its scale, ticks.
        measures: The part kept under the clamp or the part falling off.
        shortest: Narrowest strip that can be held safely, ticks.
        hand: The hand that works the arm.
        stack: How many equal sheets it cuts at once.
        accuracy: How far one cut may lie from its reading, to either side, ticks.
    """

    length: int
    graduation: int
    measures: Measures
    shortest: int
    hand: Hand = Hand.RIGHT
    stack: int = 1
    accuracy: int = TICKS[Unit.INCH] // 64


@dataclass(frozen=True, slots=True)
class Ruler:
    """The ruler by which pieces are placed.

    Attributes:
        graduation: Distance between two marks, ticks.
        width: How wide it is, ticks: laid along an edge it spaces just so far; 0 where it is not known.
        zeros: Where the scales that it carries begin; most have theirs at the end, some a second one in the middle.
    """

    graduation: int
    width: int = 0
    zeros: frozenset[Zero] = frozenset({Zero.END})


@dataclass(frozen=True, slots=True)
class Adhesive:
    """One adhesive.

    Attributes:
        wetness: A dry tape, or a liquid.
        width: Of the tape, or of the bead that the nozzle lays, ticks.
    """

    wetness: Wetness
    width: int


@dataclass(frozen=True, slots=True)
class Bench:
    """What one maker works with."""

    id: str
    title: str
    unit: Unit
    trimmer: Trimmer
    ruler: Ruler
    adhesives: tuple[Adhesive, ...]

    def adhesive(self, wetness: Wetness) -> Adhesive | None:
        """The narrowest adhesive of a kind, if there is one."""
        found = [adhesive for adhesive in self.adhesives if adhesive.wetness is wetness]
        return min(found, key=lambda adhesive: adhesive.width, default=None)


COMMON_ADHESIVES = (
    Adhesive(Wetness.DRY, 5 * TICKS[Unit.INCH] // 16),
    Adhesive(Wetness.LIQUID, TICKS[Unit.INCH] // 16),
)
"""A tape 5/16 in wide and a bead of 1/16 in: what is meant where a bench names none (common practice of the trade)."""

INCH_BENCH = Bench(
    "bench-inch",
    "12 in arm trimmer with an inch scale",
    Unit.INCH,
    Trimmer(12 * TICKS[Unit.INCH], TICKS[Unit.INCH] // 16, Measures.KEPT, TICKS[Unit.INCH] // 2),
    Ruler(TICKS[Unit.INCH] // 16, TICKS[Unit.INCH], frozenset({Zero.END, Zero.MIDDLE})),
    COMMON_ADHESIVES,
)
"""The bench that is meant when none is named; `recipes/benches/bench-inch.json` says the same."""
