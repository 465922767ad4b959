"""What the marks of a ruler make of a recipe: distances that lie between two of them, page by page."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spreadwright.errors import Finding, warning
from spreadwright.lengths import nearest, neighbours, on_scale, told, told_up
from spreadwright.model import Bench, Edge, Placement, Recipe
from spreadwright.words import the_first

_MOST_NAMED = 6
"""Pieces that are named in one finding."""

_FROM = {
    Edge.LEFT: "from the left edge of the page",
    Edge.RIGHT: "from the right edge of the page",
    Edge.CENTRE: "from the middle of the page across",
    Edge.TOP: "from the top edge of the page",
    Edge.BOTTOM: "from the bottom edge of the page",
    Edge.MIDDLE: "from the middle of the page down",
}
_ON = {"page": "the page", "left": "the left page", "right": "the right page"}


@dataclass(frozen=True, slots=True)
class _Distance:
    """One distance of a placement from an edge or the middle of its page."""

    placement: Placement
    edge: Edge
    length: int

    def off(self, mark: int) -> int:
        """How far it lies from the nearest mark, ticks."""
        return abs(nearest(self.length, mark) - self.length)


def ruler_findings(recipe: Recipe, bench: Bench) -> Iterator[Finding]:
    """For each page one finding on all its distances that no mark of the ruler shows."""
    mark = bench.ruler.graduation
    for page in recipe.spread.pages:
        found = [each for each in _distances(recipe, page) if each.off(mark)]
        if found:
            yield _off_ruler(found, page, bench)


def _distances(recipe: Recipe, page: str) -> Iterator[_Distance]:
    for placement in recipe.placements:
        for offset in (placement.across, placement.down):
            if placement.page == page and offset.distance is not None:
                yield _Distance(placement, offset.edge, offset.distance)


def _off_ruler(found: Sequence[_Distance], page: str, bench: Bench) -> Finding:
    """Told by the distance that is furthest off."""
    unit, mark = bench.unit, bench.ruler.graduation
    worst = max(found, key=lambda each: each.off(mark))
    below, above = (on_scale(each, mark, unit) for each in neighbours(worst.length, mark))
    many = f"{len(found)} distances fall" if len(found) > 1 else "one distance falls"
    message = (
        f"On {_ON.get(page, page)} {many} between two marks of the ruler, up to {told_up(worst.off(mark), unit)} "
        f"from the nearest one: “{worst.placement.piece}” should lie {told(worst.length, unit)} {_FROM[worst.edge]}, "
        f"where there are only {below} and {above}.{_others(found, worst)}"
    )
    remedy = (
        f"The steps measure to the nearest marks, here {on_scale(worst.length, mark, unit)}, and no error is carried "
        f"on. To meet every mark, place by multiples of {on_scale(mark, mark, unit)}, or use a ruler with finer marks."
    )
    return warning("off-ruler", f"{worst.placement.where}/{worst.edge}", message, remedy)


def _others(found: Sequence[_Distance], worst: _Distance) -> str:
    others = [each.placement.piece for each in found if each.placement is not worst.placement]
    names = [f"“{name}”" for name in dict.fromkeys(others)]
    return f" Also concerned: {the_first(names, _MOST_NAMED)}." if names else ""
