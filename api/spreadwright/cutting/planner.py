"""From a problem to a plan: bounds first, then sheets in the order of their cost.

1. What no search can mend is refused with its causes.
2. Pieces cut one after the other give a first plan, and so a highest cost.
3. Sets of sheets that cost less are tried, the cheapest first: those of exactly the area by the search without rest,
   the others by cutting one after the other. Where every cheaper set is proved impossible, the plan is optimal.
4. What is left over is gathered into larger rectangles.

Every step counts its work, so a seed always gives the same plan; `is_over` only stops it, as does Ctrl-C.
"""

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import count, islice
from typing import Protocol

from spreadwright.cutting.plan import (
    Certificate,
    Names,
    Plan,
    PlannedSheet,
    Standing,
    content,
    longest_cut,
    narrowest_part,
    rests,
    tidy,
    wanted_kinds,
)
from spreadwright.cutting.problem import Problem, causes
from spreadwright.cutting.search.bounds import fewest_sheets
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.gather import gathered
from spreadwright.cutting.search.insertion import Inserter, Merit, Request
from spreadwright.cutting.search.kinds import Kind, Size, counted
from spreadwright.cutting.search.trees import Block
from spreadwright.errors import Finding, NoPlan, PlanTooLong, error


class Reporter(Protocol):
    """Is told how a search goes on."""

    def bounded(self, paper: str, lower_bound: int) -> None:
        """No plan for this paper costs less."""

    def improved(self, paper: str, cost: int, largest_spare: int) -> None:
        """A better plan: its cost, and the area of its largest spare in square ticks."""

    def searched(self, paper: str, sheets: int, rounds: int) -> None:
        """Another round of the search on so many sheets has begun."""


class Silent:
    """A reporter that keeps everything to itself."""

    def bounded(self, paper: str, lower_bound: int) -> None:
        """Says nothing."""

    def improved(self, paper: str, cost: int, largest_spare: int) -> None:
        """Says nothing."""

    def searched(self, paper: str, sheets: int, rounds: int) -> None:
        """Says nothing."""


@dataclass(frozen=True, slots=True)
class Effort:
    """How long is searched, counted in work and not in time.

    Attributes:
        rounds: Of the search without rest on one set of sheets; each takes about a second.
        changes: Of the order in which pieces are cut one after the other.
        sets: Sets of sheets that are looked at.
    """

    rounds: int = 30
    changes: int = 4000
    sets: int = 60


def plan(
    problem: Problem,
    *,
    seed: int = 1,
    effort: Effort = Effort(),
    is_over: Callable[[], bool] = lambda: False,
    reporter: Reporter | None = None,
) -> Plan:
    """How the pieces are cut from the stock: fewest sheets or least cost, then most value, then largest spares.

    Args:
        seed: The same seed gives the same plan; another may give another one that is as good.
        effort: How long is searched.
        is_over: Asked often; as soon as it says yes the best plan so far is returned.
        reporter: Is told how the search goes on.

    Raises:
        NoPlan: It is proved that there is none.
        PlanTooLong: None was found within the effort.
    """
    found = causes(problem)
    if found:
        raise NoPlan(found)
    parts = [
        (paper, _PaperSearch(problem.of_paper(paper), paper, seed, effort, _Stop(is_over), reporter or Silent()).run())
        for paper in problem.papers
    ]
    order = {id(stock): number for number, stock in enumerate(problem.stock)}
    return Plan(
        sheets=tuple(sheet for _, part in parts for sheet in part.sheets(order)),
        left_out=tuple(name for _, part in parts for name in part.left_out),
        certificates=tuple((paper, part.certificate) for paper, part in parts),
    )


