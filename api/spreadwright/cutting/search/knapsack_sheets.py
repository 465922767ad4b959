"""Several sheets with limited copies of pieces: plans sheet by sheet, and an upper bound from all of them together.

What a piece weighs is taken from its value, so that sheets do not grab what others need more; with these scores every
sheet is settled by itself, which bounds the whole (the decomposition of Dantzig and Wolfe) and proposes plans. A set of
plans is mended sheet by sheet with what the other sheets leave.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random

from spreadwright.cutting.search import knapsack_bound as bounds
from spreadwright.cutting.search import speed
from spreadwright.cutting.search.kinds import Size
from spreadwright.cutting.search.knapsack_bound import Table, Weighing, Weights
from spreadwright.cutting.search.knapsack_grid import Grid, grid
from spreadwright.cutting.search.knapsack_insertion import found as found_plan
from spreadwright.cutting.search.knapsack_insertion import inserted
from spreadwright.cutting.search.knapsack_items import Case, Effort, Listener, Stop, Yield, single
from spreadwright.cutting.search.knapsack_rounds import FEW_LENGTHS, Found, frame, good_plan
from spreadwright.cutting.search.knapsack_single import knapsack, one_sheet
from spreadwright.cutting.search.trees import rest

PART = Effort(blocks=200_000, rounds=0, weighings=12)
"""What one sheet is worth trying while there are others."""


@dataclass
class Sheets:
    """What is known of all sheets so far; one plan a sheet."""

    case: Case
    grids: dict[Size, Grid]
    is_over: Stop
    on_better: Listener | None
    effort: Effort
    bound: int
    plans: list[Found] = field(default_factory=list)

    @property
    def value(self) -> int:
        """Of the best plans."""
        return sum(plan.value for plan in self.plans)

    def keep(self, plans: list[Found]) -> bool:
        """Takes better plans; whether they are better."""
        is_better = sum(plan.value for plan in plans) > self.value
        if is_better:
            self.plans = plans
            self.tell()
        return is_better

    def lower(self, bound: int) -> None:
        """Takes a better bound."""
        if bound < self.bound:
            self.bound = max(bound, self.value)
            self.tell()

    def tell(self) -> None:
        """Says what is known."""
        if self.on_better:
            self.on_better(self.value, self.bound)

    def stops(self) -> bool:
        """Whether it is settled or time is over."""
        return self.value >= self.bound or self.is_over()


def several_sheets(case: Case, is_over: Stop, on_better: Listener | None, effort: Effort, seed: int) -> Yield:
    """The most value from all sheets, as far as it is found."""
    grids = {sheet: grid(sheet, case.sides()) for sheet in dict.fromkeys(case.sheets)}
    sheets = Sheets(case, grids, is_over, on_better, effort, case.total)
    if case.items and case.sheets:
        _settle(sheets, seed)
    trees = [plan.tree for plan in sheets.plans] or [rest(*sheet) for sheet in case.sheets]
    return Yield(sheets.value, sheets.bound, tuple(case.restored(tree) for tree in trees))


def _settle(sheets: Sheets, seed: int) -> None:
    weights = bounds.no_weights(sheets.case, list(sheets.grids.values()))
    sheets.keep(inserted(sheets.case, sheets.is_over, seed))
    if sheets.stops():
        return
    _fill(sheets, weights.scores(sheets.case))
    tables = _relaxed(sheets, weights)
    if tables is None:
        return
    weighing = Weighing(sheets.case, lambda w: _relaxed(sheets, w), tables)
    _weigh(sheets, weighing, sheets.effort.weighings)
    if sheets.stops():
        return
    start = _apart(sheets, weighing.tables[0].weights)
    if start:
        exact = Weighing(sheets.case, lambda w: _apart(sheets, w), start)
        _weigh(sheets, exact, sheets.effort.weighings)
        _vary(sheets, exact.tables[0].weights, seed)


def _weigh(sheets: Sheets, weighing: Weighing, rounds: int) -> None:
    """Corrects the weights, and fills the sheets with each."""
    tables = weighing.tables
    for _ in range(rounds):
        sheets.lower(bounds.bound_of(sheets.case, tables))
        _fill(sheets, tables[0].weights.scores(sheets.case))
        following = None if sheets.stops() else weighing.step(tables, sheets.value)
        if following is None:
            return
        tables = following


def _relaxed(sheets: Sheets, weights: Weights) -> list[Table] | None:
    """Tables of unlimited copies, one a sheet."""
    found = {}
    for size, its_grid in sheets.grids.items():
        table = bounds.table(sheets.case, its_grid, weights, sheets.is_over)
        if table is None:
            return None
        found[size] = table
    return [found[sheet] for sheet in sheets.case.sheets]


def _apart(sheets: Sheets, weights: Weights) -> list[Table] | None:
    """The same with limited copies, each sheet settled by itself; the plans are tried as the first of all."""
    found: dict[Size, Table] = {}
    scores = weights.scores(sheets.case)
    for size in sheets.grids:
        alone = knapsack(single(sheets.case, size, scores, sheets.case.counts), sheets.is_over, PART)
        one_sheet(alone, 0)
        if sheets.is_over():
            return None
        used = sheets.case.used(alone.tree or rest(*size))
        found[size] = Table(weights, speed.ints([alone.bound]), used)
        _fill(sheets, scores, found_plan(sheets.case, alone.tree or rest(*size)))
    return [found[sheet] for sheet in sheets.case.sheets]


def _fill(sheets: Sheets, scores: Sequence[int], first: Found | None = None) -> None:
    """Plans one sheet after the other with the same scores, and mends them if they come near the best."""
    plans = []
    left = list(sheets.case.counts)
    for size in sheets.case.sheets:
        fits = (
            first is not None and first.tree.size == size and all(n >= m for n, m in zip(left, first.used, strict=True))
        )
        plan = first if fits else _filled(sheets, size, scores, left)
        if plan is None:
            return
        plans.append(plan)
        left = [n - m for n, m in zip(left, plan.used, strict=True)]
    is_first = sheets.bound == sheets.case.total
    sheets.keep(plans)
    if not is_first and sum(plan.value for plan in plans) * 100 >= sheets.value * 98:
        _mend(sheets, plans)


def _filled(sheets: Sheets, size: Size, scores: Sequence[int], counts: Sequence[int]) -> Found | None:
    small = single(sheets.case, size, [item.value for item in sheets.case.items], counts)
    most = FEW_LENGTHS if sheets.bound == sheets.case.total else 1024
    return good_plan(small, frame(small, sheets.grids[size], most), scores, small.counts, sheets.is_over)


def _mend(sheets: Sheets, plans: list[Found]) -> None:
    """Settles each sheet anew with what the others leave, as long as that helps."""
    waiting = list(range(len(plans)))
    while waiting and not sheets.stops():
        number = waiting.pop(0)
        better = _renewed(sheets, plans, number)
        if better.value > plans[number].value:
            plans = [*plans[:number], better, *plans[number + 1 :]]
            sheets.keep(plans)
            waiting = [n for n in range(len(plans)) if n != number]


def _renewed(sheets: Sheets, plans: Sequence[Found], number: int) -> Found:
    case, old = sheets.case, plans[number]
    others = [sum(n) for n in zip(*(p.used for k, p in enumerate(plans) if k != number), strict=True)]
    left = [n - m for n, m in zip(case.counts, others or [0] * len(case.items), strict=True)]
    values = [item.value for item in case.items]
    alone = knapsack(single(case, case.sheets[number], values, left), sheets.is_over, PART)
    alone.value, alone.tree = old.value, old.tree
    one_sheet(alone, 0)
    return found_plan(case, alone.tree or old.tree)


def _vary(sheets: Sheets, weights: Weights, seed: int) -> None:
    """Fills with scores that are moved at random by up to a sixth."""
    random = Random(seed)
    base = weights.scores(sheets.case)
    for _ in range(sheets.effort.rounds):
        if sheets.stops():
            return
        _fill(sheets, [score * random.randrange(5000, 7000) // 6000 for score in base])
