"""Balance: one paper dominates quietly, a second one carries, a third one is the accent.

How strongly a paper calls is `strength`; how strongly it should follows from its share of all the paper in sight:
`QUIET` for 60 % and more, `MIDDLE` for 30 %, `LOUD` for 10 % and less, straight in between. Every role counts by the
square root of its share, so that an accent is not lost for being small.
"""

import numpy as np

from spreadwright.colour.parts.part import Looks, Part
from spreadwright.colour.scene import Scene, Surface
from spreadwright.colour.spaces import Floats

SHARES = (0.1, 0.3, 0.6)
LOUD, MIDDLE, QUIET = 0.8, 0.5, 0.2
TOO_LOUD, TOO_QUIET = 0.7, 1.0
"""A strength that is so far above or below what is wanted is worth nothing. Being dull is the lesser fault."""
FULL_CHROMA, DARK = 60.0, 0.4
"""CIELAB units; how strong black is."""


def balance(scene: Scene, looks: Looks) -> Part:
    """The part; a recipe that shows no paper has none."""
    areas = scene.papers
    whole = sum(areas.values())
    roots = {surface: float(np.sqrt(area / whole)) for surface, area in areas.items()}
    found = strengths(looks)
    alone: dict[Surface, tuple[float, Floats]] = {}
    for surface, area in sorted(areas.items()):
        above = found - wanted(area / whole)
        value = 1 - np.clip(np.where(above > 0, above / TOO_LOUD, -above / TOO_QUIET), 0, 1)
        alone[surface] = (roots[surface] / sum(roots.values()), value)
    return Part(alone)


def wanted(share: float) -> float:
    """How strong a paper should be that has this share of all paper in sight, 0 to 1."""
    return float(np.interp(share, SHARES, (LOUD, MIDDLE, QUIET)))


def strengths(looks: Looks) -> Floats:
    """How strongly each calls, 0 to 1: by being colourful, busy or dark, and more so by several of them."""
    colourful = np.minimum([each.chroma / FULL_CHROMA for each in looks], 1)
    dark = DARK * (1 - np.array([each.lab[0] for each in looks]) / 100)
    found: Floats = 1 - (1 - colourful) * (1 - dark) * (1 - np.array([each.busyness for each in looks]))
    return found
