"""The order in which the cuts of one sheet are made: the one of least effort.

All parallel cuts of a part start from one end and take one column or row at a time; everything else is free: which
end, which part comes next, whether the part on the board is cut to its end or set aside for an equal one that needs
the same setting. Every order makes the same number of cuts, so the orders grow level by level (dynamic programming):
of all ways to come to the same paper in the same lies with the same setting only the cheapest goes on. Equal parts
are not told apart.

While no more than `MOST_TRIED` cuts have to be tried nothing is dropped, and the order is the best there is. On
larger sheets the most promising ways go on (beam search). Whatever is found is compared with the plain walk, which
cuts each part to its end, the one on the board first and then the one set aside last; so it is never worse. Of orders
that cost the same the one is taken whose long cuts come first, while the paper is large.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from spreadwright.cutting.effort import NARROW, PICK_UP, QUARTER_TURN, SETTING
from spreadwright.cutting.lie import UPRIGHT, End, lie, turn, usual_end
from spreadwright.cutting.measured import Measured
from spreadwright.model import Axis, Trimmer

MOST_TRIED = 40_000
"""The most cuts that are tried for the sheets of one recipe; about a second."""
LEAST_TRIED = 10_000
"""So many are tried for every sheet in any case, which is enough for the best order of eight pieces."""
NARROWEST = 4
"""So many states go on in any case."""

UNSET = -1
"""The setting before the first cut."""

Rank = tuple[int, int, int, int]
"""What orders are compared by: `Effort.rank`, then how late the long cuts come."""
NOTHING: Rank = (0, 0, 0, 0)


@dataclass(frozen=True, slots=True, order=True)
class Lying:
    """A part that is still to be cut, equal ones not told apart.

    Attributes:
        shape: Which columns or rows it has, as `Measured.shape`.
        done: How many of its cuts are made.
        end: The end that falls, empty before its first cut.
        lies: How it lies, quarter turns to the left.
    """

    shape: int
    done: int = 0
    end: str = ""
    lies: int = UPRIGHT


@dataclass(frozen=True, slots=True)
class Move:
    """The next cut: of which part, and which end of it falls."""

    part: Lying
    end: End


Path = tuple["Path", Move] | None
"""The moves so far, the last one outermost."""


@dataclass(frozen=True, slots=True)
class State:
    """What lies on the board, what is set aside, and what the scale shows."""

    board: Lying | None
    aside: tuple[Lying, ...]
    setting: int


@dataclass(frozen=True, slots=True)
class Order:
    """The moves of one sheet.

    Attributes:
        is_best: Whether it is proved that no order takes less effort.
    """

    moves: tuple[Move, ...]
    rank: Rank
    is_best: bool


def best_order(sheet: Measured, trimmer: Trimmer, setting: int = UNSET, most_tried: int = MOST_TRIED) -> Order:
    """The order of least effort for one sheet that takes cuts.

    Args:
        sheet: The sheet, measured.
        trimmer: On which it is cut.
        setting: What the scale shows before the first cut, ticks.
        most_tried: The most cuts that are tried.
    """
    rules = Rules({part.shape: part for part in sheet.splits()}, trimmer)
    start = State(Lying(sheet.shape), (), setting)
    cuts = sum(len(part.children) - 1 for part in sheet.splits())
    plain, found = _walk(rules, start), _search(rules, start, cuts, most_tried)
    return found if found.rank <= plain.rank else plain


@dataclass(frozen=True, slots=True)
class Rules:
    """What may be done with the parts of one sheet, and what it costs."""

    parts: Mapping[int, Measured]
    trimmer: Trimmer
    narrow: dict[tuple[int, int, End], bool] = field(default_factory=dict)

    def moves(self, state: State) -> Iterator[Move]:
        """Every cut that can be made next."""
        for part in dict.fromkeys([*([state.board] if state.board else []), *state.aside[::-1]]):
            for end in self.ends(part):
                yield Move(part, end)

    def ends(self, part: Lying) -> tuple[End, ...]:
        """The ends that may fall; one only once the first has fallen. The usual one comes first."""
        if part.end:
            return (End(part.end),)
        allowed = self.parts[part.shape].settings
        usual = usual_end(self._axis(part), self.trimmer.hand)
        return tuple(end for end in (usual, usual.other) if end in allowed)

    def lies(self, move: Move) -> int:
        """How the part lies for a cut, quarter turns to the left."""
        return lie(self._axis(move.part), move.end, self.trimmer.hand)

    def halves(self, move: Move) -> tuple[Lying | None, Lying | None]:
        """What falls and what is kept, as far as they are cut further."""
        part, lies = move.part, self.lies(move)
        children = self.parts[part.shape].children
        ordered = children if move.end is End.FIRST else children[::-1]
        is_last_cut = len(ordered) - part.done == 2
        kept = _whole(ordered[-1], lies) if is_last_cut else Lying(part.shape, part.done + 1, move.end, lies)
        return _whole(ordered[part.done], lies), kept

    def after(self, state: State, move: Move, number: int) -> tuple[State, Rank]:
        """What a cut leads to, and what it costs as the one of that number."""
        part = move.part
        reading = self.parts[part.shape].settings[move.end][part.done].reading
        falling, kept = self.halves(move)
        aside = list(state.aside)
        is_picked_up = part != state.board
        if is_picked_up:
            aside.remove(part)
            aside += [state.board] if state.board else []
        aside += [falling] if falling else []
        is_set = reading != state.setting
        turned = abs(turn(part.lies, self.lies(move)))
        is_narrow = self._is_narrow(move)
        weight = NARROW * is_narrow + SETTING * is_set + PICK_UP * is_picked_up + QUARTER_TURN * turned
        is_unusual = move.end is not usual_end(self._axis(part), self.trimmer.hand)
        late = number * self.parts[part.shape].true(self._axis(part).other)
        return State(kept, tuple(sorted(aside)), reading), (weight, int(is_unusual), reading if is_set else 0, late)

    def _is_narrow(self, move: Move) -> bool:
        """Whether what stays is narrower than can be held safely."""
        key = (move.part.shape, move.part.done, move.end)
        if key not in self.narrow:
            kept = self.parts[move.part.shape].kept(move.end, move.part.done)
            self.narrow[key] = kept < self.trimmer.shortest
        return self.narrow[key]

    def _axis(self, part: Lying) -> Axis:
        axis = self.parts[part.shape].axis
        if axis is None:
            raise ValueError("a part that is not split takes no cut")
        return axis


def _whole(measured: Measured, lies: int) -> Lying | None:
    return Lying(measured.shape, lies=lies) if measured.children else None


def _plus(one: Rank, other: Rank) -> Rank:
    return one[0] + other[0], one[1] + other[1], one[2] + other[2], one[3] + other[3]


def _search(rules: Rules, start: State, cuts: int, most_tried: int) -> Order:
    level: dict[State, tuple[Rank, Path]] = {start: (NOTHING, None)}
    is_best, left = True, most_tried
    for number in range(cuts):
        following: dict[State, tuple[Rank, Path]] = {}
        tried = 0
        for state, (rank, path) in level.items():
            for move in rules.moves(state):
                after, cost = rules.after(state, move, number)
                reached = _plus(rank, cost)
                tried += 1
                if after not in following or reached < following[after][0]:
                    following[after] = (reached, (path, move))
        left -= tried
        width = max(NARROWEST, left * len(level) // (tried * max(1, cuts - number - 1)))
        is_best = is_best and len(following) <= width
        level = following if len(following) <= width else _promising(following, width)
    rank, path = min(level.values(), key=lambda found: found[0])
    return Order(_moves(path), rank, is_best)


def _promising(level: dict[State, tuple[Rank, Path]], width: int) -> dict[State, tuple[Rank, Path]]:
    """Those that cost least, with what it will take to pick up all that is set aside."""

    def likely(item: tuple[State, tuple[Rank, Path]]) -> Rank:
        return _plus(item[1][0], (PICK_UP * len(item[0].aside), 0, 0, 0))

    return dict(sorted(level.items(), key=likely)[:width])


def _moves(path: Path) -> tuple[Move, ...]:
    moves: list[Move] = []
    while path is not None:
        path, move = path
        moves.append(move)
    return tuple(moves[::-1])


def _walk(rules: Rules, start: State) -> Order:
    """Each part to its end in its usual lie, then the last one set aside."""
    state, rank = start, NOTHING
    moves: list[Move] = []
    waiting: list[Lying] = []
    while state.board or waiting:
        part = state.board or waiting.pop()
        move = Move(part, rules.ends(part)[0])
        falling = rules.halves(move)[0]
        state, cost = rules.after(state, move, len(moves))
        rank = _plus(rank, cost)
        moves.append(move)
        waiting += [falling] if falling else []
    return Order(tuple(moves), rank, is_best=False)
