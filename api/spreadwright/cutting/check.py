"""What cutting has to say about a recipe: rows that do not fill, scrap, roles, the trimmer's limits and marks."""

from collections.abc import Iterator, Sequence
from itertools import chain

from spreadwright.cutting.lie import End
from spreadwright.cutting.measured import Gauge, Measured
from spreadwright.cutting.parts import CutSheet, Region, cut_sheets, missing
from spreadwright.errors import Finding, error, nearest_hint, note, warning
from spreadwright.lengths import TICKS, Unit, is_mark, neighbours, size_text, text, with_unit
from spreadwright.model import MOST_PARTS, Axis, Bench, Branch, Content, Leaf, Recipe, Split, Use, part_count

_MOST_LISTED = 8
"""Lengths that stand in one finding."""
_SMALL_CHANGE = TICKS[Unit.INCH] // 32
"""What a part may change by less than for nothing to be done about it, ticks."""


def tree_findings(recipe: Recipe) -> tuple[Finding, ...]:
    """Everything that can be said about the sheets of a recipe, whoever cuts them."""
    count = part_count(recipe)
    if count > MOST_PARTS:
        message = f"The sheets are cut into {count:,} parts; at most {MOST_PARTS:,} are worked out."
        return (error("too-many-parts", "/sheets", message, "Cut fewer parts, or share the pieces among recipes."),)
    sheets = cut_sheets(recipe)
    firsts = _firsts(sheets)
    return tuple(
        chain(
            _role_findings(recipe),
            chain.from_iterable(_fill(s.content, firsts[s.where].root, recipe.unit) for s in recipe.sheets),
            _clashes(sheets),
        )
    )


def trimmer_findings(recipe: Recipe, bench: Bench) -> tuple[Finding, ...]:
    """What one maker's trimmer cannot do or cannot show, as far as the lengths are known."""
    checks = (_too_long, _between_marks, _too_narrow)
    sheets = _firsts(cut_sheets(recipe)).values()
    return tuple(finding for sheet in sheets for check in checks for finding in check(sheet.root, bench))


def _firsts(sheets: tuple[CutSheet, ...]) -> dict[str, CutSheet]:
    """The first of each run of equal sheets, by its pointer."""
    firsts: dict[str, CutSheet] = {}
    for sheet in sheets:
        firsts.setdefault(sheet.where, sheet)
    return firsts


def _role_findings(recipe: Recipe) -> Iterator[Finding]:
    known = [role.id for role in recipe.roles]
    for sheet in recipe.sheets:
        if sheet.role and sheet.role not in known:
            message = f"The sheet plays the role “{sheet.role}”, which the recipe does not have."
            yield error("role-unknown", f"{sheet.where}/role", message, nearest_hint(sheet.role, known))
    used = {sheet.role for sheet in recipe.sheets}
    for role in recipe.roles:
        if role.id not in used:
            message = f"No sheet plays the role “{role.id}”."
            yield warning("role-unused", role.where, message, "Remove the role, or give it to a sheet.")


def _fill(content: Content, region: Region, unit: Unit) -> Iterator[Finding]:
    """Walks the tree as written beside its first laid-out copy."""
    if isinstance(content, Leaf):
        if content.use is Use.SCRAP:
            width, height = region.across.length, region.down.length
            size = f", {size_text(width, height, unit)}," if width and height else ""
            message = f"This part{size} is neither a piece nor a spare, so it is scrap."
            yield error("scrap", content.where, message, "Name it “piece”, keep it as “spare”, or cut it further.")
        return
    yield from _fill_findings(content, region.along(content.axis), unit)
    index = 0
    for branch in content.branches:
        yield from _fill(branch.content, region.children[index], unit)
        index += branch.times


def _fill_findings(split: Split, whole: int | None, unit: Unit) -> Iterator[Finding]:
    rests = [branch for branch in split.branches if branch.is_rest]
    side = "width" if split.axis is Axis.COLUMNS else "height"
    for extra in rests[1:]:
        message = f"“rest” stands in {len(rests)} parts here, so no {side} follows from it."
        yield error("rest-twice", f"{extra.where}/{side}", message, "Give all but one of them a length.")
    left = missing(split, whole)
    if whole is None or left is None:
        return
    if len(rests) == 1:
        yield from _rest_findings(rests[0], left, unit, side)
    elif left < 0 or (left and not rests):
        yield _does_not_fill(split, whole, left, unit, side)


