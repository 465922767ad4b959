"""One sheet with limited copies of pieces: a plan, an upper bound, and how they meet.

Three parts work in turn. Weighted bounds from unlimited copies, each with a plan that keeps to the counts; an exact
search that joins blocks best first; and, where that ends without a proof, further plans with other scores.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from spreadwright.cutting.search import knapsack_bound as bounds
from spreadwright.cutting.search.knapsack_bound import Table, Weighing, Weights
from spreadwright.cutting.search.knapsack_exact import search
from spreadwright.cutting.search.knapsack_grid import Grid, grid
from spreadwright.cutting.search.knapsack_insertion import inserted
from spreadwright.cutting.search.knapsack_items import Case, Effort, Listener, Stop
from spreadwright.cutting.search.knapsack_rounds import FEW_LENGTHS, Frame, frame, good_plan
from spreadwright.cutting.search.trees import Block

MOST_WORK = 4_000_000_000
"""Steps of all dynamic programmes before the exact search."""

MOST_NUMBERS = 16_000_000
"""Whole numbers that the blocks of the exact search take, 128 MB; half as much again while they move."""


@dataclass
class Knapsack:
    """What is known of one sheet so far."""

    case: Case
    grid: Grid
    is_over: Stop
    on_better: Listener | None
    effort: Effort
    frame: Frame
    value: int = 0
    bound: int = 0
    tree: Block | None = None

    @property
    def is_settled(self) -> bool:
        """Whether nothing remains to be found."""
        return self.value >= self.bound

    def keep(self, value: int, tree: Block | None, bound: int) -> None:
        """Takes a better plan or bound, and says so."""
        is_better = value > self.value or bound < self.bound
        if value > self.value:
            self.value, self.tree = value, tree
        self.bound = max(self.value, min(bound, self.bound))
        if is_better and self.on_better:
            self.on_better(self.value, self.bound)

    def stops(self) -> bool:
        """Whether it is settled or time is over."""
        return self.is_settled or self.is_over()


def knapsack(case: Case, is_over: Stop, effort: Effort, on_better: Listener | None = None) -> Knapsack:
    """A sheet of which nothing is known yet."""
    its_grid = grid(case.sheets[0], case.sides())
    return Knapsack(case, its_grid, is_over, on_better, effort, frame(case, its_grid), bound=case.total)


def one_sheet(knapsack: Knapsack, seed: int) -> None:
    """Searches until the value is proven, the effort is spent, or time is over."""
    weights = bounds.no_weights(knapsack.case, [knapsack.grid])
    for plan in inserted(knapsack.case, knapsack.is_over, seed):
        knapsack.keep(plan.value, plan.tree, knapsack.bound)
    make_plan(knapsack, weights.scores(knapsack.case), frame(knapsack.case, knapsack.grid, FEW_LENGTHS))
    first = None if knapsack.stops() else bounds.table(knapsack.case, knapsack.grid, weights, knapsack.is_over)
    if first is None:
        return
    weighing = Weighing(knapsack.case, lambda w: _tables(knapsack, w), [first])
    weigh(knapsack, weighing)
    if not knapsack.stops():
        join_blocks(knapsack, weighing.tables[0])
    if not knapsack.stops():
        vary_scores(knapsack, weighing.tables[0].weights, seed)


def _tables(knapsack: Knapsack, weights: Weights) -> list[Table] | None:
    found = bounds.table(knapsack.case, knapsack.grid, weights, knapsack.is_over)
    return [found] if found else None


def weigh(knapsack: Knapsack, weighing: Weighing) -> None:
    """Corrects the weights, and makes a plan with each."""
    case, tables = knapsack.case, weighing.tables
    rounds = max(4, min(knapsack.effort.weighings, MOST_WORK // (2 * knapsack.grid.work + 1)))
    for _ in range(rounds):
        knapsack.keep(0, None, bounds.bound_of(case, tables))
        make_plan(knapsack, tables[0].weights.scores(case))
        following = None if knapsack.stops() else weighing.step(tables, knapsack.value)
        if following is None:
            return
        tables = following


def make_plan(knapsack: Knapsack, scores: Sequence[int], frame: Frame | None = None) -> None:
    """The plan of these scores, kept if it is better; with fewer cuts if another frame is given."""
    case = knapsack.case
    found = good_plan(case, frame or knapsack.frame, scores, case.counts, knapsack.is_over)
    if found and found.value > knapsack.value:
        knapsack.keep(found.value, found.tree, knapsack.bound)


def join_blocks(knapsack: Knapsack, table: Table) -> None:
    """The exact search with the weights of a table."""
    rest_worth = bounds.rest(knapsack.grid, table.worth, knapsack.is_over)
    if rest_worth is None:
        return
    most = min(knapsack.effort.blocks, MOST_NUMBERS // (14 + knapsack.case.packing.words))
    found = search(knapsack.case, knapsack.grid, table.weights, rest_worth, knapsack.value)
    while not knapsack.stops():
        has_room = found.advance(most)
        tree = found.tree() if found.value > knapsack.value else None
        knapsack.keep(found.value, tree, found.bound)
        if not has_room or found.is_finished:
            return


def vary_scores(knapsack: Knapsack, weights: Weights, seed: int) -> None:
    """Plans with scores that are moved at random by up to a sixth."""
    random = Random(seed)
    base = weights.scores(knapsack.case)
    for _ in range(knapsack.effort.rounds):
        make_plan(knapsack, [score * random.randrange(5000, 7000) // 6000 for score in base])
        if knapsack.stops():
            return
