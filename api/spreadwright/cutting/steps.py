"""The steps at the trimmer: from cut sheets and a bench to numbered cuts.

Which end of a part falls, what is set aside and what comes next is decided in `order`, what the scale shows in
`measured`, which sheets lie on one another in `stacks`. Here the moves are played out with the parts themselves: of
equal ones set aside the last one is picked up first.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import lru_cache

from spreadwright.cutting.effort import Effort, total
from spreadwright.cutting.lie import End, lie, turn, usual_end
from spreadwright.cutting.measured import Measured
from spreadwright.cutting.order import LEAST_TRIED, MOST_TRIED, UNSET, Lying, Move, Order, best_order
from spreadwright.cutting.parts import CutSheet
from spreadwright.cutting.stacks import Stack, stacks
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Bench, Measures, Trimmer, Use


class Fate(StrEnum):
    """What becomes of a part once it is cut off."""

    PIECE = "piece"
    SPARE = "spare"
    SCRAP = "scrap"
    SET_ASIDE = "set-aside"
    ON_BOARD = "on-board"


class Arrival(StrEnum):
    """How the part that is cut comes to lie on the board."""

    NEW_SHEET = "new-sheet"
    STAYS = "stays"
    PICKED_UP = "picked-up"


@dataclass(frozen=True, slots=True)
class Share:
    """One of the two parts that a cut makes.

    Attributes:
        rect: Its place on the sheet as designed, ticks.
        true: Where it truly lies there by the marks of the scale, ticks.
        ids: The pieces or spares that it is, one for each sheet cut together; empty when it is cut further.
        until: The number of the cut that it is set aside for, 0 unless it is set aside.
    """

    rect: Rect
    true: Rect
    fate: Fate
    ids: tuple[str, ...] = ()
    until: int = 0

    @property
    def id(self) -> str:
        """The piece or spare that it is on the first sheet, empty when it is cut further."""
        return self.ids[0] if self.ids else ""


@dataclass(frozen=True, slots=True)
class CutStep:
    """One cut, with everything that is needed to say it and to draw it.

    Attributes:
        number: Counts through the whole recipe, from 1.
        sheets: The numbers of the sheets cut together, which are equal.
        on_board: The part that is cut, as its designed place on the sheet, ticks.
        true_board: The same, where it truly lies on the sheet by the marks of the scale, ticks.
        arrival: Whether it is a new sheet, still lies there, or is picked up from those set aside.
        set_aside_at: The number of the cut that made a part that is picked up, 0 for others.
        had_stayed: Whether that part stayed under the clamp then; otherwise it fell.
        axis: Whether the cut makes columns or rows of the sheet.
        quarter_turns_left: How it lies on the board, from the sheet upright, 0 to 3.
        turned: How it is turned for this cut, quarters: 1 to the left, -1 to the right, 2 half round, 0 not at all.
        exact: What the trimmer's scale should show, from where the edge truly is, ticks.
        reading: The mark of the trimmer's scale nearest to it, ticks.
        is_set_now: Whether the scale is set for this cut; otherwise it shows the reading already.
        kept: What stays under the clamp.
        falling: What falls.
    """

    number: int
    sheets: tuple[int, ...]
    on_board: Rect
    true_board: Rect
    arrival: Arrival
    set_aside_at: int
    had_stayed: bool
    axis: Axis
    quarter_turns_left: int
    turned: int
    measures: Measures
    exact: int
    reading: int
    is_set_now: bool
    kept: Share
    falling: Share
    where: str = field(default="", compare=False)

    @property
    def sheet(self) -> int:
        """The number of the sheet, of several the first."""
        return self.sheets[0]

    @property
    def is_turned_now(self) -> bool:
        """Whether it is turned for this cut."""
        return self.turned != 0

    @property
    def length(self) -> int:
        """How long the cut is, ticks."""
        return self.axis.other.along(self.on_board)


def cut_steps(sheets: Sequence[CutSheet], bench: Bench) -> tuple[CutStep, ...]:
    """The cuts of all sheets in the order in which they are made.

    A sheet of n parts takes n - 1 cuts, equal sheets cut together no more. Sheets must be free of errors: every extent
    known, every row filled.
    """
    pointers = tuple(part.where for sheet in sheets for part in sheet.parts)  # equal sheets may stand elsewhere
    return _cut_steps(tuple(sheets), pointers, bench)


@lru_cache(maxsize=32)
def _cut_steps(sheets: tuple[CutSheet, ...], _pointers: tuple[str, ...], bench: Bench) -> tuple[CutStep, ...]:
    found = stacks(sheets, bench.trimmer)
    most_tried = max(LEAST_TRIED, MOST_TRIED // max(1, len(found)))
    orders: dict[tuple[int, int], Order] = {}
    steps: list[CutStep] = []
    setting = UNSET
    for stack in found:
        measured = stack[0][1]
        key = (measured.shape, setting)
        if key not in orders:
            orders[key] = best_order(measured, bench.trimmer, setting, most_tried)
        steps += _Player(stack, bench, len(steps), setting).played(orders[key].moves)
        setting = steps[-1].reading
    return tuple(steps)


def effort(steps: Sequence[CutStep], trimmer: Trimmer) -> Effort:
    """What the cuts cost on a trimmer, counted from the steps."""
    return total(
        Effort(
            narrow=int(step.axis.along(step.kept.rect) < trimmer.shortest),
            settings=int(step.is_set_now),
            quarter_turns=abs(step.turned),
            pick_ups=int(step.arrival is Arrival.PICKED_UP),
            unusual=int(step.quarter_turns_left != lie(step.axis, usual_end(step.axis, trimmer.hand), trimmer.hand)),
            reach=step.reading if step.is_set_now else 0,
        )
        for step in steps
    )


@dataclass(frozen=True, slots=True)
class _Held:
    """A part that lies on the board or is set aside; with those of equal sheets that lie on it.

    Attributes:
        parts: One for each sheet: the row or column that is cut, of which the last ones may be gone.
        lying: What is left of it, and how it lies.
        number: The cut that set it aside or left it on the board, 0 for a new sheet.
        is_kept: Whether it stayed under the clamp then.
    """

    parts: tuple[Measured, ...]
    lying: Lying
    number: int = 0
    is_kept: bool = False

    @property
    def children(self) -> tuple[Measured, ...]:
        """The columns or rows of the first sheet that are left, the one that falls next first."""
        children = self.parts[0].children
        return (children if self.lying.end == End.FIRST else children[::-1])[self.lying.done :]

    @property
    def rect(self) -> Rect:
        """Its place on the sheet as designed, ticks."""
        return _around(part.rect for part in self.left)

    @property
    def true(self) -> Rect:
        """Where it truly lies there by the marks of the scale, ticks."""
        return _around(part.true_rect for part in self.left)

    @property
    def left(self) -> tuple[Measured, ...]:
        """What is left of the first sheet: all of the part, or the columns or rows that have not fallen."""
        return self.children if self.lying.done else self.parts[:1]


class _Player:
    """Plays the moves of one stack out, and notes every cut."""

    def __init__(self, stack: Stack, bench: Bench, made: int, setting: int) -> None:
        self._sheets = tuple(sheet.number for sheet, _ in stack)
        self._bench, self._made, self._setting = bench, made, setting
        parts = tuple(measured for _, measured in stack)
        self._board: _Held | None = _Held(parts, Lying(parts[0].shape))
        self._aside: list[_Held] = []
        self._steps: list[CutStep] = []
        self._until: dict[tuple[int, bool], int] = {}

    def played(self, moves: Sequence[Move]) -> list[CutStep]:
        """The cuts of all moves; what is set aside knows when its turn comes."""
        for move in moves:
            self._cut(move)
        return [self._foretold(step) for step in self._steps]

    def _cut(self, move: Move) -> None:
        number = self._made + len(self._steps) + 1
        held, arrival = self._taken(move, number)
        trimmer = self._bench.trimmer
        axis = _axis(held.parts[0])
        lies = lie(axis, move.end, trimmer.hand)
        setting = held.parts[0].settings[move.end][held.lying.done]
        started = replace(held, lying=replace(held.lying, end=move.end))
        falling, kept = _fallen(started, number, lies), _kept(started, number, lies)
        self._steps.append(
            CutStep(
                number=number,
                sheets=self._sheets,
                on_board=held.rect,
                true_board=held.true,
                arrival=arrival,
                set_aside_at=held.number if arrival is Arrival.PICKED_UP else 0,
                had_stayed=held.is_kept and arrival is Arrival.PICKED_UP,
                axis=axis,
                quarter_turns_left=lies,
                turned=turn(held.lying.lies, lies),
                measures=trimmer.measures,
                exact=setting.exact,
                reading=setting.reading,
                is_set_now=setting.reading != self._setting,
                kept=_share(kept, Fate.ON_BOARD),
                falling=_share(falling, Fate.SET_ASIDE),
                where=falling.parts[0].region.where,
            )
        )
        self._setting = setting.reading
        self._board = kept if kept.parts[0].children else None
        self._aside += [falling] if falling.parts[0].children else []

    def _taken(self, move: Move, number: int) -> tuple[_Held, Arrival]:
        """The part that is cut, and how it comes to the board; another one that lies there is set aside."""
        if self._board and self._board.lying == move.part:
            return self._board, Arrival.STAYS if self._steps else Arrival.NEW_SHEET
        held = next(each for each in reversed(self._aside) if each.lying == move.part)
        self._aside.remove(held)
        self._until[held.number, held.is_kept] = number
        self._aside += [self._board] if self._board else []
        return held, Arrival.PICKED_UP

    def _foretold(self, step: CutStep) -> CutStep:
        kept, falling = (self._until.get((step.number, is_kept), 0) for is_kept in (True, False))
        if kept:
            step = replace(step, kept=replace(step.kept, fate=Fate.SET_ASIDE, until=kept))
        return replace(step, falling=replace(step.falling, until=falling)) if falling else step


def _fallen(held: _Held, number: int, lies: int) -> _Held:
    """The column or row that falls next."""
    return _child(held, held.lying.done, _Held((), Lying(0, lies=lies), number))


def _kept(held: _Held, number: int, lies: int) -> _Held:
    """What then stays."""
    if len(held.children) > 2:
        lying = replace(held.lying, done=held.lying.done + 1, lies=lies)
        return _Held(held.parts, lying, number, is_kept=True)
    return _child(held, held.lying.done + 1, _Held((), Lying(0, lies=lies), number, is_kept=True))


def _child(held: _Held, index: int, like: _Held) -> _Held:
    """The column or row at an index, counted from the end that falls, of every sheet."""
    at = index if held.lying.end == End.FIRST else len(held.parts[0].children) - 1 - index
    parts = tuple(part.children[at] for part in held.parts)
    return replace(like, parts=parts, lying=replace(like.lying, shape=parts[0].shape))


def _share(held: _Held, fate: Fate) -> Share:
    """A part that a cut makes; `fate` is that of one that is cut further."""
    region = held.parts[0].region
    if held.parts[0].children:
        return Share(held.rect, held.true, fate)
    done = {Use.PIECE: Fate.PIECE, Use.SPARE: Fate.SPARE}.get(region.use or Use.SCRAP, Fate.SCRAP)
    return Share(held.rect, held.true, done, tuple(part.region.id for part in held.parts))


def _around(rects: Iterable[Rect]) -> Rect:
    """What columns or rows that lie side by side take together."""
    in_order = sorted(rects)
    first, last = in_order[0], in_order[-1]
    return Rect.between(first.left, first.top, last.right, last.bottom)


def _axis(part: Measured) -> Axis:
    if part.axis is None:
        raise ValueError("a part that is not split takes no cut")
    return part.axis
