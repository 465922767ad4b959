"""What the marks of a trimmer's scale make of a sheet: cuts between two of them, and what parts then come out as."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spreadwright.cutting.lie import End
from spreadwright.cutting.measured import Gauge, Measured
from spreadwright.cutting.parts import CutSheet, Region
from spreadwright.errors import Finding, error, note, warning
from spreadwright.lengths import TICKS, Unit, neighbours, on_scale, told, told_size, told_up
from spreadwright.model import Axis, Bench, Use
from spreadwright.words import the_first

_MOST_NAMED = 6
"""Pieces that are named in one finding."""
_SMALL_CHANGE = TICKS[Unit.INCH] // 32
"""What a part may change by less than for nothing to be done about it, ticks."""


def marks_findings(sheets: Sequence[CutSheet], bench: Bench, unit: Unit) -> Iterator[Finding]:
    """About equal sheets at once: one finding on all cuts, one on all parts, and one on each part that is lost.

    What was designed is told in `unit`, that of the recipe, what comes out in that of the bench.
    """
    gauge = Gauge(bench.trimmer)
    known = [gauge.part(region) for region in _known(sheets[0].root)]
    splits = [split for part in known for split in part.splits()]
    lost = [split for split in splits if split.lost]
    yield from (_lost(split, bench) for split in lost)
    cuts = [cut for split in splits if not split.lost for cut in _cuts(split)]
    leaves = [leaf for part in known for leaf in part.leaves()]
    if any(cut.off for cut in cuts):
        yield _off_marks(sheets, cuts, leaves, bench)
    changed = sorted((leaf for leaf in leaves if _change(leaf)), key=_change, reverse=True)
    if changed and not lost:
        yield _rounded(sheets, changed, bench, unit)


@dataclass(frozen=True, slots=True)
class _Cut:
    """One cut of a sheet: what should be set, what is, and the parts on both sides."""

    exact: int
    reading: int
    before: Region
    after: Region

    @property
    def off(self) -> int:
        """How far the mark that is set lies from what should be, ticks."""
        return abs(self.reading - self.exact)


def _cuts(part: Measured) -> Iterator[_Cut]:
    """The cuts that make the columns or rows of one part, counted from the end that falls as usual."""
    end, settings = next(iter(part.settings.items()))
    regions = [child.region for child in part.children]
    for index, setting in enumerate(settings):
        at = index if end is End.FIRST else len(regions) - 2 - index
        yield _Cut(setting.exact, setting.reading, *regions[at : at + 2])


def _known(region: Region) -> Iterator[Region]:
    """The largest parts of which every extent is known and every row filled."""
    if _is_known(region):
        yield region
        return
    for child in region.children:
        yield from _known(child)


def _is_known(region: Region) -> bool:
    if region.rect is None:
        return False
    return region.axis is None or (_is_filled(region, region.axis) and all(map(_is_known, region.children)))


def _is_filled(region: Region, axis: Axis) -> bool:
    extents = [child.along(axis) for child in region.children]
    return None not in extents and sum(extent or 0 for extent in extents) == region.along(axis)


def _lost(part: Measured, bench: Bench) -> Finding:
    """Cuts so close together that the scale shows one mark for two of them, or none before the edge."""
    lost = (part.axis or Axis.COLUMNS).along(part.lost[0].rect)
    message = (
        f"The part of {told(lost, bench.unit)} begins and ends at the same mark of the trimmer’s "
        "scale, so nothing would be cut."
    )
    remedy = "Make the parts wider, or use a trimmer with a finer scale."
    return error("cut-lost-between-marks", part.region.where, message, remedy)


def _off_marks(sheets: Sequence[CutSheet], cuts: Sequence[_Cut], leaves: Sequence[Measured], bench: Bench) -> Finding:
    """All cuts of a sheet whose places no mark shows, told by the one that is furthest off."""
    unit, mark = bench.unit, bench.trimmer.graduation
    off, worst = [cut for cut in cuts if cut.off], max(cuts, key=lambda cut: cut.off)
    below, above = (on_scale(each, mark, unit) for each in neighbours(worst.exact, mark))
    before, after = called(worst.before, unit), called(worst.after, unit)
    many = "the only cut falls" if len(cuts) == 1 else f"{len(off)} of {len(cuts)} cuts fall"
    message = (
        f"{_sheets(sheets)}: {many} between two marks of the trimmer’s scale, up to {told_up(worst.off, unit)} "
        f"from the nearest one. Between {before} and {after} it should be set to {told(worst.exact, unit)}, where "
        f"there are only {below} and {above}.{_named([leaf.region for leaf in leaves if _change(leaf)])}"
    )
    remedy = (
        f"The steps set the nearest marks, here {on_scale(worst.reading, mark, unit)}, and no error is carried on. "
        f"Lengths that are multiples of {on_scale(mark, mark, unit)} or a finer scale would meet every mark."
    )
    return warning("off-graduation", sheets[0].where, message, remedy)


def _rounded(sheets: Sequence[CutSheet], changed: Sequence[Measured], bench: Bench, unit: Unit) -> Finding:
    """What parts come to when every cut lies on the mark nearest to its place, the largest changes first."""
    shown = the_first([_outcome(leaf, bench.unit, unit) for leaf in changed], _MOST_NAMED)
    message = f"{_sheets(sheets)}: by the marks of the trimmer’s scale parts come out otherwise: {shown}."
    most = _change(changed[0])
    advice = "Nothing has to be done"
    if most >= _SMALL_CHANGE:
        advice = f"A part changes by up to {told_up(most, bench.unit)}: check the design, or use a finer scale"
    remedy = f"{advice}. Every cut lies on the mark nearest to its place, so together the parts are still the sheet."
    return note("rounded-to-marks", sheets[0].where, message, remedy)


def _outcome(leaf: Measured, came_in: Unit, meant_in: Unit) -> str:
    true, designed = leaf.true_rect, leaf.rect
    name = f"“{leaf.region.id}”" if leaf.region.use is Use.PIECE else "a spare"
    came, meant = told_size(true.width, true.height, came_in), told_size(designed.width, designed.height, meant_in)
    return f"{name} as {came} for {meant}"


def _change(leaf: Measured) -> int:
    """How far the side comes out off that changes most, ticks."""
    true, designed = leaf.true_rect, leaf.rect
    return max(abs(true.width - designed.width), abs(true.height - designed.height))


def _named(regions: Sequence[Region]) -> str:
    """The pieces among parts, by name, as a sentence; nothing where there is none."""
    names = [f"“{region.id}”" for region in regions if region.use is Use.PIECE]
    return f" Concerned: {the_first(names, _MOST_NAMED)}." if names else ""


def _sheets(sheets: Sequence[CutSheet]) -> str:
    first, last = sheets[0].number, sheets[-1].number
    if first == last:
        return f"Sheet {first}"
    return f"Sheets {first} {'and' if last == first + 1 else 'to'} {last}, each"


def called(region: Region, unit: Unit) -> str:
    """What a part is called: by the name of its piece, else by its size."""
    if region.axis is None and region.use is Use.PIECE:
        return f"“{region.id}”"
    width, height = region.across.length, region.down.length
    return f"the part of {told_size(width, height, unit)}" if width and height else "a part"
