"""Faces that look at the camera, found where the extra of that name is installed; without it, none are.

Scikit-image's cascade of local binary patterns (S. Liao and others, 2007), with the frontal faces that it comes with.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from importlib.util import find_spec
from typing import Any

import numpy as np
import numpy.typing as npt

LONGEST = 400
"""The longest side of what faces are looked for in, pixels."""

_SMALLEST, _LARGEST = 0.07, 0.95
"""Sides of a face: the smallest as a share of the longest side of the picture, the largest of its shortest."""
_LEAST_PIXELS, _WITNESSES = 24, 6
"""The side below which no face can be told, and how many findings of the same face make sure of it."""
_MOST = 24


@dataclass(frozen=True, slots=True)
class FaceSpot:
    """A face: its middle and its height with hair and chin, shares of the picture's width and height."""

    x: float
    y: float
    width: float
    height: float


def can_find_faces() -> bool:
    """Whether the extra is installed."""
    return find_spec("skimage") is not None


def faces(pixels: npt.NDArray[np.uint8]) -> tuple[FaceSpot, ...]:
    """The faces in a picture about `LONGEST` on its longest side, from the left; none without the extra."""
    height, width = pixels.shape[:2]
    smallest = max(_LEAST_PIXELS, round(_SMALLEST * max(height, width)))
    largest = int(_LARGEST * min(height, width))
    if not can_find_faces() or largest <= smallest:
        return ()
    grey = pixels @ np.array([0.299, 0.587, 0.114]) / 255
    found = _cascade().detect_multi_scale(
        img=np.ascontiguousarray(grey),
        scale_factor=1.2,
        step_ratio=1,
        min_size=(smallest, smallest),
        max_size=(largest, largest),
        min_neighbor_number=_WITNESSES,
    )
    return _spots(sorted(found, key=lambda box: (box["c"], box["r"], box["width"]))[:_MOST], width, height)


def _spots(boxes: Sequence[dict[str, Any]], width: int, height: int) -> tuple[FaceSpot, ...]:
    """From brow and chin to the whole head: the cascade's box leaves the hair away."""
    return tuple(
        FaceSpot(
            x=(box["c"] + box["width"] / 2) / width,
            y=(box["r"] + 0.42 * box["height"]) / height,
            width=box["width"] / width,
            height=1.35 * box["height"] / height,
        )
        for box in boxes
    )


@cache
def _cascade() -> Any:
    feature, data = import_module("skimage.feature"), import_module("skimage.data")
    return feature.Cascade(data.lbp_frontal_face_cascade_filename())