def plans(problem: Problem, wanted: int, *, seed: int = 1, effort: Effort = Effort()) -> tuple[Plan, ...]:
    """Up to so many different plans that are as good as the first in cost and left-out pieces."""
    different: dict[tuple[PlannedSheet, ...], Plan] = {}
    for number in range(3 * wanted):
        made = plan(problem, seed=seed + 1000 * number, effort=effort)
        first = next(iter(different.values()), made)
        if _cost(made) == _cost(first) and len(made.left_out) == len(first.left_out):
            different.setdefault(made.sheets, made)
        if len(different) == wanted:
            break
    return tuple(different.values())


def _cost(made: Plan) -> int:
    return sum(certificate.cost for _, certificate in made.certificates)


class _Stop:
    """Whether to stop: asked for, or interrupted."""

    def __init__(self, is_over: Callable[[], bool]) -> None:
        self._is_over = is_over
        self.was_interrupted = False

    def __call__(self) -> bool:
        return self.was_interrupted or self._is_over()


@dataclass(frozen=True, slots=True)
class _Sheet:
    size: Size
    stock: int
    cost: int


@dataclass(slots=True)
class _Found:
    """The best trees so far, each with its sheet."""

    problem: Problem
    cut: list[tuple[_Sheet, Block]]
    missing: tuple[Kind, ...]
    lost: int
    certificate: Certificate = field(default_factory=lambda: Certificate(Standing.STOPPED, 0, 0, ""))
    left_out: tuple[str, ...] = ()

    @property
    def rank(self) -> tuple[int, int, int, int]:
        """Cost, lost value, largest spare, number of spares: smaller is better."""
        left = [s.area for _, tree in self.cut for s in rests(tree)]
        return self.cost, self.lost, -max(left, default=0), len(left)

    @property
    def cost(self) -> int:
        return sum(sheet.cost for sheet, _ in self.cut)

    def sheets(self, order: dict[int, int]) -> Iterator[PlannedSheet]:
        names = Names(self.problem)
        for sheet, tree in self.cut:
            stock = self.problem.stock[sheet.stock]
            yield PlannedSheet(stock.paper, stock.size, order[id(stock)], content(tree, names), rests(tree))


