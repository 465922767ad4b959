"""From cut trees to parts, steps at the trimmer, and piles."""

from spreadwright.cutting.parts import CutSheet, Region, cut_sheets, pieces

__all__ = ["CutSheet", "Region", "cut_sheets", "pieces"]
