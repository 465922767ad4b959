"""What a part of the score is made of, and which edges count how much in it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from spreadwright.colour.measure import Look
from spreadwright.colour.scene import PHOTO, Meeting, Scene, Surface
from spreadwright.colour.spaces import Floats

Looks = Sequence[Look]

BY_LENGTH = 0.5
"""The part of what a border counts that goes by its length."""


@dataclass(frozen=True)
class Part:
    """One part of the score, for all looks at once.

    Attributes:
        alone: For each surface its share and the value of every look on it.
        meetings: For each two surfaces their share.
        matrix: The value of every look where it meets every other; symmetric.
    """

    alone: Mapping[Surface, tuple[float, Floats]] = field(default_factory=dict)
    meetings: Mapping[Meeting, float] = field(default_factory=dict)
    matrix: Floats = field(default_factory=lambda: np.zeros((0, 0)))

    @property
    def is_empty(self) -> bool:
        """Whether the recipe has nothing to judge by this part."""
        return not self.alone and not self.meetings


def shares(scene: Scene, *, with_photos: bool = False) -> dict[Meeting, float]:
    """How much each two different surfaces meet, as a share of all meetings; facing each other counts half."""
    lengths: dict[Meeting, float] = {}
    for counted, found in ((1.0, scene.edges), (0.5, scene.facing)):
        for meeting, length in found.items():
            if meeting[0] != meeting[1] and (with_photos or PHOTO not in meeting):
                lengths[meeting] = lengths.get(meeting, 0.0) + counted * length
    whole = sum(lengths.values())
    return {meeting: length / whole for meeting, length in sorted(lengths.items())}


def borders(scene: Scene) -> dict[Meeting, float]:
    """How much each two different surfaces that meet count where they should differ, 1 in all.

    `BY_LENGTH` of it goes by how long they meet. The rest goes by the area of the smaller one in sight: so much paper
    is lost to the eye where both look alike, however little of the edge between them is left uncovered.
    """
    by_length = shares(scene)
    smaller = {meeting: min(scene.areas.get(each, 0) for each in meeting) for meeting in by_length}
    whole = sum(smaller.values()) or 1
    return {
        meeting: BY_LENGTH * share + (1 - BY_LENGTH) * smaller[meeting] / whole for meeting, share in by_length.items()
    }


def ramp(values: Floats, none: float, full: float) -> Floats:
    """0 up to `none`, 1 from `full`, straight in between."""
    return np.clip((values - none) / (full - none), 0, 1)
