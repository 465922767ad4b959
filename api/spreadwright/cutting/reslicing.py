"""The same parts by other cuts: which order of slicing takes fewest turns and ruler settings.

Parts that a tree makes may often be cut out by other trees as well, where a line runs through from side to side both
ways. The number of cuts is the same for all of them, one less than there are parts.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import chain, combinations, pairwise

from spreadwright.cutting.plan import strips
from spreadwright.cutting.search.trees import Block

Placed = tuple[int, int, Block]
"""A leaf with its left and its top edge."""


def handling(tree: Block) -> tuple[int, int, int]:
    """Cuts, turns and ruler settings that a tree takes.

    A part is turned for each split after the first, since rows follow columns and columns rows; of parallel cuts, those
    that make equal parts one after the other need one setting.
    """
    if not tree.parts:
        return 0, 0, 0
    cuts, turns, settings = _handling(tree)
    return cuts, turns - 1, settings


def _handling(tree: Block) -> tuple[int, int, int]:
    if not tree.parts:
        return 0, 0, 0
    parts = strips(tree)
    extents = [part.wide if tree.is_row else part.high for part in parts]
    own = (len(parts) - 1, 1, 1 + sum(a != b for a, b in pairwise(extents[1:])))
    below = [_handling(part) for part in parts]
    return tuple(map(sum, zip(own, *below, strict=True)))  # type: ignore[return-value]


def easiest(tree: Block) -> Block:
    """The tree of the same parts with the least handling that was found.

    Of up to `MOST_LINES` parallel lines that run through, every choice is tried for the next cuts; of more, all.
    Equal parts of a split are put beside one another, a part without an equal first, since what stays on the board
    needs no setting.
    """
    return min(_sliced(tuple(_leaves(tree, 0, 0)), {}), tree, key=handling)


MOST_LINES = 7


def _leaves(tree: Block, left: int, top: int) -> list[Placed]:
    if not tree.parts:
        return [(left, top, tree)]
    found: list[Placed] = []
    for part in tree.parts:
        found += _leaves(part, left, top)
        left, top = (left + part.wide, top) if tree.is_row else (left, top + part.high)
    return found


def _sliced(placed: tuple[Placed, ...], known: dict[tuple[tuple[int, int], ...], Block]) -> Block:
    """The tree of these leaves, which through cuts must be able to make."""
    if len(placed) == 1:
        return placed[0][2]
    name = tuple((x, y) for x, y, _ in placed)
    if name not in known:
        known[name] = _best_of(placed, known)
    return known[name]


def _best_of(placed: tuple[Placed, ...], known: dict[tuple[tuple[int, int], ...], Block]) -> Block:
    wide = max(x + leaf.wide for x, _, leaf in placed) - min(x for x, _, _ in placed)
    high = max(y + leaf.high for _, y, leaf in placed) - min(y for _, y, _ in placed)
    return min(
        (
            Block(wide, high, tuple(_side_by_side([_sliced(group, known) for group in groups], is_row)), is_row)
            for is_row in (True, False)
            for groups in _ways(placed, is_row)
        ),
        key=_handling,
    )


def _ways(placed: Sequence[Placed], is_row: bool) -> Iterator[list[tuple[Placed, ...]]]:
    """How the leaves may be parted by parallel lines that run through one way."""
    groups = _between_lines(placed, is_row)
    if len(groups) == 1:
        return
    yield groups
    if len(groups) - 1 <= MOST_LINES:
        for number in range(1, len(groups) - 1):
            for lines in combinations(range(1, len(groups)), number):
                ends = [0, *lines, len(groups)]
                yield [tuple(chain.from_iterable(groups[a:b])) for a, b in pairwise(ends)]


def _between_lines(placed: Sequence[Placed], is_row: bool) -> list[tuple[Placed, ...]]:
    """The leaves between neighbouring lines that run through one way."""

    def start(leaf: Placed) -> int:
        return leaf[0] if is_row else leaf[1]

    groups: list[list[Placed]] = []
    end = -1
    for leaf in sorted(placed, key=lambda p: (start(p), p[1], p[0])):
        if start(leaf) >= end:
            groups.append([])
        groups[-1].append(leaf)
        end = max(end, start(leaf) + (leaf[2].wide if is_row else leaf[2].high))
    return [tuple(group) for group in groups]


def _side_by_side(parts: Sequence[Block], is_row: bool) -> list[Block]:
    """Equal parts beside one another, one without an equal first, since what stays needs no setting; rests last."""
    extents = [part.wide if is_row else part.high for part in parts]
    counts = Counter(extents)
    first = {extent: n for n, extent in reversed(list(enumerate(extents)))}
    order = sorted(range(len(parts)), key=lambda n: (parts[n].is_rest, counts[extents[n]] > 1, first[extents[n]], n))
    return [parts[n] for n in order]
