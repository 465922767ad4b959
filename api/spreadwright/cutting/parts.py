"""The parts of every sheet: the cut tree laid out on whole ticks."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from spreadwright.geometry import Rect, Size
from spreadwright.model import Axis, Content, Leaf, Piece, Recipe, Sheet, Split, Use, leaf_count

MOST_PARTS = 1000
"""More parts than this in one recipe are refused before anything is laid out."""

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Without I and O, which read as 1 and 0."""


@dataclass(frozen=True, slots=True)
class Region:
    """A part of a sheet with its place, ticks from the sheet's top left corner.

    Either it is split along `axis` into `children`, or it is a leaf. `rect` is None where the recipe leaves it open.
    """

    rect: Rect | None
    axis: Axis | None = None
    children: tuple["Region", ...] = ()
    use: Use | None = None
    id: str = ""
    name: str = ""
    where: str = field(default="", compare=False)

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


def is_too_large(recipe: Recipe) -> bool:
    """Whether the recipe cuts more parts than a recipe may have."""
    return part_count(recipe) > MOST_PARTS


def part_count(recipe: Recipe) -> int:
    """How many parts all sheets give, counted without laying them out."""
    return sum(sheet.times * leaf_count(sheet.content) for sheet in recipe.sheets)


def cut_sheets(recipe: Recipe) -> tuple[CutSheet, ...]:
    """Every physical sheet of a recipe with its parts; empty for a recipe that is too large."""
    if is_too_large(recipe):
        return ()
    namer = _Namer(recipe)
    return tuple(
        CutSheet(number, sheet.role, sheet.size, _sheet_region(sheet, namer), sheet.where)
        for number, sheet in enumerate((s for s in recipe.sheets for _ in range(s.times)), start=1)
    )


def pieces(sheets: tuple[CutSheet, ...]) -> tuple[Piece, ...]:
    """Every piece of the sheets, in document order."""
    marks = _marks(sheets)
    return tuple(
        Piece(part.id, part.name, marks[part.id], sheet.role, part.rect.size if part.rect else None, part.where)
        for sheet in sheets
        for part in sheet.parts
        if part.use is Use.PIECE
    )


def _marks(sheets: tuple[CutSheet, ...]) -> dict[str, str]:
    found = [part for sheet in sheets for part in sheet.parts if part.use is Use.PIECE]
    letters = {name: _letter(i) for i, name in enumerate(dict.fromkeys(part.name for part in found))}
    return {part.id: letters[part.name] + part.id[len(part.name) + 1 :] for part in found}


def _letter(index: int) -> str:
    """A, B, ... Z, AA, AB ..."""
    more, last = divmod(index, len(_LETTERS))
    return (_letter(more - 1) if more else "") + _LETTERS[last]


class _Namer:
    """Gives each leaf its id: the name alone, or numbered when several carry it."""

    def __init__(self, recipe: Recipe) -> None:
        self._total: Counter[str] = Counter()
        for sheet in recipe.sheets:
            self._count(sheet.content, sheet.times)
        self._seen: Counter[str] = Counter()

    def _count(self, content: Content, times: int) -> None:
        if isinstance(content, Leaf):
            self._total[_leaf_name(content)] += times
            return
        for branch in content.branches:
            self._count(branch.content, times * branch.times)

    def id(self, leaf: Leaf) -> str:
        name = _leaf_name(leaf)
        self._seen[name] += 1
        return f"{name}-{self._seen[name]}" if self._total[name] > 1 else name


def _leaf_name(leaf: Leaf) -> str:
    return leaf.name or leaf.use.value


def _sheet_region(sheet: Sheet, namer: _Namer) -> Region:
    rect = Rect.at(0, 0, sheet.size) if sheet.size else None
    return _region(sheet.content, rect, namer)


def _region(content: Content, rect: Rect | None, namer: _Namer) -> Region:
    if isinstance(content, Leaf):
        name = _leaf_name(content)
        return Region(rect, use=content.use, id=namer.id(content), name=name, where=content.where)
    extents = resolved_extents(content, rect)
    spans = [
        (branch, extent) for branch, extent in zip(content.branches, extents, strict=True) for _ in range(branch.times)
    ]
    children: list[Region] = []
    offset: int | None = 0
    for branch, extent in spans:
        child = _slice(rect, content.axis, offset, extent)
        children.append(_region(branch.content, child, namer))
        offset = offset + extent if extent is not None and offset is not None else None
    return Region(rect, content.axis, tuple(children), where=content.where)


def _slice(rect: Rect | None, axis: Axis, offset: int | None, extent: int | None) -> Rect | None:
    if rect is None or offset is None or extent is None:
        return None
    if axis is Axis.COLUMNS:
        return Rect(rect.left + offset, rect.top, extent, rect.height)
    return Rect(rect.left, rect.top + offset, rect.width, extent)


def resolved_extents(split: Split, rect: Rect | None) -> tuple[int | None, ...]:
    """The extent of each branch with `rest` worked out; None where it cannot be known.

    Rest takes what the others leave, shared equally when it is repeated; it is None when nothing is left for it.
    """
    rests = [branch for branch in split.branches if branch.is_rest]
    if len(rests) != 1 or rect is None:
        return tuple(branch.extent for branch in split.branches)
    left = missing(split, rect)
    share = left // rests[0].times if left is not None and left > 0 and left % rests[0].times == 0 else None
    return tuple(share if branch.is_rest else branch.extent for branch in split.branches)


def missing(split: Split, rect: Rect) -> int | None:
    """What the branches of known extent leave of the part, ticks; negative when they are too long together.

    None when the extent of any branch but `rest` is not known.
    """
    total = 0
    for branch in split.branches:
        if branch.is_rest:
            continue
        if branch.extent is None:
            return None
        total += branch.extent * branch.times
    return across(rect, split.axis) - total


def across(rect: Rect, axis: Axis) -> int:
    """The side of a part that a split shares out."""
    return rect.width if axis is Axis.COLUMNS else rect.height
