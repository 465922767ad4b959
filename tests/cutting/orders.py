"""Every order of the cuts of a sheet, tried out one by one on paper that is told apart, apart from the search.

An order is a sequence of cuts. A cut names a part, and the end of it that falls; the parts are those on the board and
set aside. Cost is counted anew here, from where paper lies and what the scale shows.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from random import Random

from spreadwright.cutting.effort import NARROW, PICK_UP, QUARTER_TURN, SETTING
from spreadwright.cutting.measured import Measured
from spreadwright.model import Axis, Branch, Content, Hand, Leaf, Split, Trimmer, Use
from strategies import EIGHTH


@dataclass(frozen=True)
class Scrap:
    """A row or column that is not cut to its end: what is left of it, from first to last."""

    row: int
    left: tuple[Measured, ...]
    done: int
    end: str
    lies: int

    def key(self) -> tuple[object, ...]:
        return (self.row, self.done, self.end, self.lies)


FALLS = {  # what falls at a right hand, by how the part lies
    (Axis.COLUMNS, 0): "last",
    (Axis.COLUMNS, 2): "first",
    (Axis.ROWS, 1): "last",
    (Axis.ROWS, 3): "first",
}


def least_effort(sheet: Measured, trimmer: Trimmer) -> int:
    """The smallest weighted sum of any order, found by trying all of them."""
    best = [10**9]
    rows = {id(part): part for part in sheet.splits()}

    def whole(part: Measured, lies: int) -> list[Scrap]:
        return [Scrap(id(part), part.children, 0, "", lies)] if part.children else []

    def go(board: Scrap | None, aside: list[Scrap], setting: int, cost: int, seen: dict) -> None:
        if board is None and not aside:
            best[0] = min(best[0], cost)
            return
        state = (board and board.key(), tuple(sorted(each.key() for each in aside)), setting)
        if cost >= best[0] or cost >= seen.get(state, 10**9):
            return
        seen[state] = cost
        for part in [*([board] if board else []), *aside]:
            others = [each for each in aside if each is not part]
            if part is not board and board:
                others.append(board)
            handling = 0 if part is board else PICK_UP
            for lies, end in falls(rows[part.row].axis, trimmer.hand):
                settings = rows[part.row].settings
                if end not in settings or part.end not in ("", end):
                    continue
                reading = settings[end][part.done].reading
                quarters = min((lies - part.lies) % 4, (part.lies - lies) % 4)
                more = handling + QUARTER_TURN * quarters + SETTING * (reading != setting)
                fallen, stays = (part.left[-1], part.left[:-1]) if end == "last" else (part.left[0], part.left[1:])
                sides = [each.rect.width if rows[part.row].axis is Axis.COLUMNS else each.rect.height for each in stays]
                more += NARROW * (sum(sides) < trimmer.shortest)
                kept = [Scrap(part.row, stays, part.done + 1, end, lies)] if len(stays) > 1 else whole(stays[0], lies)
                go(kept[0] if kept else None, others + whole(fallen, lies), reading, cost + more, seen)

    go(whole(sheet, 0)[0], [], -1, 0, {})
    return best[0]


def falls(axis: Axis | None, hand: Hand) -> Iterator[tuple[int, str]]:
    for (along, lies), end in FALLS.items():
        if along is axis:
            yield (lies if hand is Hand.RIGHT else (lies + 2) % 4), end


def random_tree(chance: Random, width: int, height: int, axis: Axis, pieces: int) -> Content:
    """A tree of so many pieces, fewer where a part gets too narrow; sides in eighths of an inch."""
    total = width if axis is Axis.COLUMNS else height
    if pieces == 1 or total < 4:
        return Leaf(Use.PIECE, "part")
    count = min(chance.randint(2, min(pieces, 4)), total - 1)
    extents = [b - a for a, b in pairwise([0, *sorted(chance.sample(range(1, total), count - 1)), total])]
    shares = [1] * count
    for _ in range(pieces - count):
        shares[chance.randrange(count)] += 1
    sides = [(extent, height) if axis is Axis.COLUMNS else (width, extent) for extent in extents]
    parts = [random_tree(chance, *side, axis.other, share) for side, share in zip(sides, shares, strict=True)]
    return Split(axis, tuple(Branch(extent * EIGHTH, part) for extent, part in zip(extents, parts, strict=True)))
