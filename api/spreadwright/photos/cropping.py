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
    kept = _within(attention.sum(axis=0), left, width) if width < 1 else _within(attention.sum(axis=1), top, height)
    return Crop(left, top, width, height, kept)


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
    starts = [slack * step / _STEPS for step in range(_STEPS + 1)]
    middle = float((profile * _centres(profile)).sum() / profile.sum())
    worth = [_worth(start, share, profile, middle) for start in starts]
    best = max(worth)
    return min(
        (start for start, each in zip(starts, worth, strict=True) if each >= best), key=lambda s: abs(s - slack / 2)
    )


def _worth(start: Fraction, share: Fraction, profile: Floats, middle: float) -> float:
    """Attention kept, less what it costs that it lies off the middle or across an edge; rounded to what can be seen."""
    off = (float(start + share / 2) - middle) / float(share)
    across = (_at(profile, start) + _at(profile, start + share)) / float(profile.max())
    return round(_within(profile, start, share) - _OFF_MIDDLE * off**2 - _CUT_THROUGH * across, 6)


def _within(profile: Floats, start: Fraction, share: Fraction) -> float:
    """The part of a profile's sum that lies from `start` on, for so large a share of its length."""
    sums = np.concatenate([[0.0], np.cumsum(profile)]) / profile.sum()
    ends = np.interp([float(start), float(start + share)], np.linspace(0, 1, len(sums)), sums)
    return float(ends[1] - ends[0])


def _at(profile: Floats, place: Fraction) -> float:
    return float(np.interp(float(place), _centres(profile), profile))


def _centres(profile: Floats) -> Floats:
    return np.asarray((np.arange(len(profile)) + 0.5) / len(profile))
