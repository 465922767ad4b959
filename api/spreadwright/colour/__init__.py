"""Choosing papers: colourways and whether they suit."""

from spreadwright.colour.check import colourway_findings, paper_findings, role_findings
from spreadwright.colour.colourways import choices, colourways, count, first, named, set_of

__all__ = [
    "choices",
    "colourway_findings",
    "colourways",
    "count",
    "first",
    "named",
    "paper_findings",
    "role_findings",
    "set_of",
]
