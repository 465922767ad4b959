"""What an order of cuts costs: narrow strips held, the scale set, parts picked up again, paper turned.

Holding a strip narrower than the trimmer can hold safely is worse than anything else, so it is made to fall instead
where the other end may be kept. Setting a scale is what goes wrong most often and takes longest; then comes finding
and laying down a part that was set aside; then a quarter turn. Of orders with the same sum the one is taken that
keeps parts in their usual lie, then the one whose settings reach less far, since a stop close to the blade is easier
to see and to reach.
"""

from collections.abc import Iterable
from dataclasses import dataclass

NARROW, SETTING, PICK_UP, QUARTER_TURN = 12, 4, 3, 2
"""What each counts for."""


@dataclass(frozen=True, slots=True)
class Effort:
    """What cuts cost.

    Attributes:
        narrow: How many cuts keep a strip narrower than the trimmer can hold safely.
        settings: How often the scale is set anew.
        quarter_turns: By how many quarters paper is turned; half a turn is two.
        pick_ups: How often a part that was set aside is picked up.
        unusual: How many cuts are made with the part turned otherwise than usual.
        reach: The sum of the lengths that the scale is set to, ticks.
    """

    narrow: int = 0
    settings: int = 0
    quarter_turns: int = 0
    pick_ups: int = 0
    unusual: int = 0
    reach: int = 0

    def __add__(self, other: "Effort") -> "Effort":
        return Effort(
            self.narrow + other.narrow,
            self.settings + other.settings,
            self.quarter_turns + other.quarter_turns,
            self.pick_ups + other.pick_ups,
            self.unusual + other.unusual,
            self.reach + other.reach,
        )

    @property
    def sum(self) -> int:
        """The weighted sum."""
        handling = PICK_UP * self.pick_ups + QUARTER_TURN * self.quarter_turns
        return NARROW * self.narrow + SETTING * self.settings + handling

    @property
    def rank(self) -> tuple[int, int, int]:
        """What orders are compared by, the smaller the better."""
        return self.sum, self.unusual, self.reach


def total(efforts: Iterable[Effort]) -> Effort:
    """The sum of several."""
    return sum(efforts, Effort())
