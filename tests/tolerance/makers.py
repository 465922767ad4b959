"""Many makers at once, who know only paper, the blade and the scale: each cut lands a little beside its reading.

Every part is kept as its four edges on the sheet, one number a maker, in ticks. Nothing here knows how errors add up.
"""

from collections.abc import Iterable

import numpy as np

from spreadwright.cutting import CutSheet, CutStep
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Measures

Edges = list[np.ndarray]
"""Left, top, right, bottom."""


class Makers:
    """So many makers at benches whose cuts are equally likely anywhere within the accuracy."""

    def __init__(self, count: int, accuracy: int, seed: int = 20261125) -> None:
        self.count = count
        self.accuracy = accuracy
        self.random = np.random.default_rng(seed)

    def cut(self, sheets: Iterable[CutSheet], steps: Iterable[CutStep]) -> dict[str, tuple[np.ndarray, np.ndarray]]:
        """Widths and heights of every part that they get, by its id."""
        sheets = list(sheets)
        paper = {(sheet.number, sheet.root.rect): self._whole(sheet.root.rect) for sheet in sheets}
        for step in steps:
            beside = self.random.uniform(-self.accuracy, self.accuracy, self.count)
            for number in step.sheets:
                self._follow(step, number, beside, paper)
        parts = {part.id: paper[sheet.number, part.rect] for sheet in sheets for part in sheet.parts}
        return {name: (right - left, bottom - top) for name, (left, top, right, bottom) in parts.items()}

    def _whole(self, rect: Rect) -> Edges:
        return [np.full(self.count, float(edge)) for edge in (rect.left, rect.top, rect.right, rect.bottom)]

    def _follow(self, step: CutStep, number: int, beside: np.ndarray, paper: dict[tuple[int, Rect], Edges]) -> None:
        lying = paper[number, step.on_board]
        low, high = (0, 2) if step.axis is Axis.COLUMNS else (1, 3)
        shares = (step.kept.rect, step.falling.rect)
        measured, other = shares if step.measures is Measures.KEPT else shares[::-1]
        is_first = (measured.left, measured.top) < (other.left, other.top)
        shown = step.reading + beside
        blade = lying[low] + shown if is_first else lying[high] - shown
        first, last = list(lying), list(lying)
        first[high] = last[low] = blade
        paper[number, measured], paper[number, other] = (first, last) if is_first else (last, first)
