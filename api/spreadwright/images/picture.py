"""A picture as the rest of the package knows it: upright, opaque, in sRGB."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Raster = npt.NDArray[np.uint8]
"""Height x width x 3: sRGB, 0 to 255, rows from the top."""


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """A picture that was read.

    Attributes:
        pixels: No more than asked for, and not to be written to.
        width: Of the picture as it was made, once it stands upright, pixels.
        height: Likewise.
    """

    pixels: Raster
    width: int
    height: int
