"""Sizes as they are told to whoever cuts: to the marks of the trimmer's scale, as parts truly come out.

What is rounded is where edges lie on the sheet, not how wide parts are: so parts that lie side by side add up to what
they are cut from, and what the scale measures is told as its reading.
"""

from collections.abc import Iterable, Iterator, Mapping

from spreadwright.cutting.measured import Gauge, Measured
from spreadwright.cutting.parts import CutSheet
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import nearest, told_size, told_up
from spreadwright.model import Bench, Trimmer, Use
from spreadwright.words import gettext as _


def told_rect(true: Rect, trimmer: Trimmer) -> Rect:
    """A part of a sheet with every edge on the mark nearest to it, counted from the sheet's top left corner."""
    return Rect.between(*(nearest(edge, trimmer.graduation) for edge in (true.left, true.top, true.right, true.bottom)))


def told_part(true: Rect, bench: Bench) -> str:
    """The size of a part of a sheet in words, from where it truly lies."""
    rect = told_rect(true, bench.trimmer)
    return told_size(rect.width, rect.height, bench.unit)


def told_sizes(sheets: Iterable[CutSheet], bench: Bench) -> Mapping[str, Size]:
    """The size of every piece as it is told, by id, unturned; as designed where the scale shows nothing of it.

    Args:
        sheets: Sheets of which every extent is known and every row filled.
        bench: Whose marks count.
    """
    return {
        leaf.region.id: size if min(size.width, size.height) > 0 else leaf.rect.size
        for leaf in _leaves(sheets, bench)
        if leaf.region.use is Use.PIECE and (size := told_rect(leaf.true_rect, bench.trimmer).size)
    }


def rounding(sheets: Iterable[CutSheet], bench: Bench) -> str:
    """What the marks of the scale do to the sizes of a recipe, in words; empty where they show all of them."""
    leaves = list(_leaves(sheets, bench))
    if all(told_rect(leaf.true_rect, bench.trimmer).size == leaf.rect.size for leaf in leaves):
        return ""
    furthest = max(max(_off(leaf)) for leaf in leaves)
    if not furthest:
        return _("Sizes are told to the nearest mark of your scale.")
    said = _(
        "Your scale does not show all sizes of this recipe: its nearest marks are told, and by them parts come out "
        "up to {off} larger or smaller than designed."
    )
    return said.format(off=told_up(furthest, bench.unit))


def _leaves(sheets: Iterable[CutSheet], bench: Bench) -> Iterator[Measured]:
    gauge = Gauge(bench.trimmer)
    return (leaf for sheet in sheets for leaf in gauge.sheet(sheet).leaves())


def _off(leaf: Measured) -> tuple[int, int]:
    """How far both sides come out off, ticks."""
    return abs(leaf.true_rect.width - leaf.rect.width), abs(leaf.true_rect.height - leaf.rect.height)
