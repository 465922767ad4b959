"""Captions: pieces that are written on must be light and calm enough for it.

The contrast of their average colour with a dark pencil: 0 up to 3 : 1, 1 from 7 : 1, and by its logarithm in between;
of that, what `calm` leaves where the writing is as busy as the print.
"""

import numpy as np

from spreadwright.colour.contrast import ENHANCED_TEXT, LARGE_TEXT, ratio
from spreadwright.colour.parts.calm import kept
from spreadwright.colour.parts.part import Looks, Part, ramp
from spreadwright.colour.scene import Scene
from spreadwright.colour.spaces import Floats, luminance
from spreadwright.images.srgb import encoded_of, linear

PENCIL = "#3a3a3a"


def captions(scene: Scene, looks: Looks) -> Part:
    """The part, every caption counted alike; a recipe without any has none."""
    whole = sum(scene.captions.values())
    found = written(looks)
    return Part({surface: (count / whole, found) for surface, count in sorted(scene.captions.items())})


def written(looks: Looks) -> Floats:
    """How well each can be written on, 0 to 1."""
    readable = ramp(np.log(pencil_ratio(looks)), float(np.log(LARGE_TEXT)), float(np.log(ENHANCED_TEXT)))
    busy = np.array([each.busyness for each in looks])
    found: Floats = readable * kept(busy, busy)
    return found


def pencil_ratio(looks: Looks) -> Floats:
    """The contrast of each with the pencil."""
    return ratio(np.array([each.luminance for each in looks]), luminance(linear(encoded_of(PENCIL))))
