"""Getting the compiled loops ready, so that no search loses its time to the compiler."""

from functools import cache

from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.insertion import Inserter, Request
from spreadwright.cutting.search.kinds import kind, stock
from spreadwright.cutting.search.knapsack import Item, most_valuable
from spreadwright.cutting.search.knapsack_exact import empty_pool, enlarged
from spreadwright.cutting.search.ruin import Ruiner
from spreadwright.cutting.search.unlimited import most_value


@cache
def prepare() -> None:
    """Runs every loop once on a small problem; kept on disk already, they take a fraction of a second."""
    halves = [kind(3, 6)] * 4
    for seed in (1, 2):
        fit(stock(halves), [(6, 6)] * 2, seed=seed, most_rounds=1)
    odd = [kind(4, 7), kind(3, 5), kind(6, 5), kind(2, 9), kind(7, 4), kind(5, 6), kind(1, 1)]
    area = sum(piece.area for piece in odd)
    fit(stock(odd), [(area, 1)], most_rounds=1)
    for _ in Inserter([Request(piece) for piece in odd], [(12, 12)] * 2, 1).packings(2, 3, lambda: False):
        pass
    next(Ruiner([Request(piece) for piece in odd], [(12, 12)] * 2).filled(0, 1, lambda: False))
    most_value([(kind(3, 5), 1)], 12, 12)
    most_valuable([Item(piece, 2, piece.area) for piece in odd[:6]], [(17, 11)])
    enlarged(empty_pool(1, 1, 0), 2, 1)
