"""Pieces that must come from one sheet, where every sheet is used up: sheet by sheet, each with its groups.

A group is put on a sheet by making its pieces worth more than all others; the sheet is then filled with whatever leaves
nothing over, and the other sheets with what is left.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from itertools import islice, permutations, product
from random import Random

from spreadwright.cutting.search import knapsack
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.kinds import Kind, Size, Stock, counted
from spreadwright.cutting.search.trees import Block

MOST_ASSIGNMENTS = 60
TRIES = 4
EFFORT = knapsack.Effort(blocks=60_000, rounds=10, weighings=10)


def grouped(
    pieces: Stock, sheets: Sequence[Size], groups: frozenset[int], *, seed: int, is_over: Callable[[], bool]
) -> tuple[Block, ...]:
    """Trees that use all sheets up with every group on one of them, or none if none were found.

    Args:
        pieces: All pieces, together of the area of the sheets.
        groups: The tags of pieces that stay together.
    """
    rng = Random(f"{seed} together")
    for homes in islice(_assignments(sorted(groups), sheets), MOST_ASSIGNMENTS):
        for _ in range(TRIES):
            if is_over():
                return ()
            trees = _filled(pieces, sheets, homes, rng, is_over)
            if trees:
                return trees
    return ()


def _assignments(groups: Sequence[int], sheets: Sequence[Size]) -> Iterator[dict[int, int]]:
    """A sheet for every group; sheets of one size are interchangeable, and those that spread the groups go first."""
    seen: set[tuple[tuple[Size, frozenset[int]], ...]] = set()
    spread = permutations(range(len(sheets)), len(groups)) if len(groups) <= len(sheets) else iter(())
    for chosen in (*islice(spread, 500), *islice(product(range(len(sheets)), repeat=len(groups)), 5000)):
        homes = dict(zip(groups, chosen, strict=True))
        parties = [(size, frozenset(g for g in groups if homes[g] == n)) for n, size in enumerate(sheets)]
        shape = tuple(sorted(parties, key=_key))
        if shape not in seen:
            seen.add(shape)
            yield homes


def _key(home: tuple[Size, frozenset[int]]) -> tuple[Size, list[int]]:
    return home[0], sorted(home[1])


def _filled(
    pieces: Stock, sheets: Sequence[Size], homes: dict[int, int], rng: Random, is_over: Callable[[], bool]
) -> tuple[Block, ...]:
    """Sheets with groups first, then the others at once."""
    left = Counter(dict(zip(pieces.kinds, pieces.counts, strict=True)))
    trees: dict[int, Block] = {}
    for number in sorted(set(homes.values())):
        here = {group for group, home in homes.items() if home == number}
        tree = _sheet_of(here, homes.keys() - here, left, sheets[number], rng, is_over)
        if tree is None:
            return ()
        trees[number] = tree
        left -= Counter(leaf.kind for leaf in tree.leaves() if leaf.kind)
    others = [n for n in range(len(sheets)) if n not in trees]
    found = fit(counted(left), [sheets[n] for n in others], seed=rng.randrange(1, 1000), most_rounds=2, is_over=is_over)
    if found.verdict is not Verdict.FOUND:
        return ()
    trees |= dict(zip(others, found.trees, strict=True))
    return tuple(trees[n] for n in range(len(sheets)))


def _sheet_of(
    here: set[int],
    elsewhere: set[int],
    left: Counter[Kind],
    sheet: Size,
    rng: Random,
    is_over: Callable[[], bool],
) -> Block | None:
    """One sheet used up by these groups and some pieces of none."""
    area = sheet[0] * sheet[1]
    must = {kind: number for kind, number in left.items() if kind.tag in here}
    if sum(kind.area * number for kind, number in must.items()) > area:
        return None
    scale = 64
    items = [
        knapsack.Item(kind, number, scale * kind.area + (scale * area if kind in must else rng.randrange(scale // 2)))
        for kind, number in left.items()
        if kind.tag not in elsewhere
    ]
    found = knapsack.most_valuable(items, [sheet], is_over=is_over, effort=EFFORT, seed=rng.randrange(1000))
    (tree,) = found.trees
    taken = Counter(leaf.kind for leaf in tree.leaves() if leaf.kind)
    is_full = not any(leaf.is_rest for leaf in tree.leaves())
    return tree if is_full and all(taken[kind] == number for kind, number in must.items()) else None
