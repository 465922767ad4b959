"""Calm: no busy print on or beside a busy print.

Where two papers meet, the calmer one decides: twice its busyness is lost. A photograph is as busy as `PHOTO_BUSYNESS`.
"""

import numpy as np

from spreadwright.colour.parts.part import Looks, Part, shares
from spreadwright.colour.scene import PHOTO, Scene
from spreadwright.colour.spaces import Floats

PHOTO_BUSYNESS = 0.4


def calm(scene: Scene, looks: Looks) -> Part:
    """The part, its meetings counted by length."""
    busy = np.array([each.busyness for each in looks])
    found = shares(scene, with_photos=True)
    length = {meeting: share for meeting, share in found.items() if PHOTO not in meeting}
    beside_photos = {
        (one if other == PHOTO else other): (share, kept(busy, np.array(PHOTO_BUSYNESS)))
        for (one, other), share in found.items()
        if PHOTO in (one, other)
    }
    return Part(beside_photos, length, kept(busy[:, None], busy[None, :]))


def kept(one: Floats, other: Floats) -> Floats:
    """What is left of the calm where two of these busynesses meet, 0 to 1."""
    left: Floats = 1 - np.minimum(2 * np.minimum(one, other), 1)
    return left
