"""The most value one sheet can yield when there are any number of copies: dynamic programming over reachable sides.

Cuts need be made only at sums of piece widths and heights (the normal patterns of Herz, and of Christofides and
Whitlock), so a rectangle is worth what the next smaller reachable sides are worth. Beasley 1985, unrestricted stages.
Settles the value exactly, and bounds from above what limited copies can give.
"""

from collections.abc import Sequence

from spreadwright.cutting.search import speed
from spreadwright.cutting.search.kinds import Kind, reachable
from spreadwright.cutting.search.speed import Ints, compiled


def most_value(items: Sequence[tuple[Kind, int]], width: int, height: int) -> int:
    """The most value that through cuts of any number get from one sheet.

    Args:
        items: Kinds of pieces, each with its value.
    """
    ways = [(size, value) for kind, value in items for size in kind.sides()]
    across, down = (_sums([size[i] for size, _ in ways], most) for i, most in ((0, width), (1, height)))
    worth = speed.zeros(len(across) * len(down))
    for (w, h), value in ways:
        if w <= width and h <= height:
            at = across.index(w) * len(down) + down.index(h)
            worth[at] = max(int(worth[at]), value)
    columns, rows = speed.ints(_below(across)), speed.ints(_below(down))
    combine(worth, speed.ints(across), speed.ints(down), columns, rows)
    return int(worth[len(across) * len(down) - 1])


def _sums(sides: list[int], most: int) -> list[int]:
    """Reachable sums up to `most`, nought included."""
    bits = reachable([(side, most) for side in sorted(set(sides))], most)
    return [n for n in range(most + 1) if bits >> n & 1]


def _below(sums: list[int]) -> list[int]:
    """For every length the index of the largest reachable sum not above it."""
    found, at = [], 0
    for length in range(sums[-1] + 1):
        at += at + 1 < len(sums) and sums[at + 1] <= length
        found.append(at)
    return found


@compiled
def combine(worth: Ints, across: Ints, down: Ints, column: Ints, row: Ints) -> None:
    """Raises every rectangle to the best of: a smaller one, itself, and two parts of a cut up to its middle."""
    rows = len(down)
    for i in range(1, len(across)):
        for j in range(1, rows):
            best = max(worth[i * rows + j], worth[(i - 1) * rows + j], worth[i * rows + j - 1])
            a = 1
            while a < i and 2 * across[a] <= across[i]:
                other = column[across[i] - across[a]]
                best = max(best, worth[a * rows + j] + worth[other * rows + j])
                a += 1
            a = 1
            while a < j and 2 * down[a] <= down[j]:
                other = row[down[j] - down[a]]
                best = max(best, worth[i * rows + a] + worth[i * rows + other])
                a += 1
            worth[i * rows + j] = best
