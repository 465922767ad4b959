"""Grey: whether it also reads where colours are not told apart.

The contrast ratio of WCAG 2.2 between the average colours of what meets, as seen with full sight and with each of three
deficiencies; the least of the four counts, times `PRINT_ADDS` where the busiest print meets a plain paper, since a
pattern is seen in grey as well. 0 without contrast, 1 from 3 : 1, and by its logarithm in between.
"""

import numpy as np

from spreadwright.colour.contrast import GRAPHICS, ratio
from spreadwright.colour.deficiency import Deficiency, seen_with
from spreadwright.colour.parts.part import Looks, Part, borders, ramp
from spreadwright.colour.scene import Scene
from spreadwright.colour.spaces import Floats, luminance

PRINT_ADDS = 2.0


def grey(scene: Scene, looks: Looks) -> Part:
    """The part, its meetings counted by length and by area."""
    busy = np.array([each.busyness for each in looks])
    contrast = np.log(least_ratio(looks)) + np.log(PRINT_ADDS) * np.abs(busy[:, None] - busy[None, :])
    return Part(meetings=borders(scene), matrix=ramp(contrast, 0.0, float(np.log(GRAPHICS))))


def least_ratio(looks: Looks) -> Floats:
    """The contrast of every look with every other, for whoever sees the least of it."""
    colours = np.array([each.average for each in looks])
    sights = [colours, *(seen_with(deficiency, colours) for deficiency in Deficiency)]
    lights = [luminance(seen) for seen in sights]
    found: Floats = np.minimum.reduce([ratio(light[:, None], light[None, :]) for light in lights])
    return found
