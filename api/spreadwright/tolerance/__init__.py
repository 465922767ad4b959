"""How far every piece may come out off, and what that does to the layout."""

from spreadwright.tolerance.check import tolerance_findings
from spreadwright.tolerance.deviation import Deviation, Source
from spreadwright.tolerance.partings import Parting, partings
from spreadwright.tolerance.pieces import Expected, PieceTolerance, amount, piece_tolerances
from spreadwright.tolerance.trace import FACTORY, Side, Sides, traced

__all__ = [
    "FACTORY",
    "Deviation",
    "Expected",
    "Parting",
    "PieceTolerance",
    "Side",
    "Sides",
    "Source",
    "amount",
    "partings",
    "piece_tolerances",
    "tolerance_findings",
    "traced",
]
