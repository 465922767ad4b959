"""A trimmer that knows only paper, turns and readings: it follows steps and reports what comes off."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from spreadwright.cutting import Arrival, CutSheet, CutStep, Fate, Share
from spreadwright.geometry import Size
from spreadwright.model import Measures


@dataclass
class SimulatedTrimmer:
    """Paper on the board and set aside, as it lies: width across the board, height along the blade."""

    sheets: Sequence[CutSheet]
    length: int
    done: dict[str, Size] = field(default_factory=dict)
    aside: list[tuple[Size, bool]] = field(default_factory=list)
    board: tuple[Size, bool] | None = None

    def follow(self, step: CutStep) -> None:
        lies, is_turned = self._take(step)
        if step.is_turned_now:
            lies, is_turned = lies.turned(), not is_turned
        assert lies.height <= self.length
        kept = step.exact if step.measures is Measures.KEPT else lies.width - step.exact
        assert 0 < kept < lies.width
        self.board = None
        self._give(step.falling, Size(lies.width - kept, lies.height), is_turned)
        self._give(step.kept, Size(kept, lies.height), is_turned)

    def _take(self, step: CutStep) -> tuple[Size, bool]:
        if step.arrival is Arrival.NEW_SHEET:
            assert self.board is None and not self.aside
            return self.sheets[step.sheet - 1].root.rect.size, False
        if step.arrival is Arrival.STAYS:
            assert self.board is not None
            return self.board
        assert self.board is None
        return self.aside.pop()

    def _give(self, share: Share, lies: Size, is_turned: bool) -> None:
        if share.fate is Fate.SET_ASIDE:
            self.aside.append((lies, is_turned))
        elif share.fate is Fate.ON_BOARD:
            self.board = (lies, is_turned)
        else:
            assert share.id not in self.done
            self.done[share.id] = lies.turned() if is_turned else lies
