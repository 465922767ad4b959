"""What may come out wrong in a layout although the recipe is right: each with how far it can go, and may go.

Here is what spoils the layout, judged by the worst case: paper over the edge of the page, a mat narrower than what lies
on it. What only shows is in `blemishes`.
"""

from abc import ABC, abstractmethod
from dataclasses import dataclass

from spreadwright.errors import Finding, warning
from spreadwright.lengths import Unit, told, told_up
from spreadwright.model import Axis, Photo
from spreadwright.placing import End
from spreadwright.tolerance.deviation import Deviation, Source, total
from spreadwright.tolerance.laid import Laid, Layout
from spreadwright.tolerance.neighbours import Row
from spreadwright.tolerance.trace import Traced
from spreadwright.words import gettext as _
from spreadwright.words import listed

PHOTO = "photo"
"""The kind of source that trimming a photo is."""


class Doubt(ABC):
    """One thing that may come out wrong."""

    @property
    @abstractmethod
    def names(self) -> tuple[str, ...]:
        """Of the pieces, without their numbers; of doubts of one kind about equal names one is told."""

    @property
    @abstractmethod
    def limit(self) -> int:
        """How far it may go, ticks."""

    @abstractmethod
    def reach(self, found: Traced) -> int:
        """How far it can go, ticks, given the sides of the parts."""

    @property
    @abstractmethod
    def remedy(self) -> str:
        """What helps on any bench."""

    @property
    def is_of_cuts(self) -> bool:
        """Whether another order of the cuts is the thing to try first."""
        return True

    @abstractmethod
    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """The finding about it."""


@dataclass(frozen=True)
class RowOverPage(Doubt):
    """Pieces edge to edge that could together be larger than their page."""

    row: Row
    axis: Axis

    @property
    def names(self) -> tuple[str, ...]:
        """Every name once."""
        return tuple(sorted({each.name for each in self.row}))

    @property
    def limit(self) -> int:
        """Nothing may stand over."""
        return 0

    def reach(self, found: Traced) -> int:
        """The most by which they are too long together."""
        return total(each.side(self.axis, found) for each in self.row).highest

    @property
    def remedy(self) -> str:
        """Trimming; of several, what is laid last."""
        alone = {
            Axis.COLUMNS: _("Trim “{piece}” to the width of the page, or cut it from the whole width of a sheet."),
            Axis.ROWS: _("Trim “{piece}” to the height of the page, or cut it from the whole height of a sheet."),
        }
        together = {
            Axis.COLUMNS: _(
                "Lay “{piece}” last and trim what stands over, or cut the row from the whole width of one sheet."
            ),
            Axis.ROWS: _(
                "Lay “{piece}” last and trim what stands over, or cut the row from the whole height of one sheet."
            ),
        }
        said = alone if len(self.row) == 1 else together
        return said[self.axis].format(piece=self.row[-1].id)

    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """Told at the last piece of the row."""
        ids = listed([_("“{piece}”").format(piece=each.id) for each in self.row])
        message = self._told.format(pieces=ids, off=told_up(reach, unit))
        return warning("row-overhangs-page", self.row[-1].placed.where, message, remedy)

    @property
    def _told(self) -> str:
        if len(self.row) == 1:
            alone = {
                Axis.COLUMNS: _("{pieces} may come out up to {off} wider than the page."),
                Axis.ROWS: _("{pieces} may come out up to {off} higher than the page."),
            }
            return alone[self.axis]
        together = {
            Axis.COLUMNS: _("{pieces} may together come out up to {off} wider than the page."),
            Axis.ROWS: _("{pieces} may together come out up to {off} higher than the page."),
        }
        return together[self.axis]


