"""Follows the sizes of paper through the cuts: what each part's sides depend on.

The part that is measured comes out as long as the scale shows, but for the error of this cut alone: where its other
edge came from does not matter, the measuring starts there. What remains is the whole less that, and takes up the errors
of both. Cuts are taken as square, so the side along a cut is that of the whole.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from spreadwright.cutting import CutSheet
from spreadwright.geometry import Rect
from spreadwright.model import Axis
from spreadwright.tolerance.deviation import EXACT, Deviation
from spreadwright.tolerance.partings import Parting

FACTORY = 0
"""Stands for the cut that made an edge when none did: the sheet came with it."""


@dataclass(frozen=True, slots=True)
class Side:
    """One direction of a part.

    Attributes:
        deviation: Of its length.
        edges: The numbers of the cuts that made its first and its last edge; `FACTORY` for those of the sheet.
    """

    deviation: Deviation = EXACT
    edges: tuple[int, int] = (FACTORY, FACTORY)


@dataclass(frozen=True, slots=True)
class Sides:
    """Both directions of a part, as it lies on the upright sheet."""

    width: Side = Side()
    height: Side = Side()

    def along(self, axis: Axis) -> Side:
        """The one that columns, or rows, share out."""
        return self.width if axis is Axis.COLUMNS else self.height

    def with_side(self, axis: Axis, side: Side) -> "Sides":
        """The same with another one."""
        return replace(self, width=side) if axis is Axis.COLUMNS else replace(self, height=side)


Traced = dict[str, Sides]
"""The sides of every part by its id; a piece's id stands for one part of one sheet."""


def traced(sheets: Iterable[CutSheet], cuts: Sequence[Parting]) -> Traced:
    """The sides of every part of the sheets.

    Args:
        sheets: Sheets that are filled, every extent known.
        cuts: Their cuts, each part cut off before it is cut further.
    """
    found: Traced = {}
    for sheet in sheets:
        known = _followed(sheet, [cut for cut in cuts if sheet.number in cut.sheets])
        found |= {part.id: known[part.rect] for part in sheet.parts if part.rect is not None and part.id}
    return found


def _followed(sheet: CutSheet, cuts: Iterable[Parting]) -> dict[Rect, Sides]:
    known = {sheet.root.rect: Sides()} if sheet.root.rect else {}
    for cut in cuts:
        known[cut.measured], known[cut.rest] = _parted(known[cut.on_board], cut)
    return known


def _parted(whole: Sides, cut: Parting) -> tuple[Sides, Sides]:
    side, number = whole.along(cut.axis), cut.source.number
    measured = Deviation.of(cut.source, cut.shift)
    parts = ((cut.measured, measured), (cut.rest, side.deviation - measured))
    is_first = (cut.measured.left, cut.measured.top) < (cut.rest.left, cut.rest.top)
    first, last = (side.edges[0], number), (number, side.edges[1])
    edges = (first, last) if is_first else (last, first)
    sides = [whole.with_side(cut.axis, Side(each, ends)) for (_, each), ends in zip(parts, edges, strict=True)]
    return sides[0], sides[1]
