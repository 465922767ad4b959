"""The few colours that a photograph is made of, with their shares.

1. The pixels are counted in small cells of Oklab, whose distances are close to what people see.
2. Cells are joined two by two, the pair first whose joining costs least (J. H. Ward, 1963); shares count by their root,
   so that a small but vivid spot, a red coat in a green field, is not lost in its surroundings.
3. The colours that are left move to the middle of what is nearest to them (S. P. Lloyd, 1957, published 1982).
4. A hue that none of them shows, the green of a cat's eyes, joins them as an accent if there is enough of it.
5. Each is shown as a colour that the photograph has: the mean of the pixels that are most typical of it.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from spreadwright.colour.spaces import Floats, lab, oklab
from spreadwright.images.srgb import encoded, hex_of, linear

MOST, MOST_ACCENTS = 6, 2
"""Colours of a palette, as many as an eye takes in at once, and the hues that may join them."""

_CELL = 0.035
"""Side of a cell: just above what is noticed."""
_MOST_CELLS = 400
_ALIKE = 0.055
"""Colours nearer than this are one."""
_SMALLEST = 0.004
"""Share of the pixels below which a colour is chance."""
_UNLIKE, _ACCENT_REACH = 0.055, 0.05
"""How far from every colour, lightness aside, an accent is, and how far its own pixels are from its middle."""
_LEAST_ACCENT = 0.004
"""Share of the pixels that makes an accent."""
_ROUNDS = 12


@dataclass(frozen=True, slots=True)
class Tone:
    """One colour of a palette.

    Attributes:
        hex: As ``#rrggbb``.
        share: Of the photograph's area, 0 to 1.
        lab: CIELAB, D65.
    """

    hex: str
    share: float
    lab: tuple[float, float, float]


@dataclass(frozen=True, slots=True, eq=False)
class Tally:
    """Colours with their shares, which add up to 1; linear sRGB and Oklab."""

    linear: Floats
    oklab: Floats
    shares: Floats


def tally(pixels: npt.NDArray[np.uint8]) -> Tally:
    """The colours of a picture, shape (..., 3), counted: those that differ by less than 8 steps a channel as one."""
    flat = pixels.reshape(-1, 3)
    coarse = (flat >> 3).astype(np.int64)
    keys, places = np.unique((coarse[:, 0] << 10) | (coarse[:, 1] << 5) | coarse[:, 2], return_inverse=True)
    counts = np.bincount(places, minlength=len(keys)).astype(float)
    sums = [np.bincount(places, weights=flat[:, channel], minlength=len(keys)) for channel in range(3)]
    light = linear(np.stack(sums, axis=-1) / counts[:, None] / 255)
    return Tally(light, oklab(light), counts / counts.sum())


def together(tallies: Sequence[Tally]) -> Tally:
    """The colours of several pictures, each picture counting as much as the next."""
    shares = [each.shares / len(tallies) for each in tallies]
    return Tally(
        np.concatenate([each.linear for each in tallies]),
        np.concatenate([each.oklab for each in tallies]),
        np.concatenate(shares),
    )


def palette(counted: Tally, most: int = MOST) -> tuple[Tone, ...]:
    """The colours of a photograph, the largest share first: at most so many, and two accents."""
    middles = _settled(counted, _joined(*_cells(counted), most))
    for _ in range(MOST_ACCENTS):
        accent = _accent(counted, middles)
        if accent is None:
            break
        middles = np.vstack([middles, accent])
    nearest = _nearest(counted.oklab, middles)
    shares = np.bincount(nearest, weights=counted.shares, minlength=len(middles))
    typical = [_typical(counted, nearest == number, middles[number]) for number in range(len(middles))]
    tones = [_tone(colour, share) for colour, share in zip(typical, shares, strict=True) if share > 0]
    return tuple(sorted(tones, key=lambda tone: (-round(tone.share, 6), tone.hex)))


def _settled(counted: Tally, middles: Floats) -> Floats:
    for _ in range(_ROUNDS):
        nearest = _nearest(counted.oklab, middles)
        moved = _means(counted.oklab, counted.shares, nearest, len(middles))
        if np.allclose(moved, middles, atol=1e-5):
            break
        middles = moved
    return middles


def _accent(counted: Tally, middles: Floats) -> Floats | None:
    """The middle of what is most of a hue that no colour shows, if it is enough."""
    hues, shown = counted.oklab[:, 1:], middles[:, 1:]
    apart = np.sqrt(((hues[:, None, :] - shown[None, :, :]) ** 2).sum(axis=-1)).min(axis=1)
    rest = np.flatnonzero(apart > _UNLIKE)
    if not len(rest) or counted.shares[rest].sum() < _LEAST_ACCENT:
        return None
    rest = rest[np.argsort(-counted.shares[rest], kind="stable")][:_MOST_CELLS]
    near = np.linalg.norm(hues[rest][:, None, :] - hues[rest][None, :, :], axis=-1) < _ACCENT_REACH
    weights = near @ (counted.shares[rest] * apart[rest])
    mine = rest[near[int(np.argmax(weights))]]
    if counted.shares[mine].sum() < _LEAST_ACCENT:
        return None
    found: Floats = np.average(counted.oklab[mine], axis=0, weights=counted.shares[mine] * apart[mine])
    return found


def _cells(counted: Tally) -> tuple[Floats, Floats]:
    """The middles and shares of the cells that hold anything; larger cells where there are very many."""
    side = _CELL
    while True:
        keys = np.rint(counted.oklab / side).astype(np.int64)
        _, places = np.unique(keys, axis=0, return_inverse=True)
        count = int(places.max()) + 1
        if count <= _MOST_CELLS:
            shares: Floats = np.bincount(places, weights=counted.shares, minlength=count).astype(float)
            return _means(counted.oklab, counted.shares, places, count), shares
        side *= 1.3


def _joined(middles: Floats, shares: Floats, most: int) -> Floats:
    """Cells joined until no more than `most` are left, no two alike and none by chance."""
    costs = _costs(middles, shares, middles, shares)
    np.fill_diagonal(costs, np.inf)
    left = len(shares)
    while left > 1:
        one, other = divmod(int(np.argmin(costs)), len(shares))
        apart = float(np.linalg.norm(middles[one] - middles[other]))
        smallest = float(shares[shares > 0].min())
        if left <= most and apart >= _ALIKE and smallest >= _SMALLEST:
            break
        if left <= most and apart >= _ALIKE:
            one = int(np.argmin(np.where(shares > 0, shares, np.inf)))
            other = int(np.argmin(costs[one]))
        _join(one, other, middles, shares, costs)
        left -= 1
    return middles[shares > 0]


def _join(one: int, other: int, middles: Floats, shares: Floats, costs: Floats) -> None:
    total = shares[one] + shares[other]
    middles[one] = (middles[one] * shares[one] + middles[other] * shares[other]) / total
    shares[one], shares[other] = total, 0
    costs[other, :] = costs[:, other] = np.inf
    row = _costs(middles[one : one + 1], shares[one : one + 1], middles, shares)[0]
    row[(shares == 0)] = np.inf
    row[one] = np.inf
    costs[one, :] = costs[:, one] = row


def _costs(one: Floats, one_shares: Floats, other: Floats, other_shares: Floats) -> Floats:
    """What joining costs: the square of the distance, times the root of the shares' common weight."""
    squares = ((one[:, None, :] - other[None, :, :]) ** 2).sum(axis=-1)
    both = one_shares[:, None] + other_shares[None, :]
    weights = np.divide(one_shares[:, None] * other_shares[None, :], both, out=np.zeros_like(both), where=both > 0)
    found: Floats = squares * np.sqrt(weights)
    return found


