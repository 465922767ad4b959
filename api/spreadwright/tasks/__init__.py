"""One short function for each verb of the tool; command line, HTTP and gallery are three thin faces of this list."""

from spreadwright.tasks.check import Report, check, proven, recipe_findings
from spreadwright.tasks.colourways import chosen_colourway, fitting_set
from spreadwright.tasks.cut import Cutting, cut
from spreadwright.tasks.place import Placing, place
from spreadwright.tasks.plan import (
    Planning,
    binding_of,
    effort,
    plan,
    planned_cut_sheets,
    planned_cutting,
    planned_sheets,
)
from spreadwright.tasks.plan_answers import plan_answer, planned_recipe
from spreadwright.tasks.wish import is_recipe

__all__ = [
    "Cutting",
    "Placing",
    "Planning",
    "Report",
    "binding_of",
    "check",
    "chosen_colourway",
    "cut",
    "effort",
    "fitting_set",
    "is_recipe",
    "place",
    "plan",
    "plan_answer",
    "planned_cut_sheets",
    "planned_cutting",
    "planned_recipe",
    "planned_sheets",
    "proven",
    "recipe_findings",
]