class _PaperSearch:
    """The search for one paper."""

    def __init__(
        self, problem: Problem, paper: str, seed: int, effort: Effort, stop: _Stop, reporter: Reporter
    ) -> None:
        self.problem, self.paper, self.seed, self.effort = problem, paper, seed, effort
        self.stop, self.reporter = stop, reporter
        self.requests = _requests(problem)
        self.musts = [r for r in self.requests if not r.value]
        self.pieces = counted(Counter(r.kind for r in self.musts))
        self.groups = {r.kind.tag for r in self.requests if r.group >= 0}
        self.bound = 0
        self.proofs: set[tuple[Size, ...]] = set()
        self.best: _Found | None = None

    def run(self) -> _Found:
        try:
            self._search()
        except KeyboardInterrupt:
            self.stop.was_interrupted = True
        if self.best is None:
            if self.proofs and all(_sizes(s) in self.proofs for s in self._sets()):
                raise NoPlan([_no_cuts()])
            raise PlanTooLong("by the clock" if self.stop() else "at its bound")
        self.best.certificate = self._certificate(self.best)
        self.best.left_out = tuple(Names(self.problem).take(k) for k in self.best.missing)
        return self.best

    def _search(self) -> None:
        sets = list(islice(self._sets(), self.effort.sets))
        self.bound = min((sum(s.cost for s in chosen) for chosen in sets), default=0)
        self.reporter.bounded(self.paper, self.bound)
        self._quick()
        for chosen in sets:
            cost = sum(s.cost for s in chosen)
            if self.stop() or (self.best and cost >= self.best.cost):
                break
            self._on(chosen)
            if self.best and self.best.cost <= cost:
                break
            if _sizes(chosen) in self.proofs and cost == self.bound:
                self._raise_bound(sets)
        if self.best and self.best.cut:
            self._polish(self.best)

    def _quick(self) -> None:
        """A first plan: whatever sheets there are, opened one after the other."""
        for order in _openings(self._all_sheets()):
            self._insert(order, len(order), 40, self._accept)

    def _on(self, chosen: tuple[_Sheet, ...]) -> None:
        """Tries to cut everything from just these sheets."""
        area = sum(w * h for w, h in _sizes(chosen))
        if area == self.pieces.area:
            self._without_rest(chosen)
        else:
            self._insert(chosen, len(chosen), self.effort.changes, self._accept)

    def _without_rest(self, chosen: tuple[_Sheet, ...]) -> None:
        found = fit(
            self.pieces,
            _sizes(chosen),
            seed=self.seed,
            most_rounds=self.effort.rounds,
            is_over=self.stop,
            on_round=lambda number: self.reporter.searched(self.paper, len(chosen), number),
        )
        if found.verdict is Verdict.IMPOSSIBLE:
            self.proofs.add(_sizes(chosen))
        if found.verdict is Verdict.FOUND:
            optional = tuple(r.kind for r in self.requests if r.value)
            lost = sum(r.value for r in self.requests)
            self._accept(_Found(self.problem, list(zip(chosen, found.trees, strict=True)), optional, lost))

    def _insert(self, sheets: tuple[_Sheet, ...], most: int, changes: int, accept: Callable[[_Found], None]) -> None:
        if not self.requests:
            accept(_Found(self.problem, [], (), 0))
            return
        limits = self.problem.limits
        inserter = Inserter(
            self.requests, _sizes(sheets), self.seed, longest_cut=limits.longest_cut or 0, narrowest=limits.narrowest
        )
        for packing in inserter.packings(most, changes, self.stop):
            if not packing.merit.left_out:
                cut = [(s, tidy(t)) for s, t in zip(sheets, packing.trees, strict=False)]
                missing = tuple(self.requests[i].kind for i in packing.left_out)
                accept(_Found(self.problem, [(s, t) for s, t in cut if not t.is_rest], missing, packing.merit.lost))
                if self._is_best_possible(packing.merit):
                    return

    def _is_best_possible(self, merit: Merit) -> bool:
        """Everything on as few sheets as the bound allows, and what is left is one rectangle."""
        if self.best is None or self.best.cost > self.bound or merit.lost:
            return False
        return sum(len(rests(tree)) for _, tree in self.best.cut) <= 1

    def _accept(self, found: _Found) -> None:
        if not self._is_allowed(found) or (self.best is not None and self.best.rank <= found.rank):
            return
        self.best = found
        self.reporter.improved(self.paper, found.cost, -found.rank[2])

    def _is_allowed(self, found: _Found) -> bool:
        limits = self.problem.limits
        trees = [tree for _, tree in found.cut]
        if limits.longest_cut is not None and any(longest_cut(t) > limits.longest_cut for t in trees):
            return False
        if any(narrowest_part(t) < limits.narrowest for t in trees):
            return False
        homes: dict[int, int] = {}
        tags = [(leaf.kind.tag, n) for n, t in enumerate(trees) for leaf in t.leaves() if leaf.kind]
        return all(homes.setdefault(tag, number) == number for tag, number in tags if tag in self.groups)

    def _polish(self, best: _Found) -> None:
        """Gathers what is left over, if there is something to gather."""
        areas = [s.area for _, tree in best.cut for s in rests(tree)]
        if len(areas) < 2 or best.missing:
            return
        chosen = tuple(sheet for sheet, _ in best.cut)
        kinds = Counter(leaf.kind for _, tree in best.cut for leaf in tree.leaves() if leaf.kind)
        trees = gathered(counted(kinds), _sizes(chosen), more_than=max(areas), seed=self.seed, is_over=self.stop)
        if trees:
            self._accept(_Found(self.problem, list(zip(chosen, map(tidy, trees), strict=True)), (), best.lost))

    def _raise_bound(self, sets: list[tuple[_Sheet, ...]]) -> None:
        costs = [sum(s.cost for s in chosen) for chosen in sets if _sizes(chosen) not in self.proofs]
        self.bound = max(self.bound, min(costs, default=self.bound))
        self.reporter.bounded(self.paper, self.bound)

    def _all_sheets(self) -> tuple[_Sheet, ...]:
        return tuple(
            _Sheet((s.size.width, s.size.height), number, s.cost)
            for number, s in enumerate(self.problem.stock)
            for _ in range(len(self.requests) if s.count is None else min(s.count, len(self.requests)))
        )

    def _sets(self) -> Iterator[tuple[_Sheet, ...]]:
        """Sets of sheets large enough for all that must be cut, the cheapest first."""
        sheets = self._all_sheets()
        if not self.musts:
            return
        if len({s.size for s in sheets}) == 1:
            yield from self._equal_sets(sorted(sheets, key=lambda s: (s.cost, s.stock)))
            return
        yield from _mixed_sets(self.problem, sheets, self.pieces.area, 4 * self.effort.sets)

    def _equal_sets(self, sheets: list[_Sheet]) -> Iterator[tuple[_Sheet, ...]]:
        pieces = list(zip(self.pieces.kinds, self.pieces.counts, strict=True))
        fewest = fewest_sheets(pieces, *sheets[0].size) if sheets else 0
        for number in count(max(1, fewest)):
            if number > len(sheets):
                return
            yield tuple(sheets[:number])

    def _certificate(self, found: _Found) -> Certificate:
        if found.cost <= self.bound:
            reason = "the cost equals the lower bound"
            return Certificate(Standing.OPTIMAL, found.cost, found.cost, f"Nothing can be saved: {reason}.")
        why = "was interrupted" if self.stop.was_interrupted else "ended"
        return Certificate(Standing.STOPPED, found.cost, self.bound, f"The search {why} before the gap was closed.")


