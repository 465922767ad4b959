"""A first plan for many pieces in little time: the best value for its area first, each where it fits best."""

from collections.abc import Callable, Sequence
from itertools import product
from random import Random

from spreadwright.cutting.search.insertion import RULES, Inserter, Request
from spreadwright.cutting.search.knapsack_items import Case, Item, Stop
from spreadwright.cutting.search.knapsack_rounds import Found
from spreadwright.cutting.search.trees import Block, rest

MOST_PIECES = 3000
"""Pieces that are tried; further ones of the least value for their area are not."""

TRIALS = 30
"""Orders that are tried in which values are moved at random."""

ORDERS: tuple[Callable[[Item], tuple[int, ...]], ...] = (
    lambda item: (-item.value * 1_000_000 // item.kind.area, -item.kind.area),
    lambda item: (-item.value, item.kind.area),
    lambda item: (-item.value * 1_000_000 // (item.kind.wide + item.kind.high), -item.kind.area),
)


def inserted(case: Case, is_over: Stop, seed: int) -> list[Found]:
    """Plans of all sheets, as good as simple orders give them; none if time is over at once."""
    pieces = _pieces(case)
    inserter = Inserter([Request(item.kind) for item in pieces], case.sheets, seed)
    best: tuple[Block, ...] = ()
    everything = sum(item.value for item in pieces)
    most = 0
    for order, (fit, rule) in product(_orders(pieces, seed), RULES):
        if is_over() or most == everything:
            break
        value = everything - sum(pieces[i].value for i in inserter.left_out(order, fit, rule))
        if value > most:
            best, most = inserter.trees(), value
    trees = [*best, *(rest(*sheet) for sheet in case.sheets[len(best) :])]
    return [found(case, tree) for tree in trees]


def found(case: Case, tree: Block) -> Found:
    """The plan that a tree is."""
    used = case.used(tree)
    return Found(sum(n * item.value for n, item in zip(used, case.items, strict=True)), tree, used)


def _pieces(case: Case) -> list[Item]:
    pieces = [item for item in sorted(case.items, key=ORDERS[0]) for _ in range(item.count)]
    return pieces[:MOST_PIECES]


def _orders(pieces: Sequence[Item], seed: int) -> list[list[int]]:
    random = Random(seed)
    orders = [sorted(range(len(pieces)), key=lambda i: key(pieces[i])) for key in ORDERS]
    for _ in range(min(TRIALS, 20_000 // (len(pieces) + 1))):
        merit = [item.value * random.randrange(700, 1300) * 1000 // item.kind.area for item in pieces]
        orders.append(sorted(range(len(pieces)), key=lambda i: -merit[i]))
    return orders
