"""Many makers at once, who know only paper, the blade and the scale: each cut lands a little beside its reading.

Every part is kept as its four edges on the sheet, one number a maker, in ticks. Nothing here knows how errors add up.
"""

from collections.abc import Iterable

import numpy as np

from spreadwright.cutting import CutSheet, CutStep
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Measures
from spreadwright.tolerance import Parting

Edges = list[np.ndarray]
"""Left, top, right, bottom."""

Lengths = dict[str, tuple[np.ndarray, np.ndarray]]
Cut = tuple[tuple[int, ...], Rect, Axis, Rect, Rect, int]
"""Sheets, what is on the board, what the cut makes, what is measured, the other part, the reading."""


class Makers:
    """So many makers at benches whose cuts are equally likely anywhere within the accuracy."""

    def __init__(self, count: int, accuracy: int, seed: int = 20261125) -> None:
        self.count = count
        self.accuracy = accuracy
        self.random = np.random.default_rng(seed)

    def cut(self, sheets: Iterable[CutSheet], steps: Iterable[CutStep]) -> Lengths:
        """Widths and heights of every part that they get by following the steps, by its id."""
        return self._made(sheets, [(step.sheets, step.on_board, step.axis, *_shares(step)) for step in steps])

    def cut_otherwise(self, sheets: Iterable[CutSheet], cuts: Iterable[Parting]) -> Lengths:
        """The same by cuts that are told as measurements."""
        told = [(cut.sheets, cut.on_board, cut.axis, cut.measured, cut.rest, cut.reading) for cut in cuts]
        return self._made(sheets, told)

    def _made(self, sheets: Iterable[CutSheet], cuts: Iterable[Cut]) -> Lengths:
        sheets = list(sheets)
        paper = {(sheet.number, sheet.root.rect): self._whole(sheet.root.rect) for sheet in sheets}
        for numbers, *cut in cuts:
            beside = self.random.uniform(-self.accuracy, self.accuracy, self.count)
            for number in numbers:
                _follow(number, *cut, beside, paper)
        parts = {part.id: paper[sheet.number, part.rect] for sheet in sheets for part in sheet.parts}
        return {name: (right - left, bottom - top) for name, (left, top, right, bottom) in parts.items()}

    def _whole(self, rect: Rect) -> Edges:
        return [np.full(self.count, float(edge)) for edge in (rect.left, rect.top, rect.right, rect.bottom)]


def _shares(step: CutStep) -> tuple[Rect, Rect, int]:
    """What the scale measures, the other part, and the reading."""
    shares = (step.kept.rect, step.falling.rect)
    measured, other = shares if step.measures is Measures.KEPT else shares[::-1]
    return measured, other, step.reading


def _follow(
    number: int,
    on_board: Rect,
    axis: Axis,
    measured: Rect,
    other: Rect,
    reading: int,
    beside: np.ndarray,
    paper: dict[tuple[int, Rect], Edges],
) -> None:
    lying = paper[number, on_board]
    low, high = (0, 2) if axis is Axis.COLUMNS else (1, 3)
    is_first = (measured.left, measured.top) < (other.left, other.top)
    blade = lying[low] + reading + beside if is_first else lying[high] - reading - beside
    first, last = list(lying), list(lying)
    first[high] = last[low] = blade
    paper[number, measured], paper[number, other] = (first, last) if is_first else (last, first)
