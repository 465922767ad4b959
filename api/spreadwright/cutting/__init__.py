"""From cut trees to parts, steps at the trimmer, and piles."""

from spreadwright.cutting.check import tree_findings, trimmer_findings
from spreadwright.cutting.check_bench import bench_findings
from spreadwright.cutting.effort import Effort
from spreadwright.cutting.lie import HALF_ROUND, TO_THE_LEFT, TO_THE_RIGHT, UPRIGHT
from spreadwright.cutting.parts import CutSheet, Region, cut_sheets, is_cut, pieces
from spreadwright.cutting.piles import Pile, fall_order, pile_of, piles
from spreadwright.cutting.sentences import CutWords, cautions, sentences, together
from spreadwright.cutting.steps import Arrival, CutStep, Fate, Share, cut_steps, effort
from spreadwright.cutting.told import rounding, told_part, told_rect, told_sizes

__all__ = [
    "HALF_ROUND",
    "TO_THE_LEFT",
    "TO_THE_RIGHT",
    "UPRIGHT",
    "Arrival",
    "CutSheet",
    "CutStep",
    "CutWords",
    "Effort",
    "Fate",
    "Pile",
    "Region",
    "Share",
    "bench_findings",
    "cautions",
    "cut_sheets",
    "cut_steps",
    "effort",
    "fall_order",
    "is_cut",
    "pieces",
    "pile_of",
    "piles",
    "rounding",
    "sentences",
    "together",
    "told_part",
    "told_rect",
    "told_sizes",
    "tree_findings",
    "trimmer_findings",
]
