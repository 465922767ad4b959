"""Rests gathered into one or two large rectangles, by cutting them like pieces.

A plan with some rest is one without any if the rest is thought of as pieces. So sizes are proposed whose areas add
up to the rest, the largest single rectangle first, and the search without rest decides which of them go.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.kinds import Kind, Size, Stock, common_step, counted, kind
from spreadwright.cutting.search.trees import Block

Proposal = tuple[Kind, ...]

REST = -1
"""The tag of a rest that is cut like a piece."""

MOST_PROPOSALS = 14


def gathered(
    pieces: Stock, sheets: Sequence[Size], *, more_than: int, seed: int, is_over: Callable[[], bool]
) -> tuple[Block, ...]:
    """Trees of all sheets with a rest larger than `more_than`, or none.

    Args:
        pieces: All pieces.
        more_than: Area of the largest rest that is known already.
    """
    spare = sum(w * h for w, h in sheets) - pieces.area
    step = common_step([*sheets, *((k.wide, k.high) for k in pieces.kinds)])
    width, height = (max(side) // step for side in zip(*sheets, strict=True))
    proposals = sorted(set(_proposals(spare // step**2, width, height)), key=_rank)
    worth = [p for p in proposals if p[0].area * step**2 > more_than][:MOST_PROPOSALS]
    for proposal in worth:
        if is_over():
            break
        rests = [replace(k, wide=k.wide * step, high=k.high * step) for k in proposal]
        counts = Counter(dict(zip(pieces.kinds, pieces.counts, strict=True)))
        counts.update(rests)
        found = fit(counted(counts), sheets, seed=seed, most_rounds=1, is_over=is_over)
        if found.verdict is Verdict.FOUND:
            return tuple(_opened(tree) for tree in found.trees)
    return ()


def _rank(proposal: Proposal) -> tuple[int, int, int]:
    return -proposal[0].area, -proposal[0].high, len(proposal)


def _proposals(area: int, width: int, height: int) -> Iterator[Proposal]:
    """One rectangle of the whole area, or a large one and one for what is left."""
    for whole in _rectangles(area, width, height):
        yield (whole,)
    for side, across in ((width, height), (height, width)):
        depth = min(area // side, across)
        for less in range(min(depth, 3)):
            left = area - side * (depth - less)
            for other in list(_rectangles(left, width, height))[:3]:
                yield kind(side, depth - less, tag=REST), other


def _rectangles(area: int, width: int, height: int) -> Iterator[Kind]:
    """Rectangles of this area that fit, the longest first."""
    for long in range(max(width, height), 0, -1):
        if area and area % long == 0 and long >= area // long and area // long <= min(width, height):
            yield kind(long, area // long, tag=REST)


def _opened(block: Block) -> Block:
    """The tree with the leaves that stood for rests taken as rests."""
    if block.kind is not None and block.kind.tag == REST:
        return Block(block.wide, block.high)
    return Block(block.wide, block.high, tuple(_opened(p) for p in block.parts), block.is_row, block.kind)
