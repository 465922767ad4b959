"""Colours as files hold them and as light (IEC 61966-2-1).

Arrays of shape (..., 3). *Encoded* is sRGB as files hold it, *linear* is proportional to light; both from 0 to 1.
"""

import numpy as np
import numpy.typing as npt
from numpy.typing import ArrayLike

from spreadwright.images.picture import Raster

_Floats = npt.NDArray[np.float64]

_KNEE = 0.04045


def encoded_of(colour: str) -> _Floats:
    """The encoded colour that ``#rrggbb`` writes."""
    return np.array([int(colour[place : place + 2], 16) for place in (1, 3, 5)]) / 255


def hex_of(encoded: ArrayLike) -> str:
    """One encoded colour as ``#rrggbb``, each channel at the nearest step."""
    steps = np.rint(np.clip(np.asarray(encoded, float), 0, 1) * 255).astype(int)
    return "#" + "".join(f"{step:02x}" for step in steps)


def linear(encoded: ArrayLike) -> _Floats:
    """Encoded sRGB as proportional to light."""
    values = np.asarray(encoded, float)
    return np.where(values <= _KNEE, values / 12.92, ((np.maximum(values, _KNEE) + 0.055) / 1.055) ** 2.4)


def encoded(linear_rgb: ArrayLike) -> _Floats:
    """Linear sRGB, clipped to what a screen shows, as files hold it."""
    values = np.clip(np.asarray(linear_rgb, float), 0, 1)
    found: _Floats = np.where(values <= _KNEE / 12.92, values * 12.92, 1.055 * values ** (1 / 2.4) - 0.055)
    return found


_LIGHT = linear(np.arange(256) / 255)


def light_of(pixels: Raster) -> _Floats:
    """The light of pixels, linear sRGB."""
    found: _Floats = _LIGHT[pixels]
    return found


def average_colour(pixels: Raster) -> str:
    """The colour that a picture has from afar, as ``#rrggbb``: the one that mixes light as its pixels together do."""
    return hex_of(encoded([_LIGHT[pixels[..., channel]].mean() for channel in range(3)]))
