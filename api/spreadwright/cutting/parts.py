"""The parts of every sheet: the cut tree laid out on whole ticks."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from spreadwright.geometry import Rect, Size
from spreadwright.model import Axis, Content, Leaf, Namer, Piece, Recipe, Sheet, Split, Use, is_too_large, leaf_name

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which read as 1 and 0."""


@dataclass(frozen=True, slots=True)
class Span:
    """Where a part starts and how long it is in one direction, ticks; None where the recipe leaves it open."""

    start: int | None
    length: int | None

    def slice(self, offset: int | None, length: int | None) -> "Span":
        """A part of this span."""
        return Span(None if self.start is None or offset is None else self.start + offset, length)


@dataclass(frozen=True, slots=True)
class Region:
    """A part of a sheet with its place, from the sheet's top left corner.

    Either it is split along `axis` into `children`, or it is a leaf. Both directions are known or open apart from each
    other, so that one length that cannot be read hides no more than it must.
    """

    across: Span
    down: Span
    axis: Axis | None = None
    children: tuple["Region", ...] = ()
    use: Use | None = None
    id: str = ""
    name: str = ""
    where: str = field(default="", compare=False)

    @property
    def rect(self) -> Rect | None:
        """The place, ticks; None where any of it is open."""
        left, width, top, height = self.across.start, self.across.length, self.down.start, self.down.length
        if left is None or width is None or top is None or height is None:
            return None
        return Rect(left, top, width, height)

    def along(self, axis: Axis) -> int | None:
        """The side that a split into columns, or into rows, shares out, ticks."""
        return self.across.length if axis is Axis.COLUMNS else self.down.length

    def leaves(self) -> Iterator["Region"]:
        """The parts that are not cut further, in document order."""
        if self.axis is None:
            yield self
        for child in self.children:
            yield from child.leaves()


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One physical sheet: equal sheets of a recipe stand here one by one, numbered from 1."""

    number: int
    role: str
    size: Size | None
    root: Region
    where: str = field(default="", compare=False)

    @property
    def parts(self) -> tuple[Region, ...]:
        """The parts that are not cut further, in document order."""
        return tuple(self.root.leaves())


def cut_sheets(recipe: Recipe) -> tuple[CutSheet, ...]:
    """Every physical sheet of a recipe with its parts; empty for a recipe that is too large."""
    if is_too_large(recipe):
        return ()
    namer = Namer(recipe)
    return tuple(
        CutSheet(number, sheet.role, sheet.size, _sheet_region(sheet, namer), sheet.where)
        for number, sheet in enumerate((s for s in recipe.sheets for _ in range(s.times)), start=1)
    )


def pieces(sheets: tuple[CutSheet, ...]) -> tuple[Piece, ...]:
    """Every piece of the sheets, in document order."""
    marks = _marks(sheets)
    return tuple(
        Piece(part.id, part.name, marks[part.id], sheet.role, part.across.length, part.down.length, part.where)
        for sheet in sheets
        for part in sheet.parts
        if part.use is Use.PIECE
    )


def is_cut(sheets: Iterable[CutSheet]) -> dict[str, bool]:
    """Whether a part is cut from its sheet at all, by its id; otherwise it is the whole of it."""
    return {part.id: len(sheet.parts) > 1 for sheet in sheets for part in sheet.parts if part.id}


def _marks(sheets: tuple[CutSheet, ...]) -> dict[str, str]:
    found = [part for sheet in sheets for part in sheet.parts if part.use is Use.PIECE]
    letters = {name: _letter(i) for i, name in enumerate(dict.fromkeys(part.name for part in found))}
    return {part.id: letters[part.name] + part.id[len(part.name) + 1 :] for part in found}


def _letter(index: int) -> str:
    """A, B, ... Z, AA, AB ..."""
    more, last = divmod(index, len(_LETTERS))
    return (_letter(more - 1) if more else "") + _LETTERS[last]


def _sheet_region(sheet: Sheet, namer: Namer) -> Region:
    width, height = (sheet.size.width, sheet.size.height) if sheet.size else (None, None)
    return _region(sheet.content, Span(0, width), Span(0, height), namer)


def _region(content: Content, across: Span, down: Span, namer: Namer) -> Region:
    if isinstance(content, Leaf):
        name = leaf_name(content)
        return Region(across, down, use=content.use, id=namer.id(content), name=name, where=content.where)
    is_columns = content.axis is Axis.COLUMNS
    whole = across if is_columns else down
    children: list[Region] = []
    offset: int | None = 0
    for branch, extent in zip(content.branches, resolved_extents(content, whole.length), strict=True):
        for _ in range(branch.times):
            share = whole.slice(offset, extent)
            spans = (share, down) if is_columns else (across, share)
            children.append(_region(branch.content, *spans, namer))
            offset = None if offset is None or extent is None else offset + extent
    return Region(across, down, content.axis, tuple(children), where=content.where)


def resolved_extents(split: Split, whole: int | None) -> tuple[int | None, ...]:
    """The extent of each branch with `rest` worked out, ticks; None where it cannot be known.

    Rest takes what the others leave of the whole, shared equally when it is repeated; it is None when nothing is left.
    """
    rests = [branch for branch in split.branches if branch.is_rest]
    left = missing(split, whole)
    if len(rests) != 1 or left is None:
        return tuple(branch.extent for branch in split.branches)
    share = left // rests[0].times if left > 0 and left % rests[0].times == 0 else None
    return tuple(share if branch.is_rest else branch.extent for branch in split.branches)


def missing(split: Split, whole: int | None) -> int | None:
    """What the branches of known extent leave of the whole, ticks; negative when they are too long together.

    None when the whole, or the extent of any branch but `rest`, is not known.
    """
    total = 0
    for branch in split.branches:
        if branch.is_rest:
            continue
        if branch.extent is None:
            return None
        total += branch.extent * branch.times
    return None if whole is None else whole - total
