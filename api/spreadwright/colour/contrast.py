"""The contrast ratio of WCAG 2.2: whether two colours differ when only light and dark are seen."""

import numpy as np
from numpy.typing import ArrayLike

from spreadwright.colour.spaces import Floats

TEXT, LARGE_TEXT, GRAPHICS = 4.5, 3.0, 3.0
"""Least ratios of level AA: 1.4.3 for text, 1.4.11 for shapes."""
ENHANCED_TEXT = 7.0
"""Least ratio of level AAA for text, 1.4.6."""


def ratio(one: ArrayLike, other: ArrayLike) -> Floats:
    """(lighter + 0.05) / (darker + 0.05) of relative luminances, 1 to 21; never to be rounded up."""
    first, second = np.asarray(one, float), np.asarray(other, float)
    found: Floats = (np.maximum(first, second) + 0.05) / (np.minimum(first, second) + 0.05)
    return found
