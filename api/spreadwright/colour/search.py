"""The best picks of one option a role, by branch and bound; it knows tables of whole numbers, and no colours.

Roles are decided one after the other, a batch of unfinished picks at a time. What an unfinished pick can reach at most
is its points so far, and for every open role the best option with all decided ones and with the best partner in every
later role. Whatever cannot reach the best `most` found so far is dropped; so are picks that need more sheets of a paper
than are at hand. Batches that promise most come first. Of equal picks the one that comes first in order is better.
"""

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from spreadwright.colour.tables import Picks, Tables, Whole

Flags = NDArray[np.bool_]

MOST_WORK = 600_000_000
"""Numbers that are added up before a search gives up proving that it has found the best; some seconds."""
_BATCH, _WAITING = 2_000_000, 16_000_000
"""The most numbers in one batch, 16 MB, and about the most in all that wait: a batch or so for each role."""


@dataclass(frozen=True)
class Supply:
    """How many sheets of which paper a pick may take.

    Attributes:
        paper: For each role the number of the paper of each of its options.
        needed: Sheets that each role takes.
        at_hand: Sheets of each paper.
    """

    paper: tuple[NDArray[np.int64], ...]
    needed: tuple[int, ...]
    at_hand: NDArray[np.int64]

    def allows(self, picks: Picks) -> Flags:
        """Which of these picks, of the first roles or of all, there are sheets for."""
        papers = np.stack([self.paper[role][picks[:, role]] for role in range(picks.shape[1])], axis=1)
        needed = np.array(self.needed[: picks.shape[1]], np.int64)
        taken = ((papers[:, :, None] == papers[:, None, :]) * needed).sum(axis=2)
        allowed: Flags = (taken <= self.at_hand[papers]).all(axis=1)
        return allowed


@dataclass(frozen=True)
class Found:
    """The best picks, the best one first.

    Attributes:
        picks: Numbers of options, shape (at most `most`, roles).
        values: Of each.
        is_proved: Whether no other pick belongs among them; otherwise the search stopped early.
    """

    picks: Picks
    values: Whole
    is_proved: bool = True


def best(tables: Tables, most: int, supply: Supply | None = None) -> Found:
    """The picks of most value, at most so many, and in a stable order."""
    search = _Search(tables, most, supply)
    search.run()
    kept = search.kept
    return Found(kept.picks, kept.values + tables.constant, search.is_proved)


@dataclass
class _Kept:
    """The best finished picks so far, in order."""

    most: int
    picks: Picks
    values: Whole = field(default_factory=lambda: np.zeros(0, np.int64))

    @property
    def least(self) -> int:
        """What a pick must reach at least to be kept."""
        return int(self.values[-1]) if len(self.values) == self.most else np.iinfo(np.int64).min

    def beaten(self, values: Whole, picks: Picks) -> Flags:
        """Which of these, of the first roles, cannot be completed to anything that is kept."""
        below: Flags = values < self.least
        if len(self.values) == self.most:
            below |= (values == self.least) & _comes_after(picks, self.picks[-1])
        return below

    def add(self, picks: Picks, values: Whole) -> None:
        picks, values = np.concatenate((self.picks, picks)), np.concatenate((self.values, values))
        order = np.lexsort((*reversed(picks.T), -values))[: self.most]
        self.picks, self.values = picks[order], values[order]


def _comes_after(picks: Picks, one: NDArray[np.int64]) -> Flags:
    """Whether the picks, of the first roles or of all, stand behind another in the order of the options."""
    after, equal = np.zeros(len(picks), bool), np.ones(len(picks), bool)
    for column, number in zip(picks.T, one, strict=False):
        after |= equal & (column > number)
        equal &= column == number
    return after


