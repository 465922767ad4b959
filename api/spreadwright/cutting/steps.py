"""The steps at the trimmer: from a cut sheet and a bench to numbered cuts.

The board in mind: the blade at its right edge, the part on it pushed against the fence at the top, so a cut runs from
top to bottom and what lies right of the blade falls. Columns are cut as the part lies; for rows it is turned a quarter
to the left first, so that its top edge lies left. Either way the last column or row falls first, and every reading
of a trimmer that measures the part kept counts from one and the same edge: rounding never adds up.

Handling stays low by three habits: all parallel cuts of a part are made before it is moved; what stays on the board is
cut further before anything is picked up; what was set aside last is picked up first, so equal strips follow each other.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import StrEnum

from spreadwright.cutting.parts import CutSheet, Region
from spreadwright.geometry import Rect
from spreadwright.lengths import nearest
from spreadwright.model import Axis, Bench, Measures, Use


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
        rect: Its place on the sheet, ticks.
        id: The piece or spare that it is, empty when it is cut further.
    """

    rect: Rect
    fate: Fate
    id: str = ""


@dataclass(frozen=True, slots=True)
class CutStep:
    """One cut, with everything that is needed to say it and to draw it.

    Attributes:
        number: Counts through the whole recipe, from 1.
        on_board: The part that is cut, as a place on the sheet, ticks.
        arrival: Whether it is a new sheet, still lies there, or is picked up from those set aside.
        axis: Whether the cut makes columns or rows of the sheet.
        quarter_turns_left: How it lies on the board, from the sheet upright: 0 for columns, 1 for rows.
        is_turned_now: Whether it is turned for this cut.
        exact: What the trimmer's scale should show, ticks.
        reading: The mark of the trimmer's scale nearest to it, ticks.
        kept: What stays under the clamp.
        falling: What falls.
    """

    number: int
    sheet: int
    on_board: Rect
    arrival: Arrival
    axis: Axis
    is_turned_now: bool
    measures: Measures
    exact: int
    reading: int
    kept: Share
    falling: Share
    where: str = field(default="", compare=False)

    @property
    def quarter_turns_left(self) -> int:
        """How the part lies on the board: 0 as on the upright sheet, 1 turned to the left."""
        return 0 if self.axis is Axis.COLUMNS else 1

    @property
    def length(self) -> int:
        """How long the cut is, ticks."""
        return self.on_board.height if self.axis is Axis.COLUMNS else self.on_board.width


def cut_steps(sheets: Sequence[CutSheet], bench: Bench) -> tuple[CutStep, ...]:
    """The cuts of all sheets in the order in which they are made.

    A sheet of n parts takes n - 1 cuts. Sheets must be free of errors: every extent known, every row filled.
    """
    cuts = (cut for sheet in sheets for cut in _sheet_steps(sheet, bench))
    return tuple(cut(number) for number, cut in enumerate(cuts, start=1))


@dataclass(frozen=True, slots=True)
class _Cut:
    """A cut that has everything but its number."""

    sheet: CutSheet
    bench: Bench
    region: Region
    index: int
    arrival: Arrival
    is_turned_now: bool

    def __call__(self, number: int) -> CutStep:
        region, axis = self.region, _axis(self.region)
        exact = reading_of(region, self.index, self.bench.trimmer.measures)
        falling = _single(region.children[self.index])
        return CutStep(
            number=number,
            sheet=self.sheet.number,
            on_board=_span(region, self.index),
            arrival=self.arrival,
            axis=axis,
            is_turned_now=self.is_turned_now,
            measures=self.bench.trimmer.measures,
            exact=exact,
            reading=nearest(exact, self.bench.trimmer.graduation),
            kept=self._kept(),
            falling=Share(_rect(falling), _fate(falling), falling.id),
            where=falling.where,
        )

    def _kept(self) -> Share:
        first = _single(self.region.children[0])
        if self.index > 1 or first.axis is not None:
            return Share(_span(self.region, self.index - 1), Fate.ON_BOARD)
        return Share(_rect(first), _fate(first), first.id)


def _sheet_steps(sheet: CutSheet, bench: Bench) -> Iterator[_Cut]:
    """Walks the tree with a stack of the parts set aside; the last one set aside is on top."""
    waiting = [(_single(sheet.root), Arrival.NEW_SHEET, Axis.COLUMNS)]
    while waiting:
        region, arrival, lies = waiting.pop()
        if region.axis is None:
            continue
        axis = region.axis
        for index in range(len(region.children) - 1, 0, -1):
            is_first = index == len(region.children) - 1
            yield _Cut(sheet, bench, region, index, arrival if is_first else Arrival.STAYS, is_first and lies != axis)
        aside = [(_single(child), Arrival.PICKED_UP, axis) for child in region.children[:0:-1]]
        waiting += [*aside, (_single(region.children[0]), Arrival.STAYS, axis)]


def _single(region: Region) -> Region:
    """A region without the splits that have only one part, which take no cut."""
    while len(region.children) == 1:
        region = region.children[0]
    return region


def readings(region: Region, measures: Measures) -> tuple[int, ...]:
    """What the trimmer's scale should show for each cut of a split part, in the order of the cuts, ticks.

    The part must be filled and its extents known.
    """
    return tuple(reading_of(region, index, measures) for index in range(len(region.children) - 1, 0, -1))


def reading_of(region: Region, index: int, measures: Measures) -> int:
    """The reading for the cut by which one column or row falls: its own extent, or that of all before it."""
    extents = [child.along(_axis(region)) or 0 for child in region.children]
    return extents[index] if measures is Measures.FALLING else sum(extents[:index])


def _span(region: Region, last: int) -> Rect:
    """The part of a split region from its first child to the one at `last`."""
    start, end = _rect(region), _rect(region.children[last])
    return Rect.between(start.left, start.top, end.right, end.bottom)


def _fate(region: Region) -> Fate:
    region = _single(region)
    if region.axis is not None:
        return Fate.SET_ASIDE
    return {Use.PIECE: Fate.PIECE, Use.SPARE: Fate.SPARE}.get(region.use or Use.SCRAP, Fate.SCRAP)


def _rect(region: Region) -> Rect:
    if region.rect is None:
        raise ValueError("a sheet with unknown extents cannot be cut; check the recipe first")
    return region.rect


def _axis(region: Region) -> Axis:
    if region.axis is None:
        raise ValueError("a part that is not split takes no cut")
    return region.axis
