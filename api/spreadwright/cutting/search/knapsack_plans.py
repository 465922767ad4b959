"""One good plan for every rectangle of reachable sides: dynamic programming that keeps counts within what there is.

Each cell keeps one plan alone, so the last cell need not hold the best; other scores of the same pieces lead to other
plans.
"""

from typing import NamedTuple

from spreadwright.cutting.search.speed import Ints, compiled


class Plans(NamedTuple):
    """Plans, one number a cell in each column.

    Attributes:
        score: What decides between plans; `worth`: the true value.
        first: The cell of the first part; -1 for a single piece, -2 for nothing.
        second: Twice the cell of the other part, and one if they lie side by side; the way a single piece lies.
        count: Pieces, packed; as many numbers a cell as there are words.
    """

    score: Ints
    worth: Ints
    first: Ints
    second: Ints
    count: Ints


class Lengths(NamedTuple):
    """The sides of cells, and the pieces there are: guard bits of packed counts, and all, packed."""

    across: Ints
    down: Ints
    guard: Ints
    total: Ints


@compiled
def copy_plan(plans: Plans, cell: int, source: int, words: int) -> None:
    """The plan of a smaller cell is a plan of this one."""
    if plans.score[source] <= plans.score[cell]:
        return
    plans.score[cell], plans.worth[cell] = plans.score[source], plans.worth[source]
    plans.first[cell], plans.second[cell] = plans.first[source], plans.second[source]
    for k in range(words):
        plans.count[cell * words + k] = plans.count[source * words + k]


@compiled
def join_plans(plans: Plans, cell: int, a: int, b: int, is_row: int, lengths: Lengths) -> None:
    """Two plans beside or above each other, if there are pieces enough."""
    words = len(lengths.guard)
    for k in range(words):
        both = plans.count[a * words + k] + plans.count[b * words + k]
        if ((lengths.total[k] | lengths.guard[k]) - both) & lengths.guard[k] != lengths.guard[k]:
            return
    for k in range(words):
        plans.count[cell * words + k] = plans.count[a * words + k] + plans.count[b * words + k]
    plans.score[cell] = plans.score[a] + plans.score[b]
    plans.worth[cell] = plans.worth[a] + plans.worth[b]
    plans.first[cell], plans.second[cell] = a, 2 * b + is_row


@compiled
def middle(sums: Ints, last: int) -> int:
    """Index of the largest sum that is not above half of another."""
    at = last
    while 2 * sums[at] > sums[last]:
        at -= 1
    return at


@compiled
def fill_plans(plans: Plans, i: int, lengths: Lengths) -> None:
    """Plans for one column of cells; the columns before are known. Cuts near the middle come first."""
    across, down, score = lengths.across, lengths.down, plans.score
    rows, words, half = len(down), len(lengths.guard), middle(across, i)
    for j in range(1, rows):
        cell = i * rows + j
        copy_plan(plans, cell, cell - rows, words)
        copy_plan(plans, cell, cell - 1, words)
        other = half
        for a in range(half, 0, -1):
            while other + 1 < i and across[other + 1] + across[a] <= across[i]:
                other += 1
            if score[a * rows + j] + score[other * rows + j] > score[cell]:
                join_plans(plans, cell, a * rows + j, other * rows + j, 1, lengths)
        high = middle(down, j)
        other = high
        for a in range(high, 0, -1):
            while other + 1 < j and down[other + 1] + down[a] <= down[j]:
                other += 1
            if score[i * rows + a] + score[i * rows + other] > score[cell]:
                join_plans(plans, cell, i * rows + a, i * rows + other, 0, lengths)
