"""How a part lies on the board of a trimmer, and which of its ends falls there.

The board in mind: the fence at the top, the blade at the side of the hand that works the arm, so a cut runs from top
to bottom and what lies beyond the blade falls. A part lies upright, as on the sheet, or turned by one, two or three
quarters to the left; which of its columns or rows then falls follows from the hand. For a left hand everything is
mirrored.
"""

from enum import StrEnum

from spreadwright.model import Axis, Hand

UPRIGHT, TO_THE_LEFT, HALF_ROUND, TO_THE_RIGHT = 0, 1, 2, 3
"""Quarter turns to the left, from the sheet upright."""


class End(StrEnum):
    """Which end of a row or column falls first."""

    LAST = "last"
    FIRST = "first"

    @property
    def other(self) -> "End":
        """The opposite end."""
        return End.FIRST if self is End.LAST else End.LAST


_RIGHT_HAND = {
    (Axis.COLUMNS, End.LAST): UPRIGHT,
    (Axis.ROWS, End.LAST): TO_THE_LEFT,
    (Axis.COLUMNS, End.FIRST): HALF_ROUND,
    (Axis.ROWS, End.FIRST): TO_THE_RIGHT,
}


def lie(axis: Axis, end: End, hand: Hand) -> int:
    """How a part lies, as quarter turns to the left, for one of its ends to fall."""
    if hand is Hand.RIGHT:
        return _RIGHT_HAND[axis, end]
    return (_RIGHT_HAND[axis, end] + 2) % 4


def usual_end(axis: Axis, hand: Hand) -> End:
    """The end that falls where a part lies as people lay it: upright for columns, its top edge kept for rows."""
    return End.FIRST if axis is Axis.COLUMNS and hand is Hand.LEFT else End.LAST


def turn(lies: int, shall_lie: int) -> int:
    """The turn from one lie to another, quarters: 1 to the left, -1 to the right, 2 half round, 0 none."""
    quarters = (shall_lie - lies) % 4
    return -1 if quarters == 3 else quarters
