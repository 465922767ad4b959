"""The verb *plan*: from the pieces wanted, or from a recipe whose sheets are to be cut otherwise, to cut trees.

The search is imported when it is needed, so that the other verbs start without it.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from spreadwright.cutting import CutSheet, cut_sheets, pieces, pile_of
from spreadwright.document import AnyReading, Reading
from spreadwright.errors import InvalidDocument, NoPlan
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Bench, Kind, PieceList, Recipe, Role, Sheet, Spread
from spreadwright.tasks.cut import Cutting, cutting
from spreadwright.tasks.wish import is_recipe, wish_of

if TYPE_CHECKING:
    from spreadwright.cutting.plan import Plan
    from spreadwright.cutting.planner import Effort, Reporter
    from spreadwright.cutting.problem import Problem

ANY_PAPER = "paper"
"""The role of sheets for which nobody named one."""

OBJECTIVE = (
    "the fewest sheets, or the least cost where sheets have costs",
    "the most value of optional pieces",
    "the largest single spare",
    "the fewest spares",
    "the fewest cuts",
    "the fewest turns of what is cut",
    "the fewest settings of the ruler",
)
"""What makes one plan better than another: the first of these in which they differ."""


@dataclass(frozen=True, slots=True)
class Planning:
    """Plans of the same cost, with what was asked.

    Attributes:
        bench: Whose limits hold; None for no limits.
        recipe: The recipe whose sheets are cut otherwise, if it is about one.
    """

    wish: PieceList
    bench: Bench | None
    problem: "Problem"
    plans: tuple["Plan", ...]
    recipe: Reading[Recipe] | None = None


def plan(
    reading: AnyReading,
    bench: Bench | None = None,
    *,
    stock: PieceList | None = None,
    seed: int = 1,
    wanted: int = 1,
    effort: "Effort | None" = None,
    on_ready: Callable[[], None] = lambda: None,
    is_over: Callable[[], bool] = lambda: False,
    reporter: "Reporter | None" = None,
) -> Planning:
    """How the pieces are cut from the stock.

    Args:
        reading: A piece list, or a recipe, whose own sheets are then the stock.
        bench: Its cutting length, graduation and narrowest strip are kept; None for no limits.
        stock: A piece list whose stock takes the place of the reading's.
        seed: The same seed gives the same plan, as long as the search is not stopped by `is_over`.
        wanted: So many different plans of the same cost, if they are found.
        effort: How long is searched.
        on_ready: Called when the search begins. On its first use on a machine it is compiled before that, for some
            twenty seconds that belong to no plan.
        is_over: Asked often; the best plan so far is returned as soon as it says yes.
        reporter: Is told how the search goes on.

    Raises:
        InvalidDocument: The document carries an error, or nothing in it can be planned.
        NoPlan: It is proved that there is none.
        PlanTooLong: None was found in time.
    """
    from spreadwright.cutting.planner import Effort, plans
    from spreadwright.cutting.search.ready import prepare

    wish = wish_of(reading, stock)
    problem = problem_of(wish, bench)
    _refuse(problem, wish.title)
    prepare()
    on_ready()
    found = plans(problem, wanted, seed=seed, effort=effort or Effort(), is_over=is_over, reporter=reporter)
    return Planning(wish, bench, problem, found, reading if is_recipe(reading) else None)


def _refuse(problem: "Problem", title: str) -> None:
    """What needs no search: some of it is no proof that there is no plan."""
    from spreadwright.cutting.problem import causes

    found = causes(problem)
    unsearchable = [cause for cause in found if cause.code in _UNSEARCHABLE]
    if unsearchable:
        raise InvalidDocument(title, unsearchable)
    if found:
        raise NoPlan(found)


_UNSEARCHABLE = ("too-many-pieces", "piece-not-positive", "stock-not-positive")


def effort(seconds: float) -> "Effort":
    """An effort that is not over before so many seconds, so that more time is worth having."""
    from spreadwright.cutting.planner import Effort

    least = Effort()
    return Effort(
        rounds=max(least.rounds, round(_ROUNDS_A_SECOND * seconds)),
        changes=max(least.changes, round(_CHANGES_A_SECOND * seconds)),
        sets=least.sets,
        blocks=max(least.blocks, round(_BLOCKS_A_SECOND * seconds)),
    )


_ROUNDS_A_SECOND, _CHANGES_A_SECOND, _BLOCKS_A_SECOND = 3, 10_000, 50_000


def binding_of(planning: Planning, made: "Plan") -> tuple[tuple[str, tuple[str, ...]], ...]:
    """For each paper what binds a plan, in sentences."""
    from spreadwright.cutting.binding import binding

    return binding(planning.problem, made)


def problem_of(wish: PieceList, bench: Bench | None) -> "Problem":
    """What the search is asked, within the limits of a bench or without any."""
    from spreadwright.cutting.problem import Limits, Problem

    trimmer = bench.trimmer if bench else None
    limits = Limits(trimmer.length, trimmer.shortest, trimmer.graduation) if trimmer else Limits()
    return Problem(wish.pieces, wish.stock, limits, bench.unit if bench else wish.unit)


def planned_sheets(made: "Plan") -> tuple[Sheet, ...]:
    """The sheets as a recipe has them, equal neighbours counted."""
    sheets: list[Sheet] = []
    for each in made.sheets:
        sheet = Sheet(each.paper or ANY_PAPER, each.size, each.content)
        last = sheets[-1] if sheets else None
        if last and replace(last, times=1) == sheet:
            sheets[-1] = replace(last, times=last.times + 1)
        else:
            sheets.append(sheet)
    return tuple(replace(sheet, where=f"/sheets/{number}") for number, sheet in enumerate(sheets))


def planned_cut_sheets(planning: Planning, made: "Plan") -> tuple[CutSheet, ...]:
    """Every sheet of a plan with its parts laid out."""
    return cut_sheets(_recipe(planning, made))


def planned_cutting(planning: Planning, made: "Plan", bench: Bench) -> Cutting:
    """The steps at the trimmer for a plan; what nobody places lies on one pile."""
    recipe = _recipe(planning, made)
    by_id = dict.fromkeys((piece.id for piece in pieces(cut_sheets(recipe))), recipe.spread.pages[0])
    return cutting(recipe, bench, by_id | pile_of(recipe))


def _recipe(planning: Planning, made: "Plan") -> Recipe:
    sheets = planned_sheets(made)
    if planning.recipe:
        return replace(planning.recipe.model, sheets=sheets)
    roles = tuple(Role(name, Kind.ANY) for name in dict.fromkeys(sheet.role for sheet in sheets))
    side = 12 * TICKS[Unit.INCH]
    wish = planning.wish
    return Recipe(wish.id, wish.title, wish.unit, Spread(("page",), Size(side, side)), roles, sheets, ())
