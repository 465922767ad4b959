"""What a face amounts to, seen from where a page is looked at: its average colour, and how busy it is.

Average: the mean of all pixels in proportion to light, which is what the eye blends at a distance. Busyness: how much
the colour differs, in CIELAB, between points that lie 2, 4 and 8 mm apart across and down; the mean over all pairs,
where `BUSIEST` and more count as 1. A plain face has 0, and so has any that changes only over the width of a page.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from spreadwright.colour.spaces import Floats, chroma, encoded, hex_of, lab, linear, luminance

Pixels = NDArray[np.uint8]

APART_MM = (2, 4, 8)
BUSIEST = 30.0
"""CIE76 units: a print in ink on paper with as much of the one as of the other has about 40."""

_LINEAR = linear(np.arange(256) / 255)


@dataclass(frozen=True)
class Look:
    """A face as it counts beside others.

    Attributes:
        average: Linear sRGB, 0 to 1.
        busyness: 0 for a plain face, 1 for the busiest.
    """

    average: tuple[float, float, float]
    busyness: float

    @cached_property
    def lab(self) -> Floats:
        """The average in CIELAB, D65."""
        return lab(self.average)

    @property
    def luminance(self) -> float:
        """Of the average, 0 to 1."""
        return float(luminance(self.average))

    @property
    def chroma(self) -> float:
        """How colourful the average is, CIELAB units."""
        return float(chroma(self.lab))

    @property
    def colour(self) -> str:
        """The average as ``#rrggbb``."""
        return hex_of(encoded(self.average))


def look(pixels: Pixels, pixels_per_mm: float) -> Look:
    """What the pixels of a face, shape (height, width, 3), amount to."""
    light = _LINEAR[pixels]
    red, green, blue = light.reshape(-1, 3).mean(axis=0)
    return Look((float(red), float(green), float(blue)), _busyness(lab(light), pixels_per_mm))


def _busyness(colours: Floats, pixels_per_mm: float) -> float:
    steps = [round(apart * pixels_per_mm) for apart in APART_MM]
    differences = [_mean_difference(turned, step) for turned in (colours, colours.swapaxes(0, 1)) for step in steps]
    return min(float(np.mean(differences)) / BUSIEST, 1.0)


def _mean_difference(colours: Floats, step: int) -> float:
    """Between every pixel and the one so many rows below it; 0 when there is none."""
    if not 0 < step < len(colours):
        return 0.0
    return float(np.linalg.norm(colours[step:] - colours[:-step], axis=-1).mean())
