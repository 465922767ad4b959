"""A checker that knows one thing only: cut this rectangle here. It replays trees without any code of the planner."""

from spreadwright.model import Axis, Content, Leaf, Use

Part = tuple[str, int, int]


def cut(content: Content, width: int, height: int) -> list[Part]:
    """Every part that falls, as name, width, height; a spare has no name. Fails where a cut leaves the rectangle."""
    if isinstance(content, Leaf):
        assert content.use in (Use.PIECE, Use.SPARE)
        return [(content.name, width, height)]
    parts: list[Part] = []
    left = width if content.axis is Axis.COLUMNS else height
    for branch in content.branches:
        for _ in range(branch.times):
            assert branch.extent is not None and 0 < branch.extent <= left
            left -= branch.extent
            size = (branch.extent, height) if content.axis is Axis.COLUMNS else (width, branch.extent)
            parts += cut(branch.content, *size)
    assert left == 0
    return parts


def cut_block(block: object, width: int, height: int) -> list[tuple[int, int]]:
    """The same for a block of the search: sizes of its pieces as they lie."""
    assert (block.wide, block.high) == (width, height)  # type: ignore[attr-defined]
    parts = block.parts  # type: ignore[attr-defined]
    if not parts:
        return [(width, height)] if block.kind else []  # type: ignore[attr-defined]
    first, second = parts
    if block.is_row:  # type: ignore[attr-defined]
        assert 0 < first.wide < width
        return cut_block(first, first.wide, height) + cut_block(second, width - first.wide, height)
    assert 0 < first.high < height
    return cut_block(first, width, first.high) + cut_block(second, width, height - first.high)
