"""Which papers that meet are told apart, by whom: in colour, in grey, and with each of three deficiencies.

Two surfaces are told apart from `TOLD_APART` CIEDE2000 units between their average colours as they are seen, plus what
a print adds beside a plainer paper (as in `parts.separation`): a pattern is seen by everybody. In grey only the
luminance is left.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from spreadwright.colour.contrast import ratio
from spreadwright.colour.deficiency import Deficiency, matrix_of, seen_with
from spreadwright.colour.measure import Look
from spreadwright.colour.parts.separation import difference
from spreadwright.colour.scene import PHOTO, Meeting, Scene, Surface
from spreadwright.colour.spaces import LUMINANCE, Floats, lab, luminance

TOLD_APART = 7.0
"""CIEDE2000 units; of two papers that lie in each other's shadow the eye finds the edge from about there."""


class Sight(StrEnum):
    """How a page is seen: as it is, as a print without colour, or without one kind of cone."""

    COLOUR = "colour"
    GREY = "grey"
    PROTAN = Deficiency.PROTAN.value
    DEUTAN = Deficiency.DEUTAN.value
    TRITAN = Deficiency.TRITAN.value


@dataclass(frozen=True, slots=True)
class Meet:
    """Two surfaces that meet, as they are seen.

    Attributes:
        difference: Of their colours, CIEDE2000 units, with what a print adds.
        contrast: Of their luminances, 1 to 21, as WCAG 2.2 defines it.
    """

    surfaces: Meeting
    difference: float
    contrast: float

    @property
    def is_told_apart(self) -> bool:
        """Whether the eye finds where the one ends."""
        return self.difference >= TOLD_APART


def in_sight(sight: Sight, linear_rgb: Floats) -> Floats:
    """Linear sRGB as it is seen, linear sRGB again; shape (..., 3)."""
    if sight is Sight.COLOUR:
        return linear_rgb
    if sight is Sight.GREY:
        return np.repeat(luminance(linear_rgb)[..., None], 3, axis=-1)
    return seen_with(Deficiency(sight.value), linear_rgb)


def sight_matrix(sight: Sight) -> Floats:
    """What `in_sight` does to linear sRGB before it is clipped, shape (3, 3): each row gives one channel."""
    if sight is Sight.COLOUR:
        return np.eye(3)
    return np.tile(LUMINANCE, (3, 1)) if sight is Sight.GREY else matrix_of(Deficiency(sight.value))


def lost(looks: Sequence[Look], sight: Sight) -> NDArray[np.bool_]:
    """Which of these looks are not told apart where they meet, shape (looks, looks); equal ones are the same."""
    colours = lab(in_sight(sight, np.array([each.average for each in looks])))
    marks = np.column_stack((colours, [each.busyness for each in looks]))
    same = np.array([[one == other for other in looks] for one in looks])
    found: NDArray[np.bool_] = (difference(marks[:, None], marks[None, :]) < TOLD_APART) & ~same
    return found


def meeting_lengths(scene: Scene) -> dict[Meeting, int]:
    """Ticks along which surfaces of paper, or of the bare page, meet or face each other, the longest first."""
    lengths: dict[Meeting, int] = {}
    for meeting, length in (*scene.edges.items(), *scene.facing.items()):
        if PHOTO not in meeting:
            lengths[meeting] = lengths.get(meeting, 0) + length
    return dict(sorted(lengths.items(), key=lambda each: (-each[1], each[0])))


def meets(scene: Scene, looks: Mapping[Surface, Look], sight: Sight) -> tuple[Meet, ...]:
    """Every two different looks that meet or face each other, those that meet longest first.

    Args:
        scene: What is seen of a layout's papers.
        looks: Of every surface in sight, the bare page too where it is.
        sight: How it is seen.
    """
    found = meeting_lengths(scene)
    return tuple(_meet(each, looks, sight) for each in found if looks[each[0]] != looks[each[1]])


def _meet(meeting: Meeting, looks: Mapping[Surface, Look], sight: Sight) -> Meet:
    one, other = (looks[surface] for surface in meeting)
    colours = in_sight(sight, np.array([one.average, other.average]))
    apart = difference(*np.column_stack((lab(colours), [one.busyness, other.busyness])))
    return Meet(meeting, float(apart), float(ratio(*luminance(colours))))
