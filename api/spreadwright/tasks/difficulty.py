"""How much a layout asks of whoever makes it: a number and a word for it, explained in `site/docs/difficulty.md`."""

from dataclasses import dataclass
from enum import StrEnum

from spreadwright.tasks.cut import Cutting
from spreadwright.words import gettext as _

CUT, GLUED, SIZE = 2, 3, 1
"""What each cut, each piece that is glued down, and each size of piece counts for; handling counts as in `Effort`."""


class Level(StrEnum):
    """What a layout asks for, the least first."""

    GENTLE = "gentle"
    STEADY = "steady"
    PATIENT = "patient"
    EXACTING = "exacting"


UP_TO = {Level.GENTLE: 80, Level.STEADY: 130, Level.PATIENT: 180}
"""The most points of each level; whatever is above them all is exacting."""


@dataclass(frozen=True, slots=True)
class Difficulty:
    """The points of a layout on one bench."""

    points: int

    @property
    def level(self) -> Level:
        """The word for them."""
        return next((level for level, most in UP_TO.items() if self.points <= most), Level.EXACTING)


def difficulty(cutting: Cutting) -> Difficulty:
    """What cutting and gluing ask for: effort at the trimmer, cuts, pieces to glue, sizes to tell apart."""
    placed = len(cutting.recipe.placements)
    sizes = {frozenset((size.width, size.height)) for size in cutting.sizes.values()}
    return Difficulty(cutting.effort.sum + CUT * len(cutting.steps) + GLUED * placed + SIZE * len(sizes))


def level_words(level: Level) -> str:
    """A level as people read it."""
    return {
        Level.GENTLE: _("gentle"),
        Level.STEADY: _("steady"),
        Level.PATIENT: _("patient"),
        Level.EXACTING: _("exacting"),
    }[level]
