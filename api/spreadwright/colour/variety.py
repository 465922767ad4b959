"""Choosing a few of many so that they differ: each further one is as far as can be from the nearest one chosen so far.

The first is given. The least distance within such a choice is at least half of what any choice with it can have
(T. F. Gonzalez, Theoretical Computer Science 38, 293-306, 1985).
"""

from collections.abc import Callable

import numpy as np

from spreadwright.colour.spaces import Floats

_SAME = 1e-9


def varied(count: int, wanted: int, distances: Callable[[int], Floats]) -> list[int]:
    """The numbers of the chosen ones, in order; fewer than wanted where nothing differs any more.

    Args:
        count: How many there are, the best one first; it is always chosen.
        wanted: How many to choose.
        distances: From one of them to all, by its number. Of equally far ones the better one is chosen.
    """
    if not count or not wanted:
        return []
    chosen, nearest = [0], distances(0)
    while len(chosen) < min(wanted, count):
        farthest = int(np.argmax(nearest))
        if nearest[farthest] <= _SAME:
            break
        chosen.append(farthest)
        nearest = np.minimum(nearest, distances(farthest))
    return sorted(chosen)
