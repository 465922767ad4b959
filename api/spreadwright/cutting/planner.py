"""From a problem to a plan: what cannot be mended is refused with its causes, then each paper is searched by itself."""

from collections.abc import Callable

from spreadwright.cutting.paper_search import Effort, PaperSearch, Stop
from spreadwright.cutting.plan import Certificate, Names, Plan, PlannedSheet
from spreadwright.cutting.problem import Problem, causes
from spreadwright.cutting.reporter import Reporter, Silent
from spreadwright.errors import NoPlan, PlanTooLong

__all__ = ["Effort", "Reporter", "plan", "plans"]

USUAL = Effort()
TRIES_A_PLAN = 3


def plan(
    problem: Problem,
    *,
    seed: int = 1,
    effort: Effort = USUAL,
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
    order = {id(stock): number for number, stock in enumerate(problem.stock)}
    sheets: list[PlannedSheet] = []
    left_out: list[str] = []
    certificates: list[tuple[str, Certificate]] = []
    for paper in problem.papers:
        part = problem.of_paper(paper)
        best, certificate = PaperSearch(part, paper, seed, effort, Stop(is_over), reporter or Silent()).run()
        names = Names(part)
        sheets += best.sheets(part, order, names)
        left_out += [names.take(kind) for kind in best.missing]
        certificates.append((paper, certificate))
    return Plan(tuple(sheets), tuple(left_out), tuple(certificates))


def plans(
    problem: Problem,
    wanted: int,
    *,
    seed: int = 1,
    effort: Effort = USUAL,
    is_over: Callable[[], bool] = lambda: False,
    reporter: Reporter | None = None,
) -> tuple[Plan, ...]:
    """Up to so many different plans that cost as little as the first and leave out the same pieces; see `plan`."""
    first = plan(problem, seed=seed, effort=effort, is_over=is_over, reporter=reporter)
    different = {first.sheets: first}
    for number in range(1, TRIES_A_PLAN * wanted):
        if len(different) == wanted or is_over():
            break
        try:
            other = plan(problem, seed=seed + 1000 * number, effort=effort, is_over=is_over)
        except PlanTooLong:
            continue
        if _merit(other) == _merit(first):
            different.setdefault(other.sheets, other)
    return tuple(different.values())


def _merit(made: Plan) -> tuple[object, ...]:
    return sum(c.cost for _, c in made.certificates), sorted(made.left_out)
