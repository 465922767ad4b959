"""From cut trees to parts, steps at the trimmer, and piles."""

from spreadwright.cutting.check import tree_findings, trimmer_findings
from spreadwright.cutting.parts import CutSheet, Region, cut_sheets, pieces
from spreadwright.cutting.piles import Pile, fall_order, pile_of, piles
from spreadwright.cutting.sentences import CAUTIONS, CutWords, sentences
from spreadwright.cutting.steps import Arrival, CutStep, Fate, Share, cut_steps

__all__ = [
    "CAUTIONS",
    "Arrival",
    "CutSheet",
    "CutStep",
    "CutWords",
    "Fate",
    "Pile",
    "Region",
    "Share",
    "cut_sheets",
    "cut_steps",
    "fall_order",
    "pieces",
    "pile_of",
    "piles",
    "sentences",
    "tree_findings",
    "trimmer_findings",
]
