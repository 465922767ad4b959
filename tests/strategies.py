"""Random lengths, cut trees and recipes for the laws."""

from dataclasses import replace

from hypothesis import strategies as st

from spreadwright.geometry import Rect, Size
from spreadwright.lengths import FINEST, TICKS, Unit
from spreadwright.model import (
    INCH_BENCH,
    Axis,
    Bench,
    Branch,
    Content,
    Hand,
    Leaf,
    Measures,
    Recipe,
    Role,
    Sheet,
    Split,
    Spread,
    Use,
)
from spreadwright.model.recipe import Kind

INCH = TICKS[Unit.INCH]
EIGHTH = INCH // 8
SQUARE = Size(12 * INCH, 12 * INCH)


def lengths(unit: Unit) -> st.SearchStrategy[int]:
    """Lengths that a ruler of that unit shows, up to 40 in."""
    return st.integers(0, 40 * INCH // FINEST[unit]).map(lambda marks: marks * FINEST[unit])


def rects() -> st.SearchStrategy[Rect]:
    """Small rectangles, so that they often touch and overlap."""
    near, side = st.integers(0, 6), st.integers(1, 5)
    return st.builds(Rect, near, near, side, side)


@st.composite
def cut_trees(draw: st.DrawFn, width: int = 96, height: int = 96, axis: Axis | None = None, depth: int = 3) -> Content:
    """Trees that fill a part of `width` by `height` eighths exactly, `rest` and `times` included."""
    axis = axis or draw(st.sampled_from(Axis))
    total = width if axis is Axis.COLUMNS else height
    if depth == 0 or total < 8 or draw(st.integers(0, 4)) == 0:
        return Leaf(Use.PIECE, draw(st.sampled_from(["panel", "mat", "strip", "tile"])))
    if draw(st.integers(0, 9)) == 0:
        shares = [(total, 1)]
    elif total % 2 == 0 and draw(st.booleans()):
        shares = [(total // 2, 2)]
    else:
        first = draw(st.integers(2, total - 2))
        shares = [(first, 1), (total - first, 1)]
    rest = draw(st.integers(-1, len(shares) - 1))
    branches = []
    for index, (extent, times) in enumerate(shares):
        sides = (extent, height) if axis is Axis.COLUMNS else (width, extent)
        content = draw(cut_trees(*sides, axis=axis.other, depth=depth - 1))
        branches.append(Branch(None if index == rest else extent * EIGHTH, content, index == rest, times))
    return Split(axis, tuple(branches))


def recipe_of(*contents: Content, size: Size = SQUARE, times: int = 1) -> Recipe:
    """A recipe that cuts sheets by these trees and places nothing."""
    sheets = tuple(Sheet("plain", size, content, times, f"/sheets/{i}") for i, content in enumerate(contents))
    return Recipe(
        id="random",
        title="Random",
        unit=Unit.INCH,
        spread=Spread(("page",), SQUARE),
        roles=(Role("plain", Kind.PLAIN),),
        sheets=sheets,
        placements=(),
    )


@st.composite
def benches(draw: st.DrawFn, *, metric: bool = False, hand: Hand | None = None) -> Bench:
    """Benches of either hand whose trimmers measure either part, with marks of 1/8 in or, metric, of 1 mm."""
    trimmer = replace(
        INCH_BENCH.trimmer,
        graduation=TICKS[Unit.MILLIMETRE] if metric else EIGHTH,
        measures=draw(st.sampled_from(Measures)),
        hand=hand or draw(st.sampled_from(Hand)),
        stack=draw(st.integers(1, 2)),
    )
    return replace(INCH_BENCH, unit=Unit.MILLIMETRE if metric else Unit.INCH, trimmer=trimmer)


def mirrored(content: Content) -> Content:
    """The same tree with left and right exchanged."""
    if isinstance(content, Leaf):
        return content
    branches = tuple(replace(branch, content=mirrored(branch.content)) for branch in content.branches)
    return Split(content.axis, branches[::-1] if content.axis is Axis.COLUMNS else branches)
