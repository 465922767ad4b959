"""What cutting has to say about a recipe: rows that do not fill, scrap, roles, the trimmer's limits and marks."""

from collections.abc import Iterator, Sequence
from itertools import chain

from spreadwright.cutting.check_marks import called, marks_findings
from spreadwright.cutting.parts import CutSheet, Region, cut_sheets, missing
from spreadwright.errors import Finding, error, nearest_hint, warning
from spreadwright.lengths import Unit, is_mark, size_text, told, told_down, told_size, told_up, with_unit
from spreadwright.model import MOST_PARTS, Axis, Bench, Branch, Content, Leaf, Recipe, Split, Use, part_count
from spreadwright.words import gettext as _
from spreadwright.words import listed, ngettext

_MOST_LISTED = 4
"""Of more pieces of one name than these the first and the last are named."""


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
    equal: dict[str, list[CutSheet]] = {}
    for sheet in cut_sheets(recipe):
        equal.setdefault(sheet.where, []).append(sheet)
    return tuple(finding for sheets in equal.values() for finding in _of_trimmer(sheets, bench, recipe.unit))


def _of_trimmer(sheets: Sequence[CutSheet], bench: Bench, unit: Unit) -> Iterator[Finding]:
    """About sheets that are equal, at once."""
    root = sheets[0].root
    return chain(_too_long(root, bench), marks_findings(sheets, bench, unit), _too_narrow(root, bench))


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
            f"The cut between {before} and {after} is {told_up(length, bench.unit)} long; "
            f"the trimmer cuts {told(limit, bench.unit)}."
        )
        other = f"Cut it into {axis.other.value} first, or use" if side is not None and side <= limit else "Use"
        yield error("sheet-larger-than-trimmer", region.where, message, f"{other} smaller sheets or a longer trimmer.")
        return


def _too_narrow(root: Region, bench: Bench) -> Iterator[Finding]:
    """Strips that cannot be held, each run of equal ones once."""
    limit, said = bench.trimmer.shortest, set[str]()
    for region, axis in _splits(root):
        for child in region.children:
            narrow = child.along(axis)
            if narrow is None or narrow >= limit or child.where in said:
                continue
            said.add(child.where)
            equal = [each for each in region.children if each.where == child.where]
            remedy = _(
                "Hold such strips down with a ruler or a scrap of card, never with the fingers, or design them wider."
            )
            yield warning("strip-too-narrow", child.where, _narrow(equal, narrow, bench), remedy)


def _narrow(equal: Sequence[Region], width: int, bench: Bench) -> str:
    """What is too narrow: pieces by their names, other parts by their size."""
    lengths = {"width": told_down(width, bench.unit), "limit": told(bench.trimmer.shortest, bench.unit)}
    if equal[0].axis is not None or equal[0].use is not Use.PIECE:
        part = _("A part, {size}, is only {width} wide, narrower than the {limit} that can be held safely.")
        return part.format(size=_size(equal[0], bench.unit), **lengths)
    strips = ngettext(
        "{pieces} is only {width} wide, narrower than the {limit} that can be held safely.",
        "{pieces} are only {width} wide, narrower than the {limit} that can be held safely.",
        len(equal),
    )
    return strips.format(pieces=_names([region.id for region in equal]), **lengths)


def _size(part: Region, unit: Unit) -> str:
    width, height = part.across.length, part.down.length
    return told_size(width, height, unit) if width and height else told(width or height or 0, unit)


def _names(ids: Sequence[str]) -> str:
    if len(ids) > _MOST_LISTED:
        return _("“{first}” to “{last}”").format(first=ids[0], last=ids[-1])
    return listed([_("“{piece}”").format(piece=each) for each in ids])


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
