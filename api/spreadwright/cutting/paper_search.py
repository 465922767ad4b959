"""The search for one paper: bounds first, then sets of sheets in the order of their cost.

1. Pieces cut one after the other give a first plan, and so a highest cost.
2. Sets of sheets are tried, the cheapest first. The cost of the first that is not proved impossible bounds all plans
   from below; the first that works is the best.
3. Optional pieces are cut where they are worth most, what is left over is gathered, and cuts are made easy.

Every step counts its work, so a seed always gives the same plan; `is_over` only stops it, as does Ctrl-C.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import takewhile

from spreadwright.cutting.candidate import Candidate
from spreadwright.cutting.plan import Certificate, Standing, tidy, wanted_kinds
from spreadwright.cutting.problem import Problem
from spreadwright.cutting.reporter import Reporter
from spreadwright.cutting.search import knapsack
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.gather import gathered
from spreadwright.cutting.search.insertion import Inserter, Request
from spreadwright.cutting.search.kinds import Kind, counted
from spreadwright.cutting.search.ruin import Ruiner
from spreadwright.cutting.search.together import grouped
from spreadwright.cutting.search.trees import Block
from spreadwright.cutting.sheet_sets import SheetSet, SheetSets, cost, openings, sizes, stock_sheets
from spreadwright.errors import Finding, NoPlan, PlanTooLong, error


@dataclass(frozen=True, slots=True)
class Effort:
    """How long is searched, counted in work and not in time.

    Attributes:
        rounds: Of the search without rest on one set of sheets; each takes about a second.
        changes: Of the order in which forty pieces are cut one after the other; fewer of more pieces.
        sets: Sets of sheets that are tried.
        blocks: Of the exact search for what one sheet yields.
    """

    rounds: int = 30
    changes: int = 4000
    sets: int = 60
    blocks: int = 200_000


RESTARTS = 12
"""Of ruin and recreate on one set of sheets: another beginning may find at once what one never would."""

FEW = 20
"""So few pieces are searched exactly at once, which may prove that a set does not do."""

EXACT_AFTER = {3: 20, 9: 1}
"""After which restart the exact search has its turn, and by what its blocks are divided then."""


class Stop:
    """Whether to stop: asked for, or interrupted."""

    def __init__(self, is_over: Callable[[], bool]) -> None:
        self._is_over = is_over
        self.was_interrupted = False

    def __call__(self) -> bool:
        """Asked often, deep inside the search."""
        return self.was_interrupted or self._is_over()


class PaperSearch:
    """The search for one paper; `best` is the best plan so far, `bound` what every plan costs at least."""

    def __init__(self, problem: Problem, paper: str, seed: int, effort: Effort, stop: Stop, reporter: Reporter) -> None:
        self.problem, self.paper, self.seed, self.effort = problem, paper, seed, effort
        self.stop, self.reporter = stop, reporter
        self.requests = _requests(problem)
        self.optional = [r for r in self.requests if r.value]
        self.pieces = counted(Counter(r.kind for r in self.requests if not r.value))
        self.values = {r.kind: r.value for r in self.optional}
        self.groups = {r.kind.tag: r.group for r in self.requests if r.group >= 0}
        self.all_sheets = stock_sheets(problem, len(self.requests))
        self.bound = 0
        self.least_lost = 0
        self.best: Candidate | None = None

    def run(self) -> tuple[Candidate, Certificate]:
        """The best plan, and what is proved about it.

        Raises:
            NoPlan: It is proved that there is none.
            PlanTooLong: None was found.
        """
        try:
            is_impossible = self._search()
        except KeyboardInterrupt:
            self.stop.was_interrupted, is_impossible = True, False
        if self.best is None:
            if is_impossible:
                raise NoPlan([_no_cuts()])
            raise PlanTooLong("by the clock" if self.stop() else "at its bound")
        return self.best, self._certificate(self.best)

    def _search(self) -> bool:
        """Whether it is proved that there is no plan."""
        if not self.pieces.pieces:
            self._optional_only()
            return False
        sets = SheetSets(self.all_sheets, self.pieces)
        is_impossible = self._by_cost(sets)
        if self.best:
            self._add_value(self.best.cost)
            self._gather(self.best)
            self.best = self.best.eased(self.problem.limits)
        return is_impossible

    def _optional_only(self) -> None:
        """Cuts what is worth most from all there is; of stock without end, from what costs nothing."""
        is_limited = all(stock.count is not None for stock in self.problem.stock)
        chosen = tuple(sheet for sheet in self.all_sheets if is_limited or not sheet.cost)
        self.least_lost = self._most_valuable(chosen)
        if self.best is None:
            self._insert(chosen, self.effort.changes)
        if self.best is None:
            self._take((), (), self._kinds_left_out)

    def _by_cost(self, sets: SheetSets) -> bool:
        """Tries sets until one works; whether all there are were proved not to work."""
        is_refuted = True
        for number, chosen in enumerate(sets):
            if is_refuted:
                self._raise_bound(cost(chosen))
            if number == 0:
                self._quick()
                self._descend()
            if self.stop() or number == self.effort.sets or (self.best and self.best.cost <= cost(chosen)):
                return False
            is_refuted = self._is_refuted(chosen) and is_refuted
        if is_refuted and sets.left is not None:
            self._raise_bound(sets.left)
        return is_refuted and sets.left is None

    def _raise_bound(self, to: int) -> None:
        if to > self.bound or (to == 0 and self.best is None):
            self.bound = to
            self.reporter.bounded(self.paper, to)

    def _quick(self) -> None:
        """A first plan: whatever sheets there are, opened one after the other."""
        for order in openings(self.all_sheets):
            self._insert(order, 40)

    def _descend(self) -> None:
        """Leaves sheets of the first plan away, one after the other, as long as the others do."""
        while self.best and not self.stop():
            chosen = tuple(sheet for sheet, _ in self.best.cut)[:-1]
            area = sum(w * h for w, h in sizes(chosen))
            if len(chosen) < 2 or cost(chosen) <= self.bound or area < self.pieces.area:
                return
            self._ruin(chosen)
            if not self._has(chosen):
                return

    def _is_refuted(self, chosen: SheetSet) -> bool:
        """Tries to cut everything from just these sheets; whether it is proved that they do not give it."""
        area = sum(w * h for w, h in sizes(chosen))
        if area == self.pieces.area:
            return self._without_rest(chosen)
        changes = 40 * self.effort.changes // len(self.requests)
        self._insert(chosen, changes // 4)
        is_refuted = self.pieces.pieces <= FEW and self._exactly(chosen, self.effort.blocks // 20)
        for number in range(RESTARTS):
            if is_refuted or self.stop() or self._has(chosen):
                break
            self._ruin(chosen, number)
            if not self._has(chosen):
                self._insert(chosen, changes // 16, number + 1)
            if number in EXACT_AFTER and not self._has(chosen):
                is_refuted = self._exactly(chosen, self.effort.blocks // EXACT_AFTER[number])
        return is_refuted

    def _without_rest(self, chosen: SheetSet) -> bool:
        found = fit(
            self.pieces,
            sizes(chosen),
            seed=self.seed,
            most_rounds=self.effort.rounds,
            is_over=self.stop,
            on_round=lambda number: self.reporter.searched(self.paper, len(chosen), number),
        )
        if found.verdict is Verdict.FOUND:
            self._take(chosen, found.trees, self._kinds_left_out)
            if len(chosen) > 1 and self.groups and not self._has(chosen) and (trees := self._grouped(chosen)):
                self._take(chosen, trees, self._kinds_left_out)
        return found.verdict is Verdict.IMPOSSIBLE

    def _grouped(self, chosen: SheetSet) -> tuple[Block, ...]:
        tags = frozenset(k.tag for k in self.pieces.kinds if k.tag in self.groups)
        return grouped(self.pieces, sizes(chosen), tags, seed=self.seed, is_over=self.stop)

    def _exactly(self, chosen: SheetSet, blocks: int) -> bool:
        """Whether it is proved, with so many blocks at most, that these sheets do not give everything."""
        effort = knapsack.Effort(blocks=blocks)
        return self._one_sheet(chosen, effort) if len(chosen) == 1 else self._several_sheets(chosen, effort)

    def _one_sheet(self, chosen: SheetSet, effort: knapsack.Effort) -> bool:
        """Whether one sheet yields everything, settled within bounds."""
        pairs = list(zip(self.pieces.kinds, self.pieces.counts, strict=True))
        answer = knapsack.all_fit(pairs, *chosen[0].size, is_over=self.stop, effort=effort)
        if answer.tree:
            self._take(chosen, (answer.tree,), self._kinds_left_out)
        return answer.verdict is Verdict.IMPOSSIBLE

    def _several_sheets(self, chosen: SheetSet, effort: knapsack.Effort) -> bool:
        """Whether several sheets together yield less area than the pieces have."""
        items = [knapsack.Item(k, n, k.area) for k, n in zip(self.pieces.kinds, self.pieces.counts, strict=True)]
        found = knapsack.most_valuable(items, sizes(chosen), is_over=self.stop, effort=effort, seed=self.seed)
        if found.value == self.pieces.area:
            self._take(chosen, found.trees, self._kinds_left_out)
        return found.bound < self.pieces.area

    def _has(self, chosen: SheetSet) -> bool:
        return self.best is not None and self.best.cost <= cost(chosen)

    def _insert(self, sheets: SheetSet, changes: int, restart: int = 0) -> None:
        longest, narrowest = self._limits
        inserter = Inserter(self.requests, sizes(sheets), self.seed + restart, longest_cut=longest, narrowest=narrowest)
        for packing in inserter.packings(len(sheets), changes, self.stop):
            if packing.merit.left_out:
                continue
            self._take(sheets, packing.trees, [self.requests[i].kind for i in packing.left_out])
            if self._is_best_possible(packing.merit.lost):
                return

    def _ruin(self, sheets: SheetSet, restart: int = 0, larger_than: int | None = None) -> None:
        longest, narrowest = self._limits
        ruiner = Ruiner(self.requests, sizes(sheets), longest_cut=longest, narrowest=narrowest)
        for found in ruiner.filled(restart, self.seed, self.stop, larger_than=larger_than):
            self._take(sheets, found.trees, [self.requests[i].kind for i in found.left_out])

    @property
    def _limits(self) -> tuple[int, int]:
        return self.problem.limits.longest_cut or 0, self.problem.limits.narrowest

    def _take(self, sheets: SheetSet, trees: Sequence[Block], missing: Sequence[Kind]) -> None:
        """Takes a plan for the best if it is; sheets that nothing is cut from are not counted."""
        cut = ((sheet, tidy(tree)) for sheet, tree in zip(sheets, trees, strict=False))
        lost = sum(self._value_of(kind) for kind in missing)
        self._accept(Candidate(tuple((s, t) for s, t in cut if not t.is_rest), tuple(missing), lost))

    @property
    def _kinds_left_out(self) -> list[Kind]:
        """What a plan leaves out that cuts nothing but what must be cut."""
        return [request.kind for request in self.optional]

    def _is_best_possible(self, lost: int) -> bool:
        """Everything for as little as the bound allows, and what is left is one rectangle."""
        return self.best is not None and self.best.cost <= self.bound and not lost and self.best.is_gathered

    def _accept(self, found: Candidate) -> None:
        if not found.keeps(self.problem.limits, self.groups) or (self.best and self.best.rank <= found.rank):
            return
        self.best = found
        self.reporter.improved(self.paper, found.cost, max(found.rest_areas, default=0))

    def _add_value(self, at: int) -> None:
        """Looks for more valuable optional pieces on every set of sheets of the cost that was found."""
        if not self.optional or self.best is None or not self.best.lost:
            return
        self.least_lost = self.best.lost
        sets = SheetSets(self.all_sheets, self.pieces)
        same = [s for s in takewhile(lambda chosen: cost(chosen) <= at, sets) if cost(s) == at]
        is_complete = len(same) <= self.effort.sets and (sets.left is None or sets.left > at)
        lost = [self._most_valuable(chosen) for chosen in same[: self.effort.sets]]
        self.least_lost = min([self.best.lost, *lost]) if is_complete else 0

    def _most_valuable(self, chosen: SheetSet) -> int:
        """Takes the best plan that is found on these sheets; the value that is lost on them at least."""
        total = sum(r.value for r in self.optional)
        must = total + 1
        items = [
            knapsack.Item(kind, number, self._value_of(kind) or must)
            for kind, number in Counter(r.kind for r in self.requests).items()
        ]
        effort = knapsack.Effort(blocks=self.effort.blocks)
        found = knapsack.most_valuable(items, sizes(chosen), is_over=self.stop, effort=effort, seed=self.seed)
        taken = Counter(leaf.kind for tree in found.trees for leaf in tree.leaves() if leaf.kind)
        missing = Counter(r.kind for r in self.requests) - taken
        if all(self._value_of(kind) for kind in missing):
            self._take(chosen, found.trees, tuple(missing.elements()))
        everything = total + must * self.pieces.pieces
        return max(0, everything - found.bound)

    def _value_of(self, kind: Kind) -> int:
        return self.values.get(kind, 0)

    def _gather(self, best: Candidate) -> None:
        """Gathers what is left over, if there is something to gather; a sheet may even be left whole."""
        if best.is_gathered or best.missing:
            return
        self._ruin(tuple(sheet for sheet, _ in best.cut), larger_than=best.rest_areas[0])
        best = self.best or best
        if best.is_gathered:
            return
        chosen = tuple(sheet for sheet, _ in best.cut)
        kinds = Counter(leaf.kind for _, tree in best.cut for leaf in tree.leaves() if leaf.kind)
        largest = best.rest_areas[0]
        trees = gathered(counted(kinds), sizes(chosen), more_than=largest, seed=self.seed, is_over=self.stop)
        if trees:
            self._take(chosen, trees, ())

    def _certificate(self, found: Candidate) -> Certificate:
        total = sum(r.value for r in self.optional)
        bound = found.cost if not self.pieces.pieces else self.bound
        is_optimal = found.cost <= bound and found.lost <= self.least_lost
        return Certificate(
            standing=Standing.OPTIMAL if is_optimal else Standing.STOPPED,
            cost=found.cost,
            lower_bound=bound,
            reason=self._reason(found.cost <= bound, found.lost <= self.least_lost),
            value=total - found.lost,
            most_value=total - self.least_lost,
            is_gathered=found.is_gathered and not found.missing and self._is_rest_fixed,
        )

    @property
    def _is_rest_fixed(self) -> bool:
        """Whether every plan of one cost that cuts everything leaves the same area over."""
        return len({(sheet.size, sheet.cost) for sheet in self.all_sheets}) == 1 and self.all_sheets[0].cost > 0

    def _reason(self, is_cheapest: bool, is_worth_most: bool) -> str:
        if is_cheapest and is_worth_most:
            return "Nothing can be saved: the cost equals the lower bound."
        why = "was interrupted" if self.stop.was_interrupted else "ended"
        if is_cheapest:
            return f"The cost equals the lower bound; the search for more value {why} before the gap was closed."
        return f"The search {why} before the gap was closed."


def _requests(problem: Problem) -> list[Request]:
    found = wanted_kinds(problem)
    return [Request(made, group, wanted.value) for wanted, group, made in found for _ in range(wanted.count)]


def _no_cuts() -> Finding:
    message = "Sheets of enough area are in stock, but no sequence of through cuts makes the pieces from them."
    return error("no-through-cuts", "/pieces", message, "Change a size, or add a sheet.")
