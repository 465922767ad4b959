"""What the pages of a booklet consist of; `booklet.html` sets each kind of block."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from spreadwright.drawing.booklet.album import Picture
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.words import gettext as _


@dataclass(frozen=True, slots=True)
class Block:
    """Something that stands under what comes before it.

    Attributes:
        kind: How the page sets it: its class.
    """

    kind: str


@dataclass(frozen=True, slots=True)
class Words(Block):
    """Paragraphs, or the lines of a list, or the sentences of a caution."""

    lines: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class Figure(Block):
    """One picture, with words under it or none."""

    picture: Picture
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Grid(Block):
    """Rows of heads and cells."""

    heads: tuple[Markup, ...]
    rows: tuple[tuple[Markup, ...], ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """One step: its number, its picture, and its sentences, caution first."""

    number: str
    picture: Picture | None
    caution: Markup
    lines: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class Steps(Block):
    """Steps in order.

    Attributes:
        across: How many stand side by side.
    """

    entries: tuple[Entry, ...]
    across: int = 3


@dataclass(frozen=True, slots=True)
class Opening(Block):
    """A picture with the first steps beside it."""

    figure: Figure
    steps: Steps


@dataclass(frozen=True, slots=True)
class Section:
    """A heading with what stands under it.

    Attributes:
        level: 1 for a part of the booklet, 2 within one.
        is_new_page: Whether it begins on a page of its own.
    """

    title: str
    blocks: tuple[Block, ...]
    level: int = 1
    is_new_page: bool = False


def paragraphs(*lines: str) -> Words:
    """Plain paragraphs; empty ones are left out."""
    return Words("paragraphs", _set(lines))


def lead(line: str) -> Words:
    """A paragraph that stays with what follows."""
    return Words("lead", _set([line]))


def listed(lines: Sequence[str]) -> Words:
    """A list."""
    return Words("list", _set(lines))


def cautioned(lines: Sequence[str]) -> Words:
    """Cautions, under the sign."""
    return Words("caution", _set(lines))


def watch_out(lines: Sequence[str]) -> tuple[Block, ...]:
    """What is doubtful about this recipe, under a heading; nothing where nothing is."""
    if not lines:
        return ()
    return Words("subheading", (typeset(_("Watch out")),)), listed(lines)


def grid(heads: Sequence[str], rows: Sequence[Sequence[str]], *, kind: str = "grid") -> Grid:
    """A table; its first column stands out."""
    return Grid(kind, _cells(heads), tuple(_cells(row) for row in rows))


def _set(lines: Sequence[str]) -> tuple[Markup, ...]:
    return _cells([line for line in lines if line])


def _cells(cells: Sequence[str]) -> tuple[Markup, ...]:
    return tuple(cell if isinstance(cell, Markup) else typeset(cell) for cell in cells)