@dataclass(frozen=True)
class PastEdge(Doubt):
    """A piece that could stand over an edge of the page by the errors of what it is laid by."""

    piece: Laid
    axis: Axis
    end: End
    page: int
    layout: Layout

    @property
    def names(self) -> tuple[str, ...]:
        """The name."""
        return (self.piece.name,)

    @property
    def limit(self) -> int:
        """What is free beyond it."""
        return self.piece.near(self.axis) if self.end is End.START else self.page - self.piece.far(self.axis)

    def reach(self, found: Traced) -> int:
        """How far that edge can move outward."""
        edge = self.layout.edge(self.piece.id, self.axis, self.end, found)
        return (edge if self.end is End.END else -edge).highest

    @property
    def remedy(self) -> str:
        """Another move; or more room, or none."""
        if not self.is_of_cuts:
            said = _("Measure it from the {edge} of the page, not by what lies on it.")
        elif self.limit:
            said = _("Leave more room to the {edge}, or lay it flush with that.")
        else:
            said = _("Leave some room to the {edge}, or trim what stands over.")
        return said.format(edge=self._edge)

    @property
    def is_of_cuts(self) -> bool:
        """Not where one reading from that edge would do."""
        return self.limit < self.layout.reading

    @property
    def _edge(self) -> str:
        said = {
            Axis.COLUMNS: (_("left edge"), _("right edge")),
            Axis.ROWS: (_("top edge"), _("bottom edge")),
        }
        return said[self.axis][self.end is End.END]

    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """Told at its placement."""
        said = (
            _("“{piece}” should lie {free} from the {edge} of the page and may come out {off} further, over the edge.")
            if self.limit
            else _("“{piece}” should lie flush with the {edge} of the page and may come out {off} further, over it.")
        )
        free, off = told(self.limit, unit), told_up(reach, unit)
        message = said.format(piece=self.piece.id, free=free, edge=self._edge, off=off)
        return warning("piece-overhangs-page", self.piece.placed.where, message, remedy)


@dataclass(frozen=True)
class PhotoOverMat(Doubt):
    """A photo that could be wider than its mat."""

    photo: Photo
    mat: Laid
    axis: Axis
    accuracy: int

    @property
    def names(self) -> tuple[str, ...]:
        """Of the mat, with its number: each photo has a border of its own."""
        return (self.mat.id,)

    @property
    def limit(self) -> int:
        """Less than both borders together."""
        return 2 * (self.photo.border or 0) - 1

    def reach(self, found: Traced) -> int:
        """How much of the borders a wide photo and a narrow mat can take; the photo is trimmed by one cut."""
        trimmed = Deviation.of(Source(PHOTO, 0, self.accuracy))
        return (trimmed - self.mat.side(self.axis, found)).highest

    @property
    def remedy(self) -> str:
        """A wider border."""
        return _("Make the border wider, or trim the photo to the mat as it came out.")

    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """Told at the photo."""
        said = {
            Axis.COLUMNS: _(
                "The photo on “{piece}” should be {borders} less wide than its mat; both may be off by {off} together, "
                "so the mat may vanish under it."
            ),
            Axis.ROWS: _(
                "The photo on “{piece}” should be {borders} less high than its mat; both may be off by {off} together, "
                "so the mat may vanish under it."
            ),
        }
        borders = told(2 * (self.photo.border or 0), unit)
        message = said[self.axis].format(piece=self.mat.id, borders=borders, off=told_up(reach, unit))
        return warning("mat-narrower-than-photo", self.photo.where, message, remedy)


@dataclass(frozen=True)
class NestedSticksOut(Doubt):
    """A piece within another that could come out wider than it."""

    lower: Laid
    upper: Laid
    axis: Axis

    @property
    def names(self) -> tuple[str, ...]:
        """Both names."""
        return (self.lower.name, self.upper.name)

    @property
    def limit(self) -> int:
        """Less than what the lower one shows on both sides together."""
        return self.lower.length(self.axis) - self.upper.length(self.axis) - 1

    def reach(self, found: Traced) -> int:
        """How much too wide the upper one can be for the lower one."""
        return (self.upper.side(self.axis, found) - self.lower.side(self.axis, found)).highest

    @property
    def remedy(self) -> str:
        """A wider margin."""
        said = _("Let “{lower}” show more beside “{upper}”, or trim one to the other.")
        return said.format(lower=self.lower.name, upper=self.upper.name)

    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """Told at the upper one."""
        said = _(
            "“{lower}” shows {shown} beside “{upper}” on both sides together; both may be off by {off}, "
            "so the upper one may stand over."
        )
        shown, off = told(self.limit + 1, unit), told_up(reach, unit)
        message = said.format(lower=self.lower.id, shown=shown, upper=self.upper.id, off=off)
        return warning("nested-piece-overhangs", self.upper.placed.where, message, remedy)
