"""Small sets of looks and tables to try things out on."""

import numpy as np

from spreadwright.colour.measure import Look
from spreadwright.colour.tables import Tables
from spreadwright.images.srgb import encoded_of, linear


def looks_like(colour: str, busyness: float = 0.0) -> Look:
    """A look of this average."""
    red, green, blue = linear(encoded_of(colour)).tolist()
    return Look((red, green, blue), busyness)


def random_tables(rng: np.random.Generator, sizes: list[int], most: int) -> Tables:
    """A table for every role and every two roles, values below `most`."""
    alone = tuple(rng.integers(0, most, size) for size in sizes)
    pairs = [(one, other) for one in range(len(sizes)) for other in range(one + 1, len(sizes)) if rng.random() < 0.8]
    return Tables(alone, {(one, other): rng.integers(0, most, (sizes[one], sizes[other])) for one, other in pairs}, 5)


def every_pick(sizes: list[int]) -> np.ndarray:
    """All picks in order."""
    return np.stack([axis.ravel() for axis in np.meshgrid(*map(np.arange, sizes), indexing="ij")], axis=1)
