"""Which part of a photograph fills a mat: as much as its shape allows, and in it most of what draws attention."""

from dataclasses import dataclass
from fractions import Fraction

import numpy as np
import numpy.typing as npt

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.photos.crop import Pixels

Floats = npt.NDArray[np.float64]

WHOLE = Fraction(1)
_STEPS = 240
"""Places that are tried from one end to the other."""
_OFF_MIDDLE, _CUT_THROUGH = 0.25, 0.05
"""What it costs, in shares of attention, when attention lies off the middle of the crop or is cut through."""

_HEADS = 3.0
"""How much more the top of a subject counts than its foot."""


@dataclass(frozen=True, slots=True)
class Focus:
    """The point of an upright photograph that matters: shares of its width and height from the top left."""

    x: Fraction
    y: Fraction


@dataclass(frozen=True, slots=True)
class Crop:
    """A part of an upright photograph, as shares of its width and height from the top left.

    Attributes:
        lost: The share of the area that is cut off, exact.
        kept: The share of attention that stays, 0 to 1.
    """

    left: Fraction
    top: Fraction
    width: Fraction
    height: Fraction
    kept: float

    @property
    def lost(self) -> Fraction:
        """The share of the photograph's area that is cut off."""
        return 1 - self.width * self.height


def cropped(picture: Pixels, shape: Size, attention: Floats, focus: Focus | None = None) -> Crop:
    """The largest part of a photograph that has a shape.

    Args:
        picture: Its size, upright.
        shape: Width and height of what it fills, in any unit.
        attention: As `attention` gives it, in any size.
        focus: The point that the crop lies about, as far as the photograph reaches; otherwise most attention is kept.
    """
    width = min(WHOLE, Fraction(picture.height * shape.width, picture.width * shape.height))
    height = min(WHOLE, Fraction(picture.width * shape.height, picture.height * shape.width))
    left = _start(width, attention.sum(axis=0), focus.x if focus else None)
    top = _start(height, _heads_first(attention.sum(axis=1)), focus.y if focus else None)
    return Crop(left, top, width, height, _kept(attention, left, width, 0) * _kept(attention, top, height, 1))


def per_inch(crop: Crop, picture: Pixels, size: Size) -> Fraction:
    """Pixels of the photograph to each inch of paper, the scarcer of both ways.

    Args:
        crop: What is shown of it.
        picture: Its size, upright.
        size: On paper, ticks.
    """
    inch = TICKS[Unit.INCH]
    across = crop.width * picture.width * inch / size.width
    return min(across, crop.height * picture.height * inch / size.height)


def _kept(attention: Floats, start: Fraction, share: Fraction, axis: int) -> float:
    return float(_within(attention.sum(axis=axis), np.array([float(start)]), float(share))[0]) if share < 1 else 1.0


def _heads_first(profile: Floats) -> Floats:
    """Attention from top to bottom, the upper part of a subject counting more: a crop may cut feet, never a head."""
    below = 1 - np.cumsum(profile) / profile.sum()
    return np.asarray(profile * (1 + _HEADS * below**2))


def _start(share: Fraction, profile: Floats, focus: Fraction | None) -> Fraction:
    """Where a window of this share begins."""
    slack = 1 - share
    if not slack:
        return Fraction(0)
    if focus is not None:
        return min(slack, max(Fraction(0), focus - share / 2))
    worth = _worth(float(slack) * np.arange(_STEPS + 1) / _STEPS, float(share), profile)
    best = np.flatnonzero(worth >= worth.max())
    step = int(best[np.argmin(np.abs(2 * best - _STEPS))])
    return slack * step / _STEPS


def _worth(starts: Floats, share: float, profile: Floats) -> Floats:
    """Attention kept, less what it costs that it lies off the middle or across an edge; rounded to what can be seen."""
    middle = float((profile * _centres(profile)).sum() / profile.sum())
    off = (starts + share / 2 - middle) / share
    across = (_at(profile, starts) + _at(profile, starts + share)) / float(profile.max())
    return np.round(_within(profile, starts, share) - _OFF_MIDDLE * off**2 - _CUT_THROUGH * across, 6)


def _within(profile: Floats, starts: Floats, share: float) -> Floats:
    """The part of a profile's sum that lies from each start on, for so large a share of its length."""
    sums = np.concatenate([[0.0], np.cumsum(profile)]) / profile.sum()
    edges = np.linspace(0, 1, len(sums))
    return np.asarray(np.interp(starts + share, edges, sums) - np.interp(starts, edges, sums))


def _at(profile: Floats, places: Floats) -> Floats:
    return np.asarray(np.interp(places, _centres(profile), profile))


def _centres(profile: Floats) -> Floats:
    return np.asarray((np.arange(len(profile)) + 0.5) / len(profile))