@dataclass(frozen=True)
class _Batch:
    """Picks of the first roles, all of the same length.

    Attributes:
        promise: For every option of every role its points with all decided roles and the best later partners.
        reach: What each pick may reach at most.
    """

    picks: Picks
    value: Whole
    promise: Whole
    reach: Whole

    def part(self, wanted: Flags | NDArray[np.intp] | slice) -> "_Batch":
        return _Batch(self.picks[wanted], self.value[wanted], self.promise[wanted], self.reach[wanted])


class _Search:
    """One search; its state are the batches that wait, the last one next."""

    def __init__(self, tables: Tables, most: int, supply: Supply | None) -> None:
        self._sizes = [len(column) for column in tables.alone]
        self._starts = np.concatenate(([0], np.cumsum(self._sizes))).astype(np.int64)
        self._rows = _rows(tables, self._starts)
        self._later = _later(tables)
        self._supply = supply
        self._work = 0
        self.kept = _Kept(most, np.zeros((0, len(self._sizes)), np.int64))
        self.is_proved = True
        start = np.concatenate([own + later for own, later in zip(tables.alone, self._later, strict=True)])
        self._waiting = [self._batch(np.zeros((1, 0), np.int64), np.zeros(1, np.int64), start[None, :])]

    def run(self) -> None:
        while self._waiting:
            batch = self._waiting.pop()
            batch = batch.part(~self.kept.beaten(batch.reach, batch.picks))
            if len(batch.picks) and self._work > MOST_WORK:
                self.is_proved = False
                return
            if len(batch.picks):
                self._expand(batch)

    def _expand(self, batch: _Batch) -> None:
        role = batch.picks.shape[1]
        size, count = self._sizes[role], len(batch.picks)
        options = np.arange(size)
        picks = np.column_stack((np.repeat(batch.picks, size, axis=0), np.tile(options, count)))
        own = batch.promise[:, self._span(role)] - self._later[role]
        value = (batch.value[:, None] + own).ravel()
        parents = np.repeat(np.arange(count), size)
        if self._supply:
            allowed = self._supply.allows(picks)
            picks, value, parents = picks[allowed], value[allowed], parents[allowed]
        if role == len(self._sizes) - 1:
            self._finish(picks, value)
        else:
            promise = batch.promise[parents] + self._rows[role][picks[:, -1]]
            self._push(self._batch(picks, value, promise))

    def _finish(self, picks: Picks, value: Whole) -> None:
        self._work += picks.size
        good = ~self.kept.beaten(value, picks)
        self.kept.add(picks[good], value[good])

    def _batch(self, picks: Picks, value: Whole, promise: Whole) -> _Batch:
        reach = value.copy()
        for role in range(picks.shape[1], len(self._sizes)):
            reach += promise[:, self._span(role)].max(axis=1)
        self._work += promise.size
        return _Batch(picks, value, promise, reach)

    def _push(self, batch: _Batch) -> None:
        batch = batch.part(~self.kept.beaten(batch.reach, batch.picks))
        batch = batch.part(np.argsort(-batch.reach, kind="stable"))
        numbers = int(self._starts[-1]) * self._sizes[batch.picks.shape[1]]
        step = max(1, min(_BATCH, _WAITING // len(self._sizes)) // numbers)
        for start in reversed(range(0, len(batch.picks), step)):
            self._waiting.append(batch.part(slice(start, start + step)))

    def _span(self, role: int) -> slice:
        return slice(self._starts[role], self._starts[role + 1])


def _rows(tables: Tables, starts: NDArray[np.int64]) -> list[Whole]:
    """For each role and option what deciding it adds to every option of the later roles."""
    rows = [np.zeros((len(column), int(starts[-1])), np.int64) for column in tables.alone]
    for (one, other), table in tables.between.items():
        rows[one][:, starts[other] : starts[other + 1]] = table
    return rows


def _later(tables: Tables) -> list[Whole]:
    """For each role and option the best that later roles can add to it."""
    later = [np.zeros(len(column), np.int64) for column in tables.alone]
    for (one, _), table in tables.between.items():
        later[one] += table.max(axis=1)
    return later
