"""Brute force: what through cuts can do, by trying everything. For a handful of pieces only."""

from collections.abc import Sequence
from functools import cache
from itertools import combinations, product

Size = tuple[int, int]


def fills(pieces: Sequence[Size], width: int, height: int, *, may_turn: bool) -> bool:
    """Whether these pieces, all of them, fill the rectangle without rest."""
    return _fills(tuple(sorted(pieces)), width, height, may_turn)


@cache
def _fills(pieces: tuple[Size, ...], width: int, height: int, may_turn: bool) -> bool:
    if sum(w * h for w, h in pieces) != width * height:
        return False
    if len(pieces) == 1:
        return pieces[0] == (width, height) or (may_turn and pieces[0] == (height, width))
    for some, others in _halves(pieces):
        area = sum(w * h for w, h in some)
        if area % height == 0:
            x = area // height
            if _fills(some, x, height, may_turn) and _fills(others, width - x, height, may_turn):
                return True
        if area % width == 0:
            y = area // width
            if _fills(some, width, y, may_turn) and _fills(others, width, height - y, may_turn):
                return True
    return False


def packs(pieces: Sequence[Size], width: int, height: int, *, may_turn: bool) -> bool:
    """Whether the rectangle yields these pieces, with any rest."""
    return _packs(tuple(sorted(pieces)), width, height, may_turn)


@cache
def _packs(pieces: tuple[Size, ...], width: int, height: int, may_turn: bool) -> bool:
    if sum(w * h for w, h in pieces) > width * height:
        return False
    if not pieces:
        return True
    if len(pieces) == 1:
        w, h = pieces[0]
        return (w <= width and h <= height) or (may_turn and h <= width and w <= height)
    for some, others in _halves(pieces):
        if any(
            _packs(some, x, height, may_turn) and _packs(others, width - x, height, may_turn) for x in range(1, width)
        ):
            return True
        if any(
            _packs(some, width, y, may_turn) and _packs(others, width, height - y, may_turn) for y in range(1, height)
        ):
            return True
    return False


@cache
def packs_within(
    pieces: tuple[Size, ...], width: int, height: int, may_turn: bool, longest: int, narrowest: int
) -> bool:
    """Whether cuts no longer than one length yield these pieces, with any rest, and no part narrower than another."""
    if sum(w * h for w, h in pieces) > width * height or min(width, height) < narrowest:
        return False
    whole = {(width, height), (height, width)} if may_turn else {(width, height)}
    if not pieces or (len(pieces) == 1 and pieces[0] in whole):
        return True

    def part(some: tuple[Size, ...], wide: int, high: int) -> bool:
        return packs_within(some, wide, high, may_turn, longest, narrowest)

    for some, others in {*_halves(pieces), (pieces, ()), ((), pieces)}:
        across = range(1, width) if height <= longest else ()
        if any(part(some, x, height) and part(others, width - x, height) for x in across):
            return True
        down = range(1, height) if width <= longest else ()
        if any(part(some, width, y) and part(others, width, height - y) for y in down):
            return True
    return False


def fewest(pieces: Sequence[Size], width: int, height: int, *, may_turn: bool) -> int:
    """The least number of sheets for these pieces, each of which fits on one."""
    return _fewest(tuple(sorted(pieces)), width, height, may_turn)


@cache
def _fewest(pieces: tuple[Size, ...], width: int, height: int, may_turn: bool) -> int:
    if not pieces:
        return 0
    if _packs(pieces, width, height, may_turn):
        return 1
    return min(
        1 + _fewest(others, width, height, may_turn)
        for some, others in _halves(pieces)
        if _packs(some, width, height, may_turn)
    )


def _halves(pieces: tuple[Size, ...]) -> set[tuple[tuple[Size, ...], tuple[Size, ...]]]:
    found = set()
    for n in range(1, len(pieces)):
        for chosen in combinations(range(len(pieces)), n):
            some = tuple(pieces[i] for i in chosen)
            found.add((some, tuple(pieces[i] for i in range(len(pieces)) if i not in chosen)))
    return found


Stock = tuple[int, int, int]
"""Width, height and cost of one sheet."""


def least_cost(
    pieces: Sequence[Size], stock: Sequence[Stock], *, may_turn: bool, together: Sequence[int] = ()
) -> int | None:
    """What the sheets cost from which all pieces can be cut, at least; None where all of them do not give them.

    Args:
        together: For each piece the number of its group, which comes from one sheet; -1 for none.
    """
    groups = tuple(together) or (-1,) * len(pieces)
    return min((_price(homes, stock) for homes in _homes(pieces, stock, groups, may_turn)), default=None)


def _homes(
    pieces: Sequence[Size], stock: Sequence[Stock], groups: Sequence[int], may_turn: bool
) -> list[tuple[int, ...]]:
    """The sheet of each piece, in every way that works."""
    found = []
    for homes in product(range(len(stock)), repeat=len(pieces)):
        if any(a == b >= 0 and homes[i] != homes[j] for i, a in enumerate(groups) for j, b in enumerate(groups)):
            continue
        shares = [[p for p, home in zip(pieces, homes, strict=True) if home == n] for n in range(len(stock))]
        if all(packs(share, w, h, may_turn=may_turn) for share, (w, h, _) in zip(shares, stock, strict=True)):
            found.append(homes)
    return found


def _price(homes: Sequence[int], stock: Sequence[Stock]) -> int:
    return sum(stock[n][2] for n in set(homes))


def most_value(
    musts: Sequence[Size], optional: Sequence[tuple[Size, int]], stock: Sequence[Stock], cost: int, *, may_turn: bool
) -> int:
    """The most value of optional pieces that sheets of exactly this cost give beside all that must be cut."""
    best = 0
    for number in range(len(optional) + 1):
        for some in combinations(optional, number):
            value = sum(v for _, v in some)
            pieces = [*musts, *(size for size, _ in some)]
            if value > best and any(
                _price(h, stock) <= cost for h in _homes(pieces, stock, (-1,) * len(pieces), may_turn)
            ):
                best = value
    return best
