"""CIEDE2000, the difference of two colours as people judge it; about 1 is just noticed.

G. Sharma, W. Wu, E. N. Dalal, Color Research and Application 30(1), 21-30, 2005; the comments give its equations.
"""

import numpy as np
from numpy.typing import ArrayLike

from spreadwright.colour.spaces import Floats

_25_TO_7 = 25.0**7


def ciede2000(one: ArrayLike, other: ArrayLike) -> Floats:
    """The difference of CIELAB colours, shapes (..., 3) that broadcast; kL = kC = kH = 1."""
    l1, a1, b1 = np.moveaxis(np.asarray(one, float), -1, 0)
    l2, a2, b2 = np.moveaxis(np.asarray(other, float), -1, 0)
    c1, h1, c2, h2 = _chroma_and_hue(a1, b1, a2, b2)
    dl, dc = l2 - l1, c2 - c1  # 8, 9
    dh = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(_hue_step(h1, h2, c1 * c2)) / 2)  # 11
    sl, sc, sh, rt = _weights((l1 + l2) / 2, (c1 + c2) / 2, _mean_hue(h1, h2, c1 * c2))
    dl, dc, dh = dl / sl, dc / sc, dh / sh
    squared: Floats = dl**2 + dc**2 + dh**2 + rt * dc * dh  # 22
    return np.sqrt(np.maximum(squared, 0))


def _chroma_and_hue(a1: Floats, b1: Floats, a2: Floats, b2: Floats) -> tuple[Floats, Floats, Floats, Floats]:
    """Chroma and hue, degrees, of both after the a axis has been stretched."""
    mean = (np.hypot(a1, b1) + np.hypot(a2, b2)) / 2  # 2, 3
    stretch = 1.5 - 0.5 * np.sqrt(mean**7 / (mean**7 + _25_TO_7))  # 4, 5
    a1, a2 = a1 * stretch, a2 * stretch
    hues = (np.degrees(np.arctan2(b, a)) % 360 for a, b in ((a1, b1), (a2, b2)))  # 7
    h1, h2 = hues
    return np.hypot(a1, b1), h1, np.hypot(a2, b2), h2  # 6


def _hue_step(h1: Floats, h2: Floats, product: Floats) -> Floats:
    """From the first hue to the second the short way round, degrees; 0 where one of them is grey."""
    step = h2 - h1
    step = np.where(step > 180, step - 360, np.where(step < -180, step + 360, step))
    return np.where(product == 0, 0, step)  # 10


def _mean_hue(h1: Floats, h2: Floats, product: Floats) -> Floats:
    total, apart = h1 + h2, np.abs(h1 - h2)
    round_the_circle = np.where(total < 360, total + 360, total - 360)
    mean = np.where(apart <= 180, total, round_the_circle) / 2
    return np.where(product == 0, total, mean)  # 14


def _weights(lightness: Floats, chroma: Floats, hue_deg: Floats) -> tuple[Floats, Floats, Floats, Floats]:
    """What lightness, chroma and hue are divided by, and how the last two turn together."""
    hue = np.radians(hue_deg)
    t = (
        1
        - 0.17 * np.cos(hue - np.radians(30))
        + 0.24 * np.cos(2 * hue)
        + 0.32 * np.cos(3 * hue + np.radians(6))
        - 0.20 * np.cos(4 * hue - np.radians(63))
    )  # 15
    turn = 30 * np.exp(-(((hue_deg - 275) / 25) ** 2))  # 16
    rc = 2 * np.sqrt(chroma**7 / (chroma**7 + _25_TO_7))  # 17
    middle = (lightness - 50) ** 2
    sl = 1 + 0.015 * middle / np.sqrt(20 + middle)  # 18
    return sl, 1 + 0.045 * chroma, 1 + 0.015 * chroma * t, -np.sin(np.radians(2 * turn)) * rc  # 19, 20, 21
