"""Brute force: what through cuts can do, by trying everything. For a handful of pieces only."""

from collections.abc import Sequence
from functools import cache
from itertools import combinations

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
