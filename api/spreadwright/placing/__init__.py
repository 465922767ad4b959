"""From placements to pieces on pages and steps with the ruler."""

from spreadwright.placing.layers import PlacedPiece, placed_pieces

__all__ = ["PlacedPiece", "placed_pieces"]
