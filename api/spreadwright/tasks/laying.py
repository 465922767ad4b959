"""The steps with the ruler, where they are worked out quickly enough for a check."""

from collections import Counter
from collections.abc import Sequence

from spreadwright.model import Bench, Recipe
from spreadwright.placing import PlacedPiece, PlaceStep, place_steps

MOST_LAID = 40
"""Pieces on one page: finding the easiest moves among more takes longer than a check may."""


def places(recipe: Recipe, placed: Sequence[PlacedPiece], bench: Bench) -> tuple[PlaceStep, ...]:
    """The steps, or none for pages with very many pieces."""
    most = max(Counter(each.page for each in placed).values(), default=0)
    return place_steps(recipe, placed, bench) if most <= MOST_LAID else ()
