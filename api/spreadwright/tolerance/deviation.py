"""How far a length may be off: a sum of things that go wrong by chance, each no further than its bound.

A cut lies up to the trimmer's accuracy from its reading, to either side; call that its error. Every side of a piece is
off by a known shift (what rounding to a mark does) and by a sum of such errors, each taken a whole number of times. The
worst case is all of them at once. The root-sum-square is how independent errors add up (JCGM 100:2008, 5.1.2); an
accuracy says no more than a bound, so each error is taken as equally likely anywhere within it, with a standard
deviation of its bound over the root of three (4.3.7).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, isqrt, sqrt

Count = int | Fraction
"""How often something counts; halves come from centring."""


@dataclass(frozen=True, slots=True, order=True)
class Source:
    """One thing that goes wrong by chance.

    Attributes:
        kind: What it is: a cut, a reading of the ruler.
        number: Which of its kind.
        bound: How far it may be off, to either side, ticks.
    """

    kind: str
    number: int
    bound: int


@dataclass(frozen=True, slots=True)
class Deviation:
    """By how much a length differs from what the recipe says, ticks.

    Attributes:
        shift: What is known of it: everybody with this bench gets that much more.
        terms: What is not: each source with how often it counts, in order and never nothing.
    """

    shift: Count = 0
    terms: tuple[tuple[Source, Count], ...] = ()

    @staticmethod
    def of(source: Source, shift: int = 0) -> "Deviation":
        """The deviation of a length that is measured once."""
        return Deviation(shift, ((source, 1),))

    @property
    def times(self) -> Mapping[Source, Count]:
        """How often each source counts."""
        return dict(self.terms)

    @property
    def worst(self) -> int:
        """The furthest that it can be off, ticks, rounded up: every error at its bound and all the same way."""
        return ceil(self._bounds + self._known)

    @property
    def highest(self) -> int:
        """The most by which the length can be too long, ticks; negative when it is too short in any case."""
        return ceil(self._bounds + self.shift)

    @property
    def typical(self) -> int:
        """Shift and root-sum-square of the bounds, ticks, rounded up: about nine makers in ten stay within it."""
        return min(self.worst, ceil(self._known) + _root_up(self._squares))

    @property
    def standard(self) -> float:
        """The combined standard uncertainty, ticks (JCGM 100:2008, 5.1.2 with 4.3.7); the shift is no part of it."""
        return sqrt(self._squares / 3)

    @property
    def expanded(self) -> int:
        """Shift and expanded uncertainty for a coverage factor of 2, ticks, rounded up; never beyond the worst case."""
        return min(self.worst, ceil(self._known) + _root_up(self._squares * 4 / 3))

    @property
    def halved(self) -> "Deviation":
        """Half of it."""
        return Deviation(Fraction(self.shift, 2), tuple((source, Fraction(times, 2)) for source, times in self.terms))

    @property
    def _known(self) -> Fraction:
        return abs(Fraction(self.shift))

    @property
    def _bounds(self) -> Fraction:
        return sum((abs(Fraction(times)) * source.bound for source, times in self.terms), Fraction())

    @property
    def _squares(self) -> Fraction:
        return sum(((Fraction(times) * source.bound) ** 2 for source, times in self.terms), Fraction())

    def __add__(self, other: "Deviation") -> "Deviation":
        return _collected(self.shift + other.shift, (*self.terms, *other.terms))

    def __neg__(self) -> "Deviation":
        return Deviation(-self.shift, tuple((source, -times) for source, times in self.terms))

    def __sub__(self, other: "Deviation") -> "Deviation":
        return self + -other


EXACT = Deviation()
"""Nothing can go wrong: what the factory cut, or what nobody measured."""


def total(deviations: Iterable[Deviation]) -> Deviation:
    """The deviation of lengths laid end to end."""
    return sum(deviations, EXACT)


def _collected(shift: Count, terms: Iterable[tuple[Source, Count]]) -> Deviation:
    times: dict[Source, Count] = {}
    for source, count in terms:
        times[source] = times.get(source, 0) + count
    return Deviation(shift, tuple(sorted((source, count) for source, count in times.items() if count)))


def _root_up(square: Fraction) -> int:
    """The least whole number whose square is not smaller."""
    least = isqrt(int(square))
    return least if least * least == square else least + 1
