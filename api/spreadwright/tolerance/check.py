"""What a bench's accuracy has to say about a recipe: what could come out wrong, and what helps."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import reduce
from itertools import islice, pairwise

from spreadwright.cutting import CutSheet, CutStep
from spreadwright.errors import Finding
from spreadwright.lengths import on_scale, told_up
from spreadwright.model import Axis, Bench, Recipe
from spreadwright.placing import End, PlacedPiece, PlaceStep
from spreadwright.tolerance.blemishes import STEP_AT_GUTTER, NotLevel, UnevenGap
from spreadwright.tolerance.doubts import Doubt, NestedSticksOut, PastEdge, PhotoOverMat, RowOverPage
from spreadwright.tolerance.laid import Laid, Layout
from spreadwright.tolerance.neighbours import across_the_gutter, beside, is_level, nested, rows
from spreadwright.tolerance.orders import Reordering, reorderings
from spreadwright.tolerance.partings import Parting, partings
from spreadwright.tolerance.trace import Traced, traced
from spreadwright.words import SOURCE, listed, ngettext, speaking
from spreadwright.words import gettext as _

MOST_COMPARED = 300
"""Pieces on one page; among more, neighbours are not looked for, which would take longer than a check may."""

MOST_TOLD = 5
"""Findings of one kind, those that are furthest off; the others are counted."""

MOST_REORDERED = 10
"""Findings for which other orders of the cuts are tried; and not for layouts of more cuts than these."""

MOST_CUTS_REORDERED = 60

MOST_WEIGHED = 20
"""Of the orders that would help one finding, for whether they harm something else."""


def tolerance_findings(
    recipe: Recipe,
    sheets: Sequence[CutSheet],
    steps: Sequence[CutStep],
    placed: Sequence[PlacedPiece],
    places: Sequence[PlaceStep],
    bench: Bench,
    *,
    language: str = SOURCE,
) -> tuple[Finding, ...]:
    """Everything that could come out wrong by the errors of cuts and ruler; for a recipe without errors.

    Without the steps with the ruler, `places`, nothing is said of what depends on where pieces are laid. Of equal
    things about pieces of equal names only the worst is told, and of each kind no more than a few. They are worded in
    `language`, whatever is spoken.
    """
    cuts = partings(steps, bench.trimmer)
    found = traced(sheets, cuts)
    worst: dict[tuple[type[Doubt], tuple[str, ...]], tuple[int, Doubt]] = {}
    everything = tuple(doubts(recipe, placed, places, bench))
    for doubt in everything:
        over = doubt.reach(found) - doubt.limit
        key = (type(doubt), doubt.names)
        if over > 0 and (key not in worst or over > worst[key][0]):
            worst[key] = (over, doubt)
    ranked = sorted(worst.values(), key=lambda each: -each[0])
    kinds: dict[type[Doubt], list[Doubt]] = {}
    for _over, doubt in ranked:
        kinds.setdefault(type(doubt), []).append(doubt)
    wrong = [doubt for some in kinds.values() for doubt in some[:MOST_TOLD]]
    with speaking(language):
        remedies = _remedies(wrong[:MOST_REORDERED], everything, sheets, cuts, found, bench)
        findings = [
            doubt.finding(doubt.reach(found), remedies.get(index, doubt.remedy), bench.unit)
            for index, doubt in enumerate(wrong)
        ]
        return tuple(_with_the_others(findings, kinds.values()))


def _with_the_others(findings: Iterable[Finding], kinds: Iterable[Sequence[Doubt]]) -> Iterator[Finding]:
    """The findings of each kind, the last of them with how many more there are."""
    told = iter(findings)
    for some in kinds:
        *firsts, last = islice(told, min(len(some), MOST_TOLD))
        yield from firsts
        more = len(some) - MOST_TOLD
        yield replace(last, message=f"{last.message} {_others(more)}") if more > 0 else last


def _others(count: int) -> str:
    told = ngettext("{count} more like this is not listed.", "{count} more like this are not listed.", count)
    return told.format(count=count)


def doubts(recipe: Recipe, placed: Sequence[PlacedPiece], places: Sequence[PlaceStep], bench: Bench) -> Iterator[Doubt]:
    """Everything that may come out wrong on some bench, in no order that matters."""
    layout = Layout(placed, places, bench)
    pieces = tuple(layout.pieces.values())
    yield from _photos(recipe, pieces, bench)
    on_page = [[each for each in pieces if each.placed.page == page] for page in recipe.spread.pages]
    page = recipe.spread.size
    if page is None or any(len(some) > MOST_COMPARED for some in on_page):
        return
    for some in on_page:
        for axis, end in zip(Axis, (page.width, page.height), strict=True):
            yield from _on_page(some, axis, end, layout)
        yield from (NestedSticksOut(*pair, axis) for pair in nested(some, page) for axis in Axis if _shows(pair, axis))
    for left, right in pairwise(on_page):
        yield from (NotLevel(*pair, Axis.COLUMNS, STEP_AT_GUTTER) for pair in across_the_gutter(left, right, page))


def _photos(recipe: Recipe, pieces: Sequence[Laid], bench: Bench) -> Iterator[Doubt]:
    by_id = {each.id: each for each in pieces}
    for photo in recipe.photos:
        if photo.on in by_id and photo.border is not None:
            yield from (PhotoOverMat(photo, by_id[photo.on], axis, bench.trimmer.accuracy) for axis in Axis)


def _on_page(pieces: Sequence[Laid], axis: Axis, length: int, layout: Layout) -> Iterator[Doubt]:
    in_rows = set()
    for row in rows(pieces, length, axis):
        in_rows |= {each.id for each in row}
        yield RowOverPage(row, axis)
    alone = [each for each in pieces if layout.is_laid and each.id not in in_rows]
    yield from (PastEdge(each, axis, end, length, layout) for each in alone for end in End)
    for first, second, gap in beside(pieces, axis):
        if is_level(first, second, axis):
            yield NotLevel(first, second, axis)
        if gap and layout.is_laid:
            yield UnevenGap(first, second, axis, gap, layout)


def _shows(pair: tuple[Laid, Laid], axis: Axis) -> bool:
    return pair[0].length(axis) > pair[1].length(axis)


def _remedies(
    wrong: Sequence[Doubt],
    everything: Sequence[Doubt],
    sheets: Sequence[CutSheet],
    cuts: Sequence[Parting],
    found: Traced,
    bench: Bench,
) -> dict[int, str]:
    """For each doubt that another order of one run settles or at least halves, by its index: that order in words.

    An order that makes something else doubtful is none.
    """
    if not wrong or len(cuts) > MOST_CUTS_REORDERED:
        return {}
    tried = list(reorderings(sheets, cuts, found, bench.trimmer))
    remedies: dict[int, str] = {}
    for index, doubt in enumerate(wrong):
        if not doubt.is_of_cuts:
            continue
        now = doubt.reach(found)
        ranked = sorted(
            (doubt.reach(each.found), len({cut.reading for cut in each.cuts}), i) for i, each in enumerate(tried)
        )
        for reach, _settings, i in ranked[:MOST_WEIGHED]:
            if reach > doubt.limit and 2 * reach > now:
                break
            if not _spoils(tried[i].found, found, everything):
                remedies[index] = _in_order(tried[i], reach, bench)
                break
    return remedies


def _spoils(changed: Traced, found: Traced, everything: Sequence[Doubt]) -> bool:
    """Whether something is too far off that was not, or was less."""
    return any((reach := doubt.reach(changed)) > doubt.limit and reach > doubt.reach(found) for doubt in everything)


def _in_order(better: Reordering, reach: int, bench: Bench) -> str:
    numbers = [str(sheet.number) for sheet in better.sheets]
    where = ngettext("on sheet {numbers}", "on sheets {numbers}", len(numbers)).format(numbers=listed(numbers))
    cuts = _cuts(better, bench)
    if not reach:
        return _("Cut in another order and it is nothing: {where} measure {cuts}.").format(where=where, cuts=cuts)
    told = _("Cut in another order and it is up to {off}: {where} measure {cuts}.")
    return told.format(off=told_up(reach, bench.unit), where=where, cuts=cuts)


def _cuts(better: Reordering, bench: Bench) -> str:
    told, then = _("{reading} for {parts}"), _("{cuts}, then {cut}")
    each = [
        told.format(
            reading=on_scale(cut.reading, bench.trimmer.graduation, bench.unit), parts=_names(cut, better.sheets[0])
        )
        for cut in better.cuts
    ]
    shown = reduce(lambda cuts, cut: then.format(cuts=cuts, cut=cut), each[:4])
    return _("{cuts} and so on").format(cuts=shown) if each[4:] else shown


def _names(cut: Parting, sheet: CutSheet) -> str:
    ids = [part.id for part in sheet.parts if part.rect and cut.measured.contains(part.rect)]
    if len(ids) > 3:
        return _("“{first}” to “{last}” together").format(first=ids[0], last=ids[-1])
    quoted, together = [_("“{piece}”").format(piece=each) for each in ids], _("{parts} with {part}")
    return reduce(lambda parts, part: together.format(parts=parts, part=part), quoted)
