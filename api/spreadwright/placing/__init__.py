"""From placements to pieces on pages and steps with the ruler."""

from spreadwright.placing.check import placing_findings
from spreadwright.placing.draft import draft_findings, role_of
from spreadwright.placing.layers import PlacedPiece, placed_pieces
from spreadwright.placing.steps import CAUTIONS, PlaceStep, place_steps

__all__ = [
    "CAUTIONS",
    "PlaceStep",
    "PlacedPiece",
    "draft_findings",
    "place_steps",
    "placed_pieces",
    "placing_findings",
    "role_of",
]
