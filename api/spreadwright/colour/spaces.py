"""From linear sRGB, as `images.srgb` has it, to the spaces in which colours are compared.

Arrays of shape (..., 3). Matrices: CSS Color Module Level 4, sample code. CIELAB: CIE 15. Oklab: B. Ottosson, 2020.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]

_TO_XYZ = np.array(
    [
        [0.41239079926595934, 0.357584339383878, 0.1804807884018343],
        [0.21263900587151027, 0.715168678767756, 0.07219231536073371],
        [0.01933081871559182, 0.11919477979462598, 0.9505321522496607],
    ]
)
D65 = (0.3127 / 0.3290, 1.0, (1 - 0.3127 - 0.3290) / 0.3290)
D50 = (0.3457 / 0.3585, 1.0, (1 - 0.3457 - 0.3585) / 0.3585)
"""White points, XYZ of the light of screens and of the light in which prints are judged."""

_BRADFORD = np.array([[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]])
_XYZ_TO_CONES = np.array(
    [
        [0.8190224432164319, 0.3619062562801221, -0.12887378261216414],
        [0.0329836671980271, 0.9292868468965546, 0.03614466816999844],
        [0.048177199566046255, 0.26423952494422764, 0.6335478258136937],
    ]
)
_CONES_TO_OKLAB = np.array(
    [
        [0.2104542553, 0.793617785, -0.0040720468],
        [1.9779984951, -2.428592205, 0.4505937099],
        [0.0259040371, 0.7827717662, -0.808675766],
    ]
)
LUMINANCE = np.array([0.2126, 0.7152, 0.0722])
"""What red, green and blue light add to it."""


def luminance(linear_rgb: ArrayLike) -> Floats:
    """Relative luminance as WCAG 2.2 defines it, 0 to 1."""
    found: Floats = np.asarray(linear_rgb, float) @ LUMINANCE
    return found


def xyz(linear_rgb: ArrayLike) -> Floats:
    """CIE XYZ for the white point D65, Y from 0 to 1."""
    found: Floats = np.asarray(linear_rgb, float) @ _TO_XYZ.T
    return found


def lab(linear_rgb: ArrayLike, white: Sequence[float] = D65) -> Floats:
    """CIELAB of linear sRGB, adapted by Bradford's matrix where the white point is not D65."""
    ratios = _adapted(xyz(linear_rgb), white) / np.array(white)
    bent = np.where(ratios > 216 / 24389, np.cbrt(ratios), (24389 / 27 * ratios + 16) / 116)
    x, y, z = bent[..., 0], bent[..., 1], bent[..., 2]
    return np.stack((116 * y - 16, 500 * (x - y), 200 * (y - z)), axis=-1)


def _adapted(values: Floats, white: Sequence[float]) -> Floats:
    if tuple(white) == D65:
        return values
    gains = (_BRADFORD @ np.array(white)) / (_BRADFORD @ np.array(D65))
    adaptation: Floats = np.linalg.inv(_BRADFORD) @ np.diag(gains) @ _BRADFORD
    return values @ adaptation.T


def oklab(linear_rgb: ArrayLike) -> Floats:
    """Oklab of linear sRGB: lightness from 0 to 1, then the two colour axes."""
    return oklab_of_xyz(xyz(linear_rgb))


def oklab_of_xyz(values: ArrayLike) -> Floats:
    """Oklab of CIE XYZ, D65."""
    found: Floats = np.cbrt(np.asarray(values, float) @ _XYZ_TO_CONES.T) @ _CONES_TO_OKLAB.T
    return found


def chroma(opponent: ArrayLike) -> Floats:
    """How colourful: the distance from grey of CIELAB or Oklab colours, in the unit of theirs."""
    values = np.asarray(opponent, float)
    found: Floats = np.hypot(values[..., 1], values[..., 2])
    return found