def _rest_findings(rest: Branch, left: int, unit: Unit, side: str) -> Iterator[Finding]:
    where = f"{rest.where}/{side}"
    if left <= 0:
        measured = f"The other parts are {with_unit(-left, unit)} too long" if left else "The other parts fill it"
        message = f"{measured}, so nothing is left for “rest”."
        yield error("nothing-left-for-rest", where, message, "Shorten the others, or take this part out.")
    elif rest.times > 1 and (left % rest.times or not is_mark(left // rest.times)):
        message = f"“rest” is {with_unit(left, unit)}, which does not divide by {rest.times} on any ruler."
        yield error("rest-does-not-divide", where, message, "Change the other lengths, or the number of times.")


def _does_not_fill(split: Split, whole: int, left: int, unit: Unit, side: str) -> Finding:
    what = "row" if split.axis is Axis.COLUMNS else "column"
    measured = f"{with_unit(abs(left), unit)} {'missing' if left > 0 else 'over'}"
    message = (
        f"The parts add up to {with_unit(whole - left, unit)}, the {what} is {with_unit(whole, unit)}: {measured}."
    )
    remedy = f"Make the {side}s add up to {with_unit(whole, unit)}, or let one of them be “rest”."
    return error(f"{what}-does-not-fill", split.where, message, remedy)


def _splits(region: Region) -> Iterator[tuple[Region, Axis]]:
    """Every part that takes cuts, from the whole sheet down."""
    if region.axis is not None and len(region.children) > 1:
        yield region, region.axis
    for child in region.children:
        yield from _splits(child)


def _too_long(root: Region, bench: Bench) -> Iterator[Finding]:
    limit = bench.trimmer.length
    for region, axis in _splits(root):
        length, side = region.along(axis.other), region.along(axis)
        if length is None or length <= limit:
            continue
        before, after = (called(child, bench.unit) for child in region.children[:2])
        message = (
            f"The cut between {before} and {after} is {with_unit(length, bench.unit)} long; "
            f"the trimmer cuts {with_unit(limit, bench.unit)}."
        )
        other = f"Cut it into {axis.other.value} first, or use" if side is not None and side <= limit else "Use"
        yield error("sheet-larger-than-trimmer", region.where, message, f"{other} smaller sheets or a longer trimmer.")
        return


def _between_marks(root: Region, bench: Bench) -> Iterator[Finding]:
    """What the marks of the scale make of every part that is known to its last piece."""
    gauge = Gauge(bench.trimmer)
    said: set[tuple[str, int]] = set()
    for part in (split for known in _known(root) for split in gauge.part(known).splits()):
        axis = part.axis or Axis.COLUMNS
        if any(child.true(axis) <= 0 for child in part.children):
            yield _lost(part, axis, bench)
            continue
        end = next(iter(part.settings))
        for index, setting in enumerate(part.settings[end]):
            if setting.exact != setting.reading and (part.region.where, setting.exact) not in said:
                said.add((part.region.where, setting.exact))
                yield _off_mark(part, end, index, bench)
        if (part.region.where, 0) not in said and _comes_out_otherwise(part, axis):
            said.add((part.region.where, 0))
            yield _rounded(part, axis, bench.unit)


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


def _off_mark(part: Measured, end: End, index: int, bench: Bench) -> Finding:
    """A cut whose place no mark shows; `index` counts from the end that falls."""
    exact, unit = part.settings[end][index].exact, bench.unit
    at = index if end is End.FIRST else len(part.children) - 2 - index
    before, after = (called(child.region, unit) for child in part.children[at : at + 2])
    below, above = (with_unit(mark, unit) for mark in neighbours(exact, bench.trimmer.graduation))
    message = (
        f"The cut between {before} and {after} should be set to {with_unit(exact, unit)}, "
        "between two marks of the trimmer’s scale."
    )
    chosen = with_unit(part.settings[end][index].reading, unit)
    remedy = f"The nearest marks are {below} and {above}; the steps say {chosen}. A finer scale comes closer."
    return warning("off-graduation", part.region.where, message, remedy)


def called(region: Region, unit: Unit) -> str:
    """What a part is called: by the name of its piece, else by its size."""
    if region.axis is None and region.use is Use.PIECE:
        return f"“{region.id}”"
    width, height = region.across.length, region.down.length
    return f"the part of {size_text(width, height, unit)}" if width and height else "a part"


def _lost(part: Measured, axis: Axis, bench: Bench) -> Finding:
    """Cuts so close together that the scale shows one mark for two of them, or none before the edge."""
    lost = next(child.region for child in part.children if child.true(axis) <= 0)
    message = (
        f"The part of {with_unit(lost.along(axis) or 0, bench.unit)} begins and ends at the same mark of the "
        "trimmer’s scale, so nothing would be cut."
    )
    remedy = "Make the parts wider, or use a trimmer with a finer scale."
    return error("cut-lost-between-marks", part.region.where, message, remedy)


def _comes_out_otherwise(part: Measured, axis: Axis) -> bool:
    return any(child.true(axis) != child.region.along(axis) for child in part.children)


def _rounded(part: Measured, axis: Axis, unit: Unit) -> Finding:
    """What the parts come to when every cut lies on the mark nearest to its place."""
    meant = _listed([child.region.along(axis) or 0 for child in part.children], unit)
    found = _listed([child.true(axis) for child in part.children], unit)
    message = (
        f"By the marks of the trimmer’s scale the parts of {meant} come out {found}; "
        f"together they are the {with_unit(part.true(axis), unit)} that are there."
    )
    most = max(abs(child.true(axis) - (child.region.along(axis) or 0)) for child in part.children)
    told = "Nothing has to be done"
    if most >= _SMALL_CHANGE:
        told = f"A part changes by up to {with_unit(most, unit)}: check the design, or use a finer scale"
    remedy = f"{told}. Every cut lies on the mark nearest to its place, so errors do not add up."
    return note("rounded-to-marks", part.region.where, message, remedy)


def _listed(lengths: Sequence[int], unit: Unit) -> str:
    """Lengths in a row: ``102, 101 and 101.8 mm``; the first of many."""
    told = [text(length, unit) for length in lengths[:_MOST_LISTED]]
    if len(lengths) > _MOST_LISTED:
        return f"{', '.join(told)} … {unit.value}"
    return f"{', '.join(told[:-1])} and {told[-1]} {unit.value}"


def _is_filled(region: Region, axis: Axis) -> bool:
    extents = [child.along(axis) for child in region.children]
    return None not in extents and sum(extent or 0 for extent in extents) == region.along(axis)


def _too_narrow(root: Region, bench: Bench) -> Iterator[Finding]:
    limit = bench.trimmer.shortest
    said: set[str] = set()
    for region, axis in _splits(root):
        for child in region.children:
            narrow = child.along(axis)
            if narrow is None or narrow >= limit or child.where in said:
                continue
            said.add(child.where)
            message = (
                f"The strip is {with_unit(narrow, bench.unit)} wide, narrower than the "
                f"{with_unit(limit, bench.unit)} that can be held safely."
            )
            remedy = "Hold it down with a ruler or a scrap of card, never with the fingers, or make it wider."
            yield warning("strip-too-narrow", child.where, message, remedy)


def _clashes(sheets: tuple[CutSheet, ...]) -> Iterator[Finding]:
    """Two parts with one id: a name that looks like a numbered one (`mat-1` beside two of `mat`)."""
    seen: dict[str, str] = {}
    for part in (part for sheet in sheets for part in sheet.parts if part.use is Use.PIECE):
        if part.id in seen and seen[part.id] != part.name:
            message = (
                f"“{part.id}” stands for two pieces: one of that name, and one of those numbered “{seen[part.id]}”."
            )
            yield error("piece-name-clash", f"{part.where}/piece", message, "Rename one of them.")
        seen.setdefault(part.id, part.name)