def _requests(problem: Problem) -> list[Request]:
    found = wanted_kinds(problem)
    return [Request(made, group, wanted.value) for wanted, group, made in found for _ in range(wanted.count)]


def _sizes(sheets: tuple[_Sheet, ...]) -> tuple[Size, ...]:
    return tuple(sheet.size for sheet in sheets)


def _openings(sheets: tuple[_Sheet, ...]) -> Iterator[tuple[_Sheet, ...]]:
    """Orders in which sheets may be opened: good value first, small ones first, large ones first."""

    def area(sheet: _Sheet) -> int:
        return sheet.size[0] * sheet.size[1]

    keys: tuple[Callable[[_Sheet], tuple[float, ...]], ...] = (
        lambda s: (s.cost / area(s), -area(s)),
        lambda s: (area(s),),
        lambda s: (-area(s),),
    )
    yield from dict.fromkeys(tuple(sorted(sheets, key=key)) for key in keys)


def _mixed_sets(problem: Problem, sheets: tuple[_Sheet, ...], area: int, most: int) -> Iterator[tuple[_Sheet, ...]]:
    """Sets of sheets of several sizes with at least this area, by cost, then by area."""
    from heapq import heappop, heappush

    by_stock = [[s for s in sheets if s.stock == number] for number in range(len(problem.stock))]
    start = (0,) * len(by_stock)
    heap: list[tuple[int, int, tuple[int, ...]]] = [(0, 0, start)]
    seen = {start}
    for _ in range(50 * most):
        if not heap:
            return
        cost, there, numbers = heappop(heap)
        if there >= area:
            yield tuple(s for group, n in zip(by_stock, numbers, strict=True) for s in group[:n])
        for i, group in enumerate(by_stock):
            if numbers[i] < len(group):
                more = (*numbers[:i], numbers[i] + 1, *numbers[i + 1 :])
                if more not in seen:
                    seen.add(more)
                    w, h = group[0].size
                    heappush(heap, (cost + group[0].cost, there + w * h, more))


def _no_cuts() -> Finding:
    message = "The pieces have exactly the area of the sheets, but no sequence of through cuts makes them."
    return error("no-through-cuts", "/pieces", message, "Change a size, or add a sheet.")
