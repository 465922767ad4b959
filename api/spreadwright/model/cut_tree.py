"""The cut tree: how one sheet is sliced into columns and rows until each part is a piece."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum

from spreadwright.geometry import Rect, Size


class Axis(StrEnum):
    """What a split makes. Columns share the width, rows share the height."""

    COLUMNS = "columns"
    ROWS = "rows"

    @property
    def other(self) -> "Axis":
        """Rows for columns, columns for rows."""
        return Axis.ROWS if self is Axis.COLUMNS else Axis.COLUMNS

    def along(self, shape: Size | Rect) -> int:
        """The side of a rectangle that columns, or rows, share out, ticks."""
        return shape.width if self is Axis.COLUMNS else shape.height


class Use(StrEnum):
    """What becomes of a part that is not cut further."""

    PIECE = "piece"
    SPARE = "spare"
    SCRAP = "scrap"


@dataclass(frozen=True, slots=True)
class Leaf:
    """A part that is not cut further; a piece carries the name that placements use."""

    use: Use
    name: str = ""
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Branch:
    """One member of a row or column.

    Attributes:
        extent: Width of a column or height of a row, ticks; None for `rest` and for what could not be read.
        is_rest: Whether it takes what the others leave.
        times: How many equal ones lie side by side.
    """

    extent: int | None
    content: "Content"
    is_rest: bool = False
    times: int = 1
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Split:
    """A part that is cut into columns or into rows."""

    axis: Axis
    branches: tuple[Branch, ...]
    where: str = field(default="", compare=False)


Content = Leaf | Split


def mirrored(content: Content) -> Content:
    """The same tree with columns and rows exchanged."""
    if isinstance(content, Leaf):
        return content
    branches = tuple(Branch(b.extent, mirrored(b.content), b.is_rest, b.times, b.where) for b in content.branches)
    return Split(content.axis.other, branches, content.where)


def leaf_count(content: Content) -> int:
    """How many parts a tree cuts, repeats counted, without laying them out."""
    if isinstance(content, Leaf):
        return 1
    return sum(b.times * leaf_count(b.content) for b in content.branches)


def leaves(content: Content) -> Iterator[Leaf]:
    """The leaves as written, repeats not counted, in document order."""
    if isinstance(content, Leaf):
        yield content
        return
    for branch in content.branches:
        yield from leaves(branch.content)
