"""What costs a colourway the most in each part of its score: two papers that meet, or one paper where it is."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from spreadwright.colour.difference import ciede2000
from spreadwright.colour.measure import Look
from spreadwright.colour.parts import Part
from spreadwright.colour.parts.balance import strengths, wanted
from spreadwright.colour.parts.captions import pencil_ratio
from spreadwright.colour.parts.grey import least_ratio
from spreadwright.colour.scene import PAGE, Scene, Surface
from spreadwright.colour.tables import Cast
from spreadwright.model import Choice

LEAST = 0.01
"""A loss that is a smaller share of the part than this is none."""


@dataclass(frozen=True, slots=True)
class Weakness:
    """Where a part loses most.

    Attributes:
        papers: The one or the two that it is about, with the side in sight; None is the bare page.
        loss: Share of the part that is lost there, 0 to 1.
        figure: What was measured: the CIEDE2000 difference (`separation`); the contrast ratio (`grey`, `captions`); how
            much stronger than wanted, -1 to 1 (`balance`); the busyness of the calmer one (`calm`).
        share: Of the paper in sight, 0 to 1 (`balance`).
    """

    papers: tuple[Choice | None, ...]
    loss: float
    figure: float
    share: float = 0.0


def weaknesses(parts: Mapping[str, Part], scene: Scene, cast: Cast, pick: Sequence[int]) -> dict[str, Weakness]:
    """The greatest loss of each part that loses anything; the first of equal ones."""
    seen = _Seen(scene, cast, pick)
    found = {}
    for name, part in parts.items():
        loss, surfaces = max(_losses(part, seen), key=lambda each: each[0])
        if loss >= LEAST:
            papers = tuple(seen.shown(surface) for surface in surfaces)
            found[name] = Weakness(papers, loss, *_FIGURES[name](seen, surfaces))
    return found


def merged_roles(part: Part, cast: Cast, pick: Sequence[int]) -> tuple[tuple[str, str], ...]:
    """The roles, two by two, that nothing tells apart where they meet, by the part `separation`."""
    alike = {
        frozenset((cast.roles.index(one.role), cast.roles.index(other.role)))
        for (one, other), share in part.meetings.items()
        if PAGE not in (one, other)
        and one.role != other.role
        and share >= LEAST
        and part.matrix[cast.look_number(one, pick), cast.look_number(other, pick)] == 0
    }
    return tuple((cast.roles[first], cast.roles[second]) for first, second in sorted(map(sorted, alike)))


class _Seen:
    """One colourway as it is seen."""

    def __init__(self, scene: Scene, cast: Cast, pick: Sequence[int]) -> None:
        self.scene, self._cast, self._pick = scene, cast, pick

    def number(self, surface: Surface) -> int:
        """Of the look on a surface."""
        return self._cast.look_number(surface, self._pick)

    def look(self, surface: Surface) -> Look:
        return self._cast.looks[self.number(surface)]

    def shown(self, surface: Surface) -> Choice | None:
        role = self._cast.role_of(surface)
        return None if role is None else self._cast.options[role][self._pick[role]].lying(surface.side)


Surfaces = tuple[Surface, ...]


def _losses(part: Part, seen: _Seen) -> Iterator[tuple[float, Surfaces]]:
    for surface, (share, values) in part.alone.items():
        yield share * (1 - float(values[seen.number(surface)])), (surface,)
    for (one, other), share in part.meetings.items():
        yield share * (1 - float(part.matrix[seen.number(one), seen.number(other)])), (one, other)


def _difference(seen: _Seen, surfaces: Surfaces) -> tuple[float, ...]:
    one, other = (seen.look(surface) for surface in surfaces)
    return (float(ciede2000(one.lab, other.lab)),)


def _contrast(seen: _Seen, surfaces: Surfaces) -> tuple[float, ...]:
    return (float(least_ratio([seen.look(surface) for surface in surfaces])[0, 1]),)


def _busyness(seen: _Seen, surfaces: Surfaces) -> tuple[float, ...]:
    return (min(seen.look(surface).busyness for surface in surfaces),)


def _strength(seen: _Seen, surfaces: Surfaces) -> tuple[float, ...]:
    areas = seen.scene.papers
    share = areas[surfaces[0]] / sum(areas.values())
    return float(strengths([seen.look(surfaces[0])])[0]) - wanted(share), share


def _pencil(seen: _Seen, surfaces: Surfaces) -> tuple[float, ...]:
    return (float(np.min(pencil_ratio([seen.look(surfaces[0])]))),)


_FIGURES = {
    "separation": _difference,
    "grey": _contrast,
    "calm": _busyness,
    "balance": _strength,
    "captions": _pencil,
}
