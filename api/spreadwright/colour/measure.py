"""What a face amounts to, seen from where a page is looked at: its average colour, and how busy it is.

Average: the mean of all pixels in proportion to light, which is what the eye blends at a distance. Busyness: how much
the colour differs, in CIELAB, between points that lie 2, 4 and 8 mm apart across and down; the mean over all pairs,
where `BUSIEST` and more count as 1. A plain face has 0, and so has any that changes only over the width of a page.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from spreadwright.colour.spaces import Floats, chroma, lab, luminance
from spreadwright.images import Raster
from spreadwright.images.srgb import encoded, hex_of, light_of

APART_MM = (2, 4, 8)
BUSIEST = 30.0
"""CIE76 units: a print in ink on paper with as much of the one as of the other has about 40."""


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


def look(pixels: Raster, pixels_per_mm: float) -> Look:
    """What the pixels of a face, shape (height, width, 3), amount to."""
    colours, number = _different(pixels)
    light = light_of(colours)
    shares = np.bincount(number.ravel(), minlength=len(colours)) / number.size
    red, green, blue = (float(channel) for channel in shares @ light)
    return Look((red, green, blue), _busyness(lab(light).T[:, number], pixels_per_mm) if len(colours) > 1 else 0.0)


def _different(pixels: Raster) -> tuple[Raster, NDArray[np.intp]]:
    """The colours that there are, and for every pixel the number of its own: a print has few."""
    packed = pixels.astype(np.uint32) @ np.array([1 << 16, 1 << 8, 1], np.uint32)
    known, number = np.unique(packed, return_inverse=True)
    channels = (known[:, None] >> np.array([16, 8, 0], np.uint32)) & 255
    return channels.astype(np.uint8), number.reshape(packed.shape)


def _busyness(colours: Floats, pixels_per_mm: float) -> float:
    """Of CIELAB colours, channel by channel: shape (3, height, width)."""
    steps = [round(apart * pixels_per_mm) for apart in APART_MM]
    differences = [_mean_difference(turned, step) for turned in (colours, colours.swapaxes(1, 2)) for step in steps]
    return min(float(np.mean(differences)) / BUSIEST, 1.0)


def _mean_difference(colours: Floats, step: int) -> float:
    """Between every pixel and the one so many rows below it; 0 when there is none."""
    if not 0 < step < colours.shape[1]:
        return 0.0
    squared = (colours[:, step:] - colours[:, :-step]) ** 2
    return float(np.sqrt(squared[0] + squared[1] + squared[2]).mean())
