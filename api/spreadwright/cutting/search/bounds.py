"""Lower bounds on the number of equal sheets: by area, and by dual feasible functions of both sides.

A function f with f(x1) + ... + f(xn) <= 1 whenever x1 + ... + xn <= 1 may stretch sides: pieces that fit together still
do, so the stretched areas give a bound too. The two families are those of Fekete and Schepers, here on whole numbers.
"""

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from spreadwright.cutting.search.kinds import Kind

Stretch = Callable[[int], Fraction]

Counted = Sequence[tuple[Kind, int]]


def fewest_sheets(pieces: Counted, width: int, height: int) -> int:
    """No plan needs fewer sheets of this size than these."""
    by_area = ceiling(Fraction(sum(k.area * n for k, n in pieces), width * height))
    stretched = (stretched_area(pieces, f, g) for f in stretches(width, pieces) for g in stretches(height, pieces))
    return max(by_area, *(ceiling(area) for area in stretched), 0)


def stretched_area(pieces: Counted, f: Stretch, g: Stretch) -> Fraction:
    """The area of all pieces in sheets, with widths stretched by f and heights by g; the better way round of each."""
    return sum((n * min(f(w) * g(h) for w, h in k.sides()) for k, n in pieces), Fraction(0))


def stretches(side: int, pieces: Counted) -> Iterator[Stretch]:
    """Functions worth trying on one side: as it is, lifted at a threshold, and rounded down to parts of k + 1."""
    sides = sorted({x for k, _ in pieces for x in (k.wide, k.high) if 2 * x <= side})
    yield lambda x: Fraction(x, side)
    for least in sides[:: max(1, len(sides) // 12)]:
        yield lifted(side, least)
    yield lifted(side, side // 2)
    for k in (1, 2, 3, 4):
        yield rounded(side, k)


def lifted(side: int, least: int) -> Stretch:
    """Everything longer than side - least counts as a whole side, everything shorter than least as nothing."""

    def stretch(x: int) -> Fraction:
        if x > side - least:
            return Fraction(1)
        return Fraction(0) if x < least else Fraction(x, side)

    return stretch


def rounded(side: int, k: int) -> Stretch:
    """A side in k-ths: the whole number below (k + 1) x, unless it is one already."""

    def stretch(x: int) -> Fraction:
        parts, over = divmod((k + 1) * x, side)
        return Fraction(parts, k) if over else Fraction(x, side)

    return stretch


def ceiling(value: Fraction) -> int:
    """The whole number at or above."""
    return -(-value.numerator // value.denominator)
