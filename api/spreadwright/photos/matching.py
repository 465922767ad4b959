"""Which photograph lies on which mat, and how it is cropped there: the least that is lost, over all of them together.

    cost of a photograph on a mat = 60 % of the attention that is cut off
                                  + 40 % of the area that is cut off
                                  + half of what is missing to 150 pixels per inch, as a share of it
                                  - half of the mat's area, as a share of the largest mat's

The last makes the larger mats be filled first where there are fewer photographs than mats; it changes nothing where
every mat gets one. Costs are whole millionths, so that the least is exact.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from spreadwright.geometry import Size
from spreadwright.photos.assignment import assigned
from spreadwright.photos.crop import COARSE, Pixels
from spreadwright.photos.cropping import Crop, Floats, Focus, cropped, per_inch

ATTENTION, AREA, TOO_COARSE, LARGE_MAT = 0.6, 0.4, 0.5, 0.5
_WHOLE = 1_000_000


@dataclass(frozen=True, slots=True, eq=False)
class Shot:
    """A photograph as far as cropping goes.

    Attributes:
        size: Upright.
        attention: As `saliency.attention` gives it.
    """

    size: Pixels
    attention: Floats
    focus: Focus | None = None


@dataclass(frozen=True, slots=True)
class Laid:
    """A photograph on a mat, both by number."""

    shot: int
    mat: int
    crop: Crop
    per_inch: Fraction


def laid(shots: Sequence[Shot], mats: Sequence[Size]) -> tuple[Laid, ...]:
    """As many photographs on mats as there are of the fewer, in the order of the mats.

    Args:
        shots: The photographs.
        mats: What a photograph measures on each, as it lies on the page, ticks.
    """
    crops = [[cropped(shot.size, mat, shot.attention, shot.focus) for mat in mats] for shot in shots]
    largest = max((mat.area for mat in mats), default=1)
    costs = [
        [
            _cost(crop, per_inch(crop, shot.size, mat), Fraction(mat.area, largest))
            for crop, mat in zip(row, mats, strict=True)
        ]
        for row, shot in zip(crops, shots, strict=True)
    ]
    found = [
        Laid(shot, mat, crops[shot][mat], per_inch(crops[shot][mat], shots[shot].size, mats[mat]))
        for shot, mat in enumerate(assigned(costs))
        if mat is not None
    ]
    return tuple(sorted(found, key=lambda each: each.mat))


def _cost(crop: Crop, resolution: Fraction, share_of_largest: Fraction) -> int:
    lost = ATTENTION * (1 - crop.kept) + AREA * float(crop.lost)
    missing = max(0.0, 1 - float(resolution) / COARSE)
    return round(_WHOLE * (lost + TOO_COARSE * missing - LARGE_MAT * float(share_of_largest)))
