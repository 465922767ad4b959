"""How colours look to people who lack one kind of cone.

G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE TVCG 15(6), 1291-1298, 2009, severity 1. The matrices work on
light, so on linear sRGB; each row adds up to 1, so greys stay as they are. The third one is an approximation.
"""

from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike

from spreadwright.colour.spaces import Floats


class Deficiency(StrEnum):
    """Which kind of cone is missing: the one for long, middle or short waves."""

    PROTAN = "protan"
    DEUTAN = "deutan"
    TRITAN = "tritan"


_MATRICES = {
    Deficiency.PROTAN: np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    Deficiency.DEUTAN: np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    Deficiency.TRITAN: np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}


def matrix_of(deficiency: Deficiency) -> Floats:
    """What such an eye makes of linear sRGB, shape (3, 3): each row gives one channel of what is seen."""
    return _MATRICES[deficiency].copy()


def seen_with(deficiency: Deficiency, linear_rgb: ArrayLike) -> Floats:
    """Linear sRGB as such an eye sees it, clipped to what a screen shows; shape (..., 3)."""
    seen: Floats = np.asarray(linear_rgb, float) @ _MATRICES[deficiency].T
    return np.clip(seen, 0, 1)
