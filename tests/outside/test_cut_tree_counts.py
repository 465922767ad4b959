"""Cut trees against published counts; the data beside this file names its sources.

Slicing classes: OEIS A006318 (large Schröder numbers); Ackerman, Barequet, Pinter and Romik, Information Processing
Letters 98(4), 162-167, 2006. Dissections of grids: OEIS A116694 (all) and A222659 (those that guillotine cuts reach).
"""

import json
from collections.abc import Iterator
from functools import cache
from itertools import product
from pathlib import Path

import pytest

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.geometry import Rect, Size
from spreadwright.model import INCH_BENCH, Axis, Branch, Content, Leaf, Split, Use
from strategies import recipe_of
from tiling import is_tiled

COUNTS = json.loads((Path(__file__).parent / "guillotine.json").read_text())
PIECE = Leaf(Use.PIECE, "piece")


def compositions(total: int) -> Iterator[tuple[int, ...]]:
    """Ways of writing a number as an ordered sum of at least two."""
    for first in range(1, total):
        yield first, total - first
        for rest in compositions(total - first):
            yield first, *rest


@cache
def trees(leaves: int, axis: Axis) -> tuple[Content, ...]:
    """Every cut tree of so many leaves whose first cuts go along `axis`, runs of parallel cuts in one split."""
    return tuple(
        Split(axis, tuple(Branch(1, content) for content in contents))
        for shares in compositions(leaves)
        for contents in product(*(below(share, axis.other) for share in shares))
    )


def below(leaves: int, axis: Axis) -> tuple[Content, ...]:
    return (PIECE,) if leaves == 1 else trees(leaves, axis)


@pytest.mark.parametrize("leaves", range(2, 8))
def test_cut_trees_are_counted_by_schroeder_numbers(leaves):
    found = set(trees(leaves, Axis.COLUMNS)) | set(trees(leaves, Axis.ROWS))
    assert len(found) == COUNTS["slicing_classes_schroder"]["values"][leaves - 1]


@cache
def grid_trees(width: int, height: int, axis: Axis) -> tuple[Content, ...]:
    """Every cut tree of a grid of cells: a piece, or split along `axis`."""
    total = width if axis is Axis.COLUMNS else height
    found: list[Content] = [PIECE]
    for shares in compositions(total):
        sides = [(share, height) if axis is Axis.COLUMNS else (width, share) for share in shares]
        for contents in product(*(grid_trees(*side, axis.other) for side in sides)):
            found.append(Split(axis, tuple(Branch(e, c) for e, c in zip(shares, contents, strict=True))))
    return tuple(found)


def dissections(width: int, height: int) -> set[frozenset[Rect]]:
    found = set()
    for tree in (*grid_trees(width, height, Axis.COLUMNS), *grid_trees(width, height, Axis.ROWS)):
        (sheet,) = cut_sheets(recipe_of(tree, size=Size(width, height)))
        rects = [part.rect for part in sheet.parts]
        assert is_tiled(Rect(0, 0, width, height), rects)
        found.add(frozenset(rects))
    return found


@pytest.mark.parametrize(
    "row", [row for row in COUNTS["grid_dissections"]["values"] if row["m"] * row["n"] <= 9], ids=str
)
def test_cut_trees_reach_every_guillotine_dissection_of_a_grid(row):
    assert len(dissections(row["n"], row["m"])) == row["guillotine"]


def test_pinwheel_is_no_cut_tree():
    reached = dissections(3, 3)
    for pinwheel in COUNTS["pinwheels_3x3"]:
        rects = frozenset(Rect(col, row, w, h) for row, col, h, w in pinwheel["pieces_row_col_height_width"])
        assert is_tiled(Rect(0, 0, 3, 3), sorted(rects)) and rects not in reached


@pytest.mark.parametrize("leaves", range(2, 7))
def test_pieces_take_one_cut_less_than_there_are(leaves):
    for tree in trees(leaves, Axis.COLUMNS):
        sheets = cut_sheets(recipe_of(_proportional(tree, 720, 720), size=Size(720, 720)))
        assert len(cut_steps(sheets, INCH_BENCH)) == leaves - 1


def _proportional(content: Content, width: int, height: int) -> Content:
    """The tree with equal shares, the last one `rest`."""
    if isinstance(content, Leaf):
        return content
    total, count = (width if content.axis is Axis.COLUMNS else height), len(content.branches)
    extents = [total // count] * (count - 1) + [total - total // count * (count - 1)]
    sides = [(e, height) if content.axis is Axis.COLUMNS else (width, e) for e in extents]
    contents = [_proportional(b.content, *side) for b, side in zip(content.branches, sides, strict=True)]
    branches = [Branch(e, c) for e, c in zip(extents, contents, strict=True)]
    branches[-1] = Branch(None, contents[-1], is_rest=True)
    return Split(content.axis, tuple(branches))
