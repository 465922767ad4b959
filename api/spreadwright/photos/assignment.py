"""Who goes where at the least total cost: the method of Kuhn and Munkres, by shortest augmenting paths with potentials.

J. Munkres, J. SIAM 5(1), 32-38, 1957; in the form of R. Jonker and A. Volgenant, Computing 38, 325-340, 1987.
"""

from collections.abc import Sequence

Costs = Sequence[Sequence[int]]
_NONE = -1


def assigned(costs: Costs) -> tuple[int | None, ...]:
    """For each row the column that it gets, so that the costs add up to the least; as many as there are of the fewer.

    Args:
        costs: Rows of whole numbers, which may be negative; all rows are of the same length.

    Returns:
        No column comes twice; None for a row that gets none.

    >>> assigned([[4, 1], [2, 0], [9, 9]])
    (1, 0, None)
    """
    if not costs or not costs[0]:
        return (None,) * len(costs)
    if len(costs) > len(costs[0]):
        columns = assigned(list(zip(*costs, strict=True)))
        rows = {row: column for column, row in enumerate(columns)}
        return tuple(rows.get(row) for row in range(len(costs)))
    return _rows_assigned(costs)


def _rows_assigned(costs: Costs) -> tuple[int | None, ...]:
    """Every row gets a column: there are at least as many columns."""
    wide = len(costs[0])
    of_row, of_column = [0] * len(costs), [0] * wide
    owner = [_NONE] * wide
    for row in range(len(costs)):
        end, before = _path(row, costs, of_row, of_column, owner)
        while end != _NONE:  # each row on the path moves to the next column
            previous = before[end]
            owner[end] = row if previous == _NONE else owner[previous]
            end = previous
    found: list[int | None] = [None] * len(costs)
    for column, row in enumerate(owner):
        if row != _NONE:
            found[row] = column
    return tuple(found)


def _path(row: int, costs: Costs, of_row: list[int], of_column: list[int], owner: list[int]) -> tuple[int, list[int]]:
    """The free column that is cheapest to reach from a row, and the column before each; the potentials follow."""
    wide = len(costs[0])
    distance: list[int | None] = [None] * wide
    before, done = [_NONE] * wide, [False] * wide
    here, via, walked = row, _NONE, 0
    while True:
        for column in range(wide):
            step = walked + costs[here][column] - of_row[here] - of_column[column]
            known = distance[column]
            if not done[column] and (known is None or step < known):
                distance[column], before[column] = step, via
        walked, via = min(
            (known, column) for column, known in enumerate(distance) if known is not None and not done[column]
        )
        done[via] = True
        if owner[via] == _NONE:
            break
        here = owner[via]
    of_row[row] += walked
    for column in range(wide):
        known = distance[column]
        if done[column] and known is not None and column != via:
            of_row[owner[column]] += walked - known
            of_column[column] -= walked - known
    return via, before
