"""Separation: each piece against what lies under and beside it.

The CIEDE2000 difference of the average colours, and what a print adds to it beside a plainer paper:
`PRINT_ADDS` for the whole difference in busyness. 0 up to `ALIKE`, 1 from `APART`.
"""

import numpy as np

from spreadwright.colour.difference import ciede2000
from spreadwright.colour.parts.part import Looks, Part, borders, ramp
from spreadwright.colour.scene import Scene
from spreadwright.colour.spaces import Floats

ALIKE, APART, PRINT_ADDS = 4.0, 28.0, 12.0
"""CIEDE2000 units."""


def separation(scene: Scene, looks: Looks) -> Part:
    """The part, its meetings counted by length and by area."""
    return Part(meetings=borders(scene), matrix=ramp(apart(looks), ALIKE, APART))


def apart(looks: Looks) -> Floats:
    """How far every look is from every other, CIEDE2000 units."""
    found = marks(looks)
    return difference(found[:, None], found[None, :])


def marks(looks: Looks) -> Floats:
    """By what looks are told apart: CIELAB and busyness, shape (looks, 4)."""
    return np.array([[*each.lab.tolist(), each.busyness] for each in looks])


def difference(one: Floats, other: Floats) -> Floats:
    """How far apart marks are, shapes (..., 4) that broadcast; CIEDE2000 units, with what a print adds."""
    return ciede2000(one[..., :3], other[..., :3]) + PRINT_ADDS * np.abs(one[..., 3] - other[..., 3])
