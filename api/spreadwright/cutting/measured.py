"""What the scale shows for every cut of a sheet: readings on marks, counted so that rounding never adds up.

A reading is the mark nearest to the distance between the designed place of a cut and the *true* place of the edge
that it is measured from: the error of one cut is made good by the next. So every cut of a sheet lies within half a
mark of where it was designed, however deep it lies in the tree, and the parts still add up to the paper that is
there.

Where all places along one direction of a sheet lie on marks, a row or column may be cut from either end. Otherwise
cuts count from the usual one: from the left edge, or for a left hand from the right one, and from the top edge. In
both cases an end is passed over where the other one leaves fewer strips under the clamp that are too narrow to hold.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import pairwise
from typing import TypeVar

from spreadwright.cutting.lie import End, usual_end
from spreadwright.cutting.parts import CutSheet, Region
from spreadwright.geometry import Rect
from spreadwright.lengths import nearest
from spreadwright.model import Axis, Measures, Trimmer

_Thing = TypeVar("_Thing")

Edges = tuple[int, int]
"""Where something begins and ends along one axis, ticks on the sheet."""


@dataclass(frozen=True, slots=True)
class Setting:
    """What the scale shows for one cut: what it should, and its mark nearest to that, ticks."""

    exact: int
    reading: int


@dataclass(frozen=True, slots=True)
class Measured:
    """A part of a sheet with what the scale shows for its cuts.

    Attributes:
        region: The part; splits that have only one part and take no cut are passed over.
        across: Where it truly begins and ends from left to right, once it is cut.
        down: The same from top to bottom.
        settings: For each end that may fall first, one entry for each cut, in the order of the cuts; the usual end
            comes first where it may fall.
        children: Its columns or rows.
        shape: Equal for parts that are cut alike, whatever their pieces are called.
    """

    region: Region
    across: Edges
    down: Edges
    settings: Mapping[End, tuple[Setting, ...]]
    children: tuple["Measured", ...]
    shape: int

    @property
    def axis(self) -> Axis | None:
        """What its cuts make; None where it takes none."""
        return self.region.axis

    @property
    def rect(self) -> Rect:
        """Its place on the sheet as designed, ticks."""
        if self.region.rect is None:
            raise ValueError("a sheet with unknown extents cannot be cut; check the recipe first")
        return self.region.rect

    @property
    def true_rect(self) -> Rect:
        """Where it truly lies on the sheet once it is cut, ticks."""
        return Rect.between(self.across[0], self.down[0], self.across[1], self.down[1])

    @property
    def lost(self) -> tuple["Measured", ...]:
        """The columns or rows for both ends of which the scale shows one mark."""
        return tuple(child for child in self.children if child.true(self.axis or Axis.COLUMNS) <= 0)

    def true(self, axis: Axis) -> int:
        """How long it truly comes out from left to right, or from top to bottom, ticks."""
        start, end = self.across if axis is Axis.COLUMNS else self.down
        return end - start

    def kept(self, end: End, done: int) -> int:
        """How wide what stays under the clamp is designed to be when `done` cuts are made and one more falls, ticks."""
        left = self.children[done + 1 :] if end is End.FIRST else self.children[: len(self.children) - done - 1]
        axis = self.axis or Axis.COLUMNS
        return sum(child.region.along(axis) or 0 for child in left)

    def splits(self) -> Iterator["Measured"]:
        """Every part that takes cuts, from this one down."""
        if self.children:
            yield self
        for child in self.children:
            yield from child.splits()

    def leaves(self) -> Iterator["Measured"]:
        """The parts that take none."""
        if not self.children:
            yield self
        for child in self.children:
            yield from child.leaves()


@dataclass(frozen=True, slots=True)
class Gauge:
    """Measures the sheets of one maker; parts of equal shape get equal numbers."""

    trimmer: Trimmer
    shapes: dict[object, int] = field(default_factory=dict)

    def sheet(self, sheet: CutSheet) -> Measured:
        """A sheet of which every extent is known and every row filled."""
        return self.part(sheet.root)

    def part(self, region: Region) -> Measured:
        """The same of a part, as if its edges were where they were designed.

        Counted from another end, a part no wider than a mark may be lost; then all cuts count from the usual one.
        """
        free = frozenset(axis for axis in Axis if _is_on_marks(region, axis, self.trimmer.graduation))
        across, down = _edges(region, Axis.COLUMNS), _edges(region, Axis.ROWS)
        found = self._part(region, across, down, free, is_safest=True)
        if not _is_lost(found):
            return found
        plain = self._part(region, across, down, free, is_safest=False)
        return found if _is_lost(plain) else plain

    def _part(self, region: Region, across: Edges, down: Edges, free: frozenset[Axis], *, is_safest: bool) -> Measured:
        while len(region.children) == 1:
            region = region.children[0]
        axis = region.axis
        if axis is None:
            return Measured(region, across, down, {}, (), 0)
        true = across if axis is Axis.COLUMNS else down
        usual = usual_end(axis, self.trimmer.hand)
        inner = [start for start, _ in (_edges(child, axis) for child in region.children[1:])]
        ends = self._safest(inner, _edges(region, axis), usual) if is_safest else (usual, usual.other)
        counted = {end: self._cuts(inner, true, end) for end in (ends if axis in free else ends[:1])}
        allowed = {end: settings for end, (settings, _) in counted.items()}
        shares = list(pairwise([true[0], *counted[ends[0]][1], true[1]]))
        measured = [
            self._part(child, *((share, down) if axis is Axis.COLUMNS else (across, share)), free, is_safest=is_safest)
            for child, share in _from_kept_end(list(zip(region.children, shares, strict=True)), usual)
        ]
        children = tuple(_from_kept_end(measured, usual))
        shape = self._shape(region, across, down, allowed, children)
        return Measured(region, across, down, allowed, children, shape)

    def _safest(self, inner: list[int], designed: Edges, usual: End) -> tuple[End, ...]:
        """The ends that leave the fewest narrow strips under the clamp when they fall; the usual one comes first."""
        held = {
            end: sum(
                self.trimmer.shortest > (place - designed[0] if end is End.LAST else designed[1] - place)
                for place in inner
            )
            for end in (usual, usual.other)
        }
        return tuple(end for end, narrow in held.items() if narrow == min(held.values()))

    def _cuts(self, inner: list[int], true: Edges, end: End) -> tuple[tuple[Setting, ...], list[int]]:
        """The settings in the order of the cuts, and the true places of the cuts from first to last.

        Args:
            inner: The designed places of the cuts, from first to last.
            true: Where the part truly begins and ends.
            end: Which falls first.
        """
        ordered = inner[::-1] if end is End.LAST else inner
        is_kept = self.trimmer.measures is Measures.KEPT
        from_start = is_kept == (end is End.LAST)
        edge = true[0] if from_start else true[1]
        settings, cuts = [], []
        for place in ordered:
            exact = place - edge if from_start else edge - place
            setting = Setting(exact, nearest(exact, self.trimmer.graduation))
            settings.append(setting)
            cuts.append(edge + setting.reading if from_start else edge - setting.reading)
            edge = edge if is_kept else cuts[-1]
        return tuple(settings), cuts if end is End.FIRST else cuts[::-1]

    def _shape(
        self,
        region: Region,
        across: Edges,
        down: Edges,
        settings: Mapping[End, tuple[Setting, ...]],
        children: tuple[Measured, ...],
    ) -> int:
        size = (across[1] - across[0], down[1] - down[0])
        rect = region.rect
        shown = tuple((end, settings[end]) for end in End if end in settings)
        key = (region.axis, rect.size if rect else None, size, shown, tuple(child.shape for child in children))
        return self.shapes.setdefault(key, len(self.shapes) + 1)


def _from_kept_end(things: list[_Thing], falling: End) -> list[_Thing]:
    """From the end that is kept to the one that falls, so that a left hand goes through a tree as in a mirror."""
    return things if falling is End.LAST else things[::-1]


def _edges(region: Region, axis: Axis) -> Edges:
    span = region.across if axis is Axis.COLUMNS else region.down
    if span.start is None or span.length is None:
        raise ValueError("a sheet with unknown extents cannot be cut; check the recipe first")
    return span.start, span.start + span.length


def _is_lost(measured: Measured) -> bool:
    """Whether any of its parts is."""
    return any(part.lost for part in measured.splits())


def _is_on_marks(region: Region, axis: Axis, graduation: int) -> bool:
    """Whether all places along an axis lie on marks, those of the sheet's edges included."""
    own = all(edge % graduation == 0 for edge in _edges(region, axis))
    return own and all(_is_on_marks(child, axis, graduation) for child in region.children)
