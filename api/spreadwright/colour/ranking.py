"""The colourways of a recipe, best first, and different from one another.

What counts is written in `parts`. `search` finds the best `POOL`; those within `MARGIN` points of the best one are the
pool from which `varied` chooses, or `TIMES` as many as are wanted where these are more.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from spreadwright.colour.parts.separation import difference, marks
from spreadwright.colour.search import Found, best
from spreadwright.colour.spaces import Floats
from spreadwright.colour.tables import POINT, Picks
from spreadwright.colour.variety import varied
from spreadwright.colour.worth import Ranked, Worth

POOL, MARGIN, TIMES = 1000, 6.0, 4
"""The most colourways to choose from; how many points they may be behind the best; for how many times as many as are
wanted that does not matter."""


@dataclass(frozen=True, slots=True)
class Ranking:
    """Some colourways, the best one first.

    Attributes:
        pool: How many they were chosen from.
        is_proved: Whether none in any of the sets is better than the first; otherwise the search stopped early.
    """

    colourways: tuple[Ranked, ...]
    pool: int
    is_proved: bool


def ranking(worths: Sequence[Worth], wanted: int) -> Ranking:
    """The best of one recipe in several sets, at most as many as are wanted; fewer where no others look different."""
    found = [best(each.scores, max(POOL, wanted), each.supply) for each in worths]
    pool = _pool(found, wanted)
    sights = np.concatenate([_sights(each, one.picks) for each, one in zip(worths, found, strict=True)])
    behind = np.concatenate(([0], np.cumsum([len(one.picks) for one in found])))
    sights = sights[[behind[place] + number for place, number in pool]]
    weights = _weights(worths[0])

    def distances(one: int) -> Floats:
        return difference(sights[one], sights) @ weights

    chosen = [pool[number] for number in varied(len(pool), wanted, distances)]
    ranked = tuple(worths[place].ranked(found[place].picks[number].tolist()) for place, number in chosen)
    return Ranking(ranked, len(pool), all(one.is_proved for one in found))


def _pool(found: Sequence[Found], wanted: int) -> list[tuple[int, int]]:
    """The best of all as numbers of set and pick; ties go to the set that comes first."""
    entries = [
        (-value, place, number) for place, one in enumerate(found) for number, value in enumerate(one.values.tolist())
    ]
    entries = sorted(entries)[: max(POOL, wanted)]
    least = -entries[0][0] - MARGIN * POINT if entries else 0
    return [entry[1:] for number, entry in enumerate(entries) if number < TIMES * wanted or -entry[0] >= least]


def _weights(worth: Worth) -> Floats:
    """How much each surface counts when colourways are compared: by the square root of its area in sight."""
    roots = np.sqrt(list(worth.scene.papers.values()))
    weights: Floats = roots / roots.sum()
    return weights


def _sights(worth: Worth, picks: Picks) -> Floats:
    """What is seen of each pick: the marks of each surface, shape (picks, surfaces, 4)."""
    looks = marks(worth.cast.looks)
    numbers: NDArray[np.intp] = np.stack(
        [worth.cast.shown[surface][picks[:, worth.cast.roles.index(surface.role)]] for surface in worth.scene.papers],
        axis=1,
    )
    return looks[numbers]
