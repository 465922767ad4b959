"""Whether a picture meets itself when it is laid side by side."""

import numpy as np
import numpy.typing as npt

from spreadwright.images.picture import Raster

_STEEP = 1.5
"""How much more than anywhere within the picture its ends must differ to be told apart from what is printed."""
_SEEN = 4.0
"""Differences below this are not seen, of 255."""


def meets_across(pixels: Raster) -> bool:
    """Whether its right edge goes on in its left one."""
    return _meets(pixels.astype(np.float64).transpose(1, 0, 2))


def meets_down(pixels: Raster) -> bool:
    """Whether its lower edge goes on in its upper one."""
    return _meets(pixels.astype(np.float64))


def _meets(lines: npt.NDArray[np.float64]) -> bool:
    """Whether the last line differs from the first no more than neighbours within do."""
    within = np.abs(np.diff(lines, axis=0)).mean(axis=(1, 2))
    joint = float(np.abs(lines[-1] - lines[0]).mean())
    return joint <= max(_SEEN, _STEEP * float(within.max(initial=0.0)))
