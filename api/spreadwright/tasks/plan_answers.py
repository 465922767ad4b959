"""The JSON form of what *plan* answers; lengths in the cut trees are text, as in a recipe."""

from typing import TYPE_CHECKING

from spreadwright.document import canonical, sheet_document
from spreadwright.tasks.answers import SCALE, Json, bench_answer, size_answer
from spreadwright.tasks.plan import ANY_PAPER, OBJECTIVE, Planning, binding_of, planned_sheets
from spreadwright.tasks.replanned import replanned

if TYPE_CHECKING:
    from spreadwright.cutting.plan import Certificate, Plan


def plan_answer(planning: Planning) -> Json:
    """The plans, what is proved about each, and for a recipe the whole of it as each plan cuts it."""
    bench = planning.bench
    return {
        "title": planning.wish.title,
        "unit": planning.wish.unit.value,
        "bench": bench_answer(bench) if bench else None,
        **SCALE,
        "objective": list(OBJECTIVE),
        "plans": [_plan(planning, made) for made in planning.plans],
    }


def _plan(planning: Planning, made: "Plan") -> Json:
    unit, recipe = planning.wish.unit, planning.recipe
    sheets = planned_sheets(made)
    because = dict(binding_of(planning, made))
    return {
        "optimal": made.is_optimal,
        "sheet_count": len(made.sheets),
        "sheets": [sheet_document(sheet, unit) for sheet in sheets],
        "spares": [size_answer(spare, unit) for spare in made.spares],
        "left_out": list(made.left_out),
        "certificates": [_certificate(paper, each, because[paper]) for paper, each in made.certificates],
        "recipe": replanned(recipe, planning.wish, sheets) if recipe else None,
    }


def planned_recipe(planning: Planning, made: "Plan") -> bytes:
    """The recipe with its sheets cut by a plan, as a document; the planning must be one of a recipe."""
    if planning.recipe is None:
        raise ValueError("only the plan of a recipe makes one")
    return canonical(replanned(planning.recipe, planning.wish, planned_sheets(made)))


def _certificate(paper: str, certificate: "Certificate", because: tuple[str, ...]) -> Json:
    return {
        "role": paper or ANY_PAPER,
        "standing": certificate.standing.value,
        "cost": certificate.cost,
        "lower_bound": certificate.lower_bound,
        "gap": certificate.gap,
        "value": certificate.value,
        "most_value": certificate.most_value,
        "gathered": certificate.is_gathered,
        "reason": certificate.reason,
        "binding": list(because),
    }