def _nearest(colours: Floats, middles: Floats) -> npt.NDArray[np.intp]:
    squares = ((colours[:, None, :] - middles[None, :, :]) ** 2).sum(axis=-1)
    return np.asarray(np.argmin(squares, axis=1))


def _means(values: Floats, shares: Floats, places: npt.NDArray[np.intp], count: int) -> Floats:
    weights = np.bincount(places, weights=shares, minlength=count)
    sums = np.stack([np.bincount(places, weights=values[:, axis] * shares, minlength=count) for axis in range(3)], -1)
    found: Floats = sums / np.maximum(weights, 1e-12)[:, None]
    return found


def _typical(counted: Tally, mine: npt.NDArray[np.bool_], middle: Floats) -> Floats:
    """The mean light of the nearer half of what belongs to a colour."""
    if not mine.any():
        return np.zeros(3)
    light, shares = counted.linear[mine], counted.shares[mine]
    distances = np.linalg.norm(counted.oklab[mine] - middle, axis=1)
    order = np.argsort(distances, kind="stable")
    half = int(np.searchsorted(np.cumsum(shares[order]), shares.sum() / 2)) + 1
    kept = order[:half]
    found: Floats = np.average(light[kept], axis=0, weights=shares[kept])
    return found


def _tone(light: Floats, share: float) -> Tone:
    first, second, third = (float(each) for each in lab(light))
    return Tone(hex_of(encoded(light)), float(share), (first, second, third))
