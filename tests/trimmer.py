"""A trimmer that knows only paper, turns and readings: it follows steps and reports what comes off."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from spreadwright.cutting import Arrival, CutSheet, CutStep, Fate, Share
from spreadwright.geometry import Rect
from spreadwright.model import Bench, Hand, Measures


@dataclass(frozen=True)
class Paper:
    """Paper in the maker's hands: where on the sheet it truly is, and how it lies, quarter turns to the left."""

    true: Rect
    lies: int = 0

    @property
    def size(self) -> tuple[int, int]:
        """Across the board and along the blade, ticks."""
        return (self.true.width, self.true.height) if self.lies % 2 == 0 else (self.true.height, self.true.width)

    def turned(self, quarters_left: int) -> "Paper":
        return Paper(self.true, (self.lies + quarters_left) % 4)

    def cut(self, at: int) -> tuple["Paper", "Paper"]:
        """What lies left of a place on the board, and what lies right of it."""
        near, far = at, self.size[0] - at
        rect = self.true
        cuts = {
            0: ((rect.left, rect.top, near, rect.height), (rect.left + near, rect.top, far, rect.height)),
            1: ((rect.left, rect.top, rect.width, near), (rect.left, rect.top + near, rect.width, far)),
            2: ((rect.left + far, rect.top, near, rect.height), (rect.left, rect.top, far, rect.height)),
            3: ((rect.left, rect.top + far, rect.width, near), (rect.left, rect.top, rect.width, far)),
        }
        one, other = cuts[self.lies]
        return Paper(Rect(*one), self.lies), Paper(Rect(*other), self.lies)


@dataclass
class SimulatedTrimmer:
    """Follows steps on one bench; `done` is what every piece truly is, by id."""

    sheets: Sequence[CutSheet]
    bench: Bench
    done: dict[str, Rect] = field(default_factory=dict)
    piles: dict[str, list[str]] = field(default_factory=dict)
    aside: list[tuple[int, bool, Paper]] = field(default_factory=list)
    board: Paper | None = None
    left: Rect | None = None
    setting: int = -1

    def follow(self, step: CutStep) -> None:
        lies = self._take(step).turned(step.turned)
        assert lies.true == step.true_board
        across, along = lies.size
        assert along <= self.bench.trimmer.length and len(step.sheets) <= self.bench.trimmer.stack
        self.setting = step.reading if step.is_set_now else self.setting
        kept = self.setting if step.measures is Measures.KEPT else across - self.setting
        assert 0 < kept < across and self.setting % self.bench.trimmer.graduation == 0
        if self.bench.trimmer.hand is Hand.RIGHT:
            stays, falls = lies.cut(kept)
        else:
            falls, stays = lies.cut(across - kept)
        self.board = None
        self._give(step, step.falling, falls)
        self._give(step, step.kept, stays)

    def _take(self, step: CutStep) -> Paper:
        if step.arrival is Arrival.NEW_SHEET:
            assert self.board is None and not self.aside
            whole = self.sheets[step.sheet - 1].root.rect
            assert all(self.sheets[number - 1].root.rect == whole for number in step.sheets)
            return Paper(whole)
        if step.arrival is Arrival.STAYS:
            assert self.board is not None
            return self.board
        assert self.board is None
        (found,) = [each for each in self.aside if each[:2] == (step.set_aside_at, step.had_stayed)]
        self.aside.remove(found)
        return found[2]

    def _give(self, step: CutStep, share: Share, paper: Paper) -> None:
        assert paper.true == share.true
        if share.fate is Fate.SET_ASIDE:
            assert share.until > step.number
            self.aside.append((step.number, share is step.kept, paper))
        elif share.fate is Fate.ON_BOARD:
            self.board = paper
        else:
            assert len(share.ids) == len(step.sheets) and not self.done.keys() & set(share.ids)
            self.done |= dict.fromkeys(share.ids, paper.true)
