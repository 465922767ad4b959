"""From placements to pieces on pages and steps with the ruler."""

from spreadwright.placing.check import placing_findings
from spreadwright.placing.layers import PlacedPiece, placed_pieces
from spreadwright.placing.steps import CAUTIONS, PlaceStep, place_steps

__all__ = ["CAUTIONS", "PlaceStep", "PlacedPiece", "place_steps", "placed_pieces", "placing_findings"]
