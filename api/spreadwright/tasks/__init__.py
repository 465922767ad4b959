"""One short function for each verb of the tool; command line, HTTP and gallery are three thin faces of this list."""

from spreadwright.tasks.check import Report, check, proven, recipe_findings
from spreadwright.tasks.colourways import chosen_colourway, fitting_set
from spreadwright.tasks.cut import Cutting, cut
from spreadwright.tasks.place import Placing, place

__all__ = [
    "Cutting",
    "Placing",
    "Report",
    "check",
    "chosen_colourway",
    "cut",
    "fitting_set",
    "place",
    "proven",
    "recipe_findings",
]
