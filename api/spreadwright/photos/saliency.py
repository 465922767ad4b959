"""Where a photograph is worth looking at: a share of attention for every pixel.

A documented simple measure, all of it from the photograph itself:
  1. rare colours: how far a colour lies from all the others, by their shares (Cheng and others, CVPR 2011);
  2. colours that the edge of the photograph does not have: what runs off all sides is ground, not figure
     (the prior of Wei and others, ECCV 2012);
  3. detail: what is in focus has edges, what lies before or behind it has none;
  4. hues that skin has, whatever its shade;
  5. of all that what stands out from its row and from its column: a horizon, a wall or a shore runs through;
  6. the middle more than the edge, for people point cameras at what they mean;
  7. faces, where something has found them, draw most of all.
"""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from spreadwright.photos.faces import FaceSpot

Floats = npt.NDArray[np.float64]

LONGEST = 128
"""The longest side of what is looked at, pixels: more shows no better where the subject is."""

_WEIGHTS = {"rare": 0.30, "unlike_edge": 0.35, "detail": 0.35}
_SKIN = 0.25
"""What hues of skin add."""
_THROUGH = 0.25
"""The quieter part of a row or column that says what runs through it, a share."""
_FACES = 0.6
"""The share of attention that faces draw where there are any."""
_MIDDLE, _SPREAD = 0.6, 0.33
"""How much the middle counts, and the width of what counts as the middle, shares."""
_CELL, _LIKE = 0.07, 0.09
"""In Oklab: the side of the cells in which colours are counted, and how far colours reach that are alike."""
_FRAME = 0.06
"""Width of the edge, share of the shorter side."""
_SHARPER = 1.2


def attention(oklab: Floats, faces: Sequence[FaceSpot] = ()) -> Floats:
    """The share of attention that every pixel draws; all of them add up to 1.

    Args:
        oklab: The photograph, height × width × 3, about `LONGEST` on its longest side.
        faces: That were found in it.
    """
    height, width = oklab.shape[:2]
    blur = max(1.0, min(height, width) / 40)
    smooth = np.stack([_blurred(oklab[..., axis], blur / 2) for axis in range(3)], axis=-1)
    parts = {"rare": _rare(smooth), "unlike_edge": _unlike_edge(smooth), "detail": _detail(oklab[..., 0], blur)}
    seen = sum((weight * _scaled(parts[name]) for name, weight in _WEIGHTS.items()), np.zeros((height, width)))
    seen = seen + _SKIN * _skin(smooth) * _scaled(parts["unlike_edge"])
    seen = _shares(_scaled(_blurred(_standing_out(seen) * _middle(height, width), blur)) ** _SHARPER)
    return (1 - _FACES) * seen + _FACES * _shares(_heads(faces, height, width)) if faces else seen


def _shares(values: Floats) -> Floats:
    total = float(values.sum())
    return values / total if total > 0 else np.full(values.shape, 1 / values.size)


def _heads(faces: Sequence[FaceSpot], height: int, width: int) -> Floats:
    """A smooth hill over each head, higher the larger it is."""
    down, across = ((np.arange(count) + 0.5) / count for count in (height, width))
    hills = np.zeros((height, width))
    for each in faces:
        squares = ((down[:, None] - each.y) / each.height) ** 2 + ((across[None, :] - each.x) / each.width) ** 2
        hills += each.width * _shares(np.maximum(0, 1 - 4 * squares))
    return hills


def _rare(oklab: Floats) -> Floats:
    middles, shares, places = _counted(oklab.reshape(-1, 3))
    apart = np.linalg.norm(middles[:, None, :] - middles[None, :, :], axis=-1)
    return np.asarray((apart @ shares)[places]).reshape(oklab.shape[:2])


def _unlike_edge(oklab: Floats) -> Floats:
    """How little of a colour is found along the edge: the logarithm of its share there."""
    height, width = oklab.shape[:2]
    frame = max(1, round(_FRAME * min(height, width)))
    edge = np.ones((height, width), dtype=bool)
    edge[frame : height - frame, frame : width - frame] = False
    middles, shares, _ = _counted(oklab[edge])
    own, _, places = _counted(oklab.reshape(-1, 3))
    squares = ((own[:, None, :] - middles[None, :, :]) ** 2).sum(axis=-1)
    found = np.exp(-squares / (2 * _LIKE**2)) @ shares
    return np.asarray(-np.log(found + 0.01))[places].reshape(height, width)


def _counted(colours: Floats) -> tuple[Floats, Floats, npt.NDArray[np.intp]]:
    """Cells of colours: their middles, their shares, and the cell of each colour."""
    keys = np.rint(colours / _CELL).astype(np.int64)
    _, places, counts = np.unique(keys, axis=0, return_inverse=True, return_counts=True)
    places = places.reshape(-1)
    sums = [np.bincount(places, weights=colours[:, axis]) for axis in range(3)]
    return np.stack(sums, axis=-1) / counts[:, None], counts / counts.sum(), places


def _detail(lightness: Floats, blur: float) -> Floats:
    down, across = (np.diff(lightness, axis=axis, append=np.take(lightness, [-1], axis)) for axis in (0, 1))
    return np.sqrt(_blurred(np.hypot(down, across), 1.5 * blur))


def _skin(oklab: Floats) -> Floats:
    """From 0 to 1: hue about 50 degrees, some colour but not much, neither black nor white."""
    lightness, a, b = np.moveaxis(oklab, -1, 0)
    hue, chroma = np.degrees(np.arctan2(b, a)), np.hypot(a, b)
    like = np.exp(-(((hue - 50) / 18) ** 2)) * np.exp(-(((chroma - 0.075) / 0.04) ** 2))
    return np.asarray(like * np.clip((lightness - 0.25) / 0.15, 0, 1) * np.clip((0.95 - lightness) / 0.1, 0, 1))


def _standing_out(values: Floats) -> Floats:
    """How far each stands above what runs through its row and its column."""
    row, column = (np.quantile(values, _THROUGH, axis=axis, keepdims=True) for axis in (1, 0))
    return np.maximum(values - np.maximum(row, column), 0)


def _middle(height: int, width: int) -> Floats:
    down, across = (np.linspace(-0.5, 0.5, count) for count in (height, width))
    hill = np.exp(-(down[:, None] ** 2 + across[None, :] ** 2) / (2 * _SPREAD**2))
    return np.asarray(1 - _MIDDLE + _MIDDLE * hill)


def _scaled(values: Floats) -> Floats:
    """From 0 to 1, the lowest and highest hundredth cut off; nought where all are the same."""
    low, high = np.percentile(values, [1, 99])
    return np.clip((values - low) / (high - low), 0, 1) if high - low > 1e-9 else np.zeros_like(values)


def _blurred(values: Floats, sigma: float) -> Floats:
    """Spread by a bell of this width, pixels; what lies beyond an edge is like what lies before it."""
    reach = max(1, round(3 * sigma))
    bell = np.exp(-(np.arange(-reach, reach + 1) ** 2) / (2 * sigma**2))
    bell /= bell.sum()
    for _ in range(2):
        padded = np.pad(values, ((reach, reach), (0, 0)), mode="symmetric" if reach <= len(values) else "edge")
        values = (
            np.stack([padded[step : step + len(values)] * weight for step, weight in enumerate(bell)]).sum(axis=0).T
        )
    return values
