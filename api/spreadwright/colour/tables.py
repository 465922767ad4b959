"""The score of every colourway of a set, as small tables: one for each role, and one for each two roles that meet.

Whole millionths of a point, so that sums are exact: however a colourway is found, it has the same score.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from spreadwright.colour.measure import Look
from spreadwright.colour.parts import FORMULAS, Part
from spreadwright.colour.scene import PAGE, Scene, Surface
from spreadwright.colour.spaces import Floats
from spreadwright.images.srgb import encoded_of, linear
from spreadwright.model import BLANK, Choice, Face

POINT = 1_000_000
"""What a point of the score is counted in."""

Whole = NDArray[np.int64]
Picks = NDArray[np.int64]
"""Colourways as the numbers of their options, shape (colourways, roles)."""


@dataclass(frozen=True)
class Tables:
    """Sums that give a value for any pick of one option a role.

    Attributes:
        alone: For each role the value of each of its options.
        between: For two roles, by their numbers, the value of each option of the one with each of the other.
        constant: What no pick changes.
    """

    alone: tuple[Whole, ...]
    between: Mapping[tuple[int, int], Whole]
    constant: int = 0

    def values(self, picks: Picks) -> Whole:
        """The value of each pick."""
        found: Whole = np.full(len(picks), self.constant, np.int64)
        for role, column in enumerate(self.alone):
            found += column[picks[:, role]]
        for (one, other), table in self.between.items():
            found += table[picks[:, one], picks[:, other]]
        return found


@dataclass(frozen=True)
class Cast:
    """Who may play what: the options of every role, and how each of them looks on every surface.

    Attributes:
        roles: In the order of the recipe.
        looks: Every different look, that of the bare page last.
        shown: For each surface the look of each option of its role, by number.
    """

    roles: tuple[str, ...]
    options: tuple[tuple[Choice, ...], ...]
    looks: tuple[Look, ...]
    shown: Mapping[Surface, NDArray[np.intp]]

    def role_of(self, surface: Surface) -> int | None:
        """The number of the role whose paper shows; None for the bare page."""
        return None if surface == PAGE else self.roles.index(surface.role)

    def look_number(self, surface: Surface, pick: Sequence[int]) -> int:
        """The number of the look on a surface where each role plays the option of this number."""
        role = self.role_of(surface)
        return int(self.shown[surface][0 if role is None else pick[role]])


def cast_of(
    surfaces: Iterable[Surface], options: Mapping[str, Sequence[Choice]], look_of: Callable[[Face], Look]
) -> Cast:
    """Looks at every face that may show; `options` in the order of the recipe's roles."""
    seen = [surface for surface in sorted(set(surfaces)) if surface.role in options]
    faces = {surface: [choice.shown(surface.side) for choice in options[surface.role]] for surface in seen}
    number: dict[Face, int] = {}
    for face in (face for surface in seen for face in faces[surface]):
        number.setdefault(face, len(number))
    shown = {surface: np.array([number[face] for face in faces[surface]], np.intp) for surface in seen}
    shown[PAGE] = np.array([len(number)], np.intp)
    looks = (*(look_of(face) for face in number), _BARE)
    return Cast(tuple(options), tuple(tuple(each) for each in options.values()), looks, shown)


def _bare() -> Look:
    red, green, blue = linear(encoded_of(BLANK.colours[0])).tolist()
    return Look((red, green, blue), 0.0)


_BARE = _bare()


def judged(scene: Scene, looks: Sequence[Look]) -> dict[str, Part]:
    """Every part by which a recipe can be judged."""
    found = {name: formula(scene, looks) for name, formula in FORMULAS.items()}
    return {name: part for name, part in found.items() if not part.is_empty}


def part_tables(part: Part, cast: Cast) -> Tables:
    """One part in points, 100 for a value of 1."""
    sums = Sums(cast)
    for surface, (share, values) in part.alone.items():
        sums.add_alone(surface, points(share * values[cast.shown[surface]]))
    for (one, other), share in part.meetings.items():
        if cast.role_of(one) == cast.role_of(other) or PAGE in (one, other):
            values = part.matrix[cast.shown[one], cast.shown[other]]
            sums.add_alone(one if other == PAGE else other, points(share * values))
        else:
            values = part.matrix[np.ix_(cast.shown[one], cast.shown[other])]
            sums.add_between(one, other, points(share * values))
    return sums.tables()


def weighted_sum(cast: Cast, tables: Sequence[tuple[Tables, float]]) -> Tables:
    """The sum of tables for the roles of a cast, each times its weight."""
    between: dict[tuple[int, int], Whole] = {}
    for each, weight in tables:
        for meeting, values in each.between.items():
            _add(between, meeting, _rounded(values * weight))
    alone = [np.zeros(len(options), np.int64) for options in cast.options]
    for each, weight in tables:
        for column, values in zip(alone, each.alone, strict=True):
            column += _rounded(values * weight)
    return Tables(
        tuple(alone), dict(sorted(between.items())), sum(round(each.constant * weight) for each, weight in tables)
    )


def points(values: Floats) -> Whole:
    """Values of a part, 0 to 1, in points."""
    return _rounded(values * (100 * POINT))


def _add(between: dict[tuple[int, int], Whole], meeting: tuple[int, int], values: Whole) -> None:
    between[meeting] = between[meeting] + values if meeting in between else values


def _rounded(values: NDArray[np.floating[Any]]) -> Whole:
    found: Whole = np.rint(values).astype(np.int64)
    return found


class Sums:
    """Tables that are being added up, by the surfaces on which options show."""

    def __init__(self, cast: Cast) -> None:
        self._cast = cast
        self._alone = [np.zeros(len(options), np.int64) for options in cast.options]
        self._between: dict[tuple[int, int], Whole] = {}
        self._constant = 0

    def add_alone(self, surface: Surface, values: Whole) -> None:
        """The value of each option of the role there."""
        role = self._cast.role_of(surface)
        if role is None:
            self._constant += int(values[0])
        else:
            self._alone[role] += values

    def add_between(self, one: Surface, other: Surface, values: Whole) -> None:
        """The value of each option of the one role with each of the other."""
        first, second = self._cast.role_of(one), self._cast.role_of(other)
        assert first is not None and second is not None  # the bare page is nobody's
        if first > second:
            first, second, values = second, first, values.T
        _add(self._between, (first, second), values)

    def tables(self) -> Tables:
        """The sums so far."""
        return Tables(tuple(self._alone), self._between, self._constant)
