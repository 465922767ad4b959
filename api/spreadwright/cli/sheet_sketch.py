"""A cut sheet drawn with the characters of a terminal, roughly to scale."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from spreadwright.geometry import Rect

_COLUMNS, _MOST_COLUMNS = 48, 100
_ROWS_A_COLUMN = 0.5
"""A character is about twice as high as it is wide."""

_UP, _DOWN, _LEFT, _RIGHT = 1, 2, 4, 8
_LINES = {
    _UP | _DOWN: "│",
    _LEFT | _RIGHT: "─",
    _DOWN | _RIGHT: "┌",
    _DOWN | _LEFT: "┐",
    _UP | _RIGHT: "└",
    _UP | _LEFT: "┘",
    _UP | _DOWN | _RIGHT: "├",
    _UP | _DOWN | _LEFT: "┤",
    _DOWN | _LEFT | _RIGHT: "┬",
    _UP | _LEFT | _RIGHT: "┴",
    _UP | _DOWN | _LEFT | _RIGHT: "┼",
}


def sketch(parts: Sequence[tuple[Rect, Sequence[str]]]) -> list[str]:
    """Lines that draw the parts of one sheet, each with the first of its labels that has room.

    Lines between parts are kept apart, so narrow strips come out wider than they are. Nothing is drawn of a sheet
    with so many lines that it would not fit a terminal 100 characters wide.
    """
    across = _places({x for rect, _ in parts for x in (rect.left, rect.right)}, 1.0, least=4)
    down = _places({y for rect, _ in parts for y in (rect.top, rect.bottom)}, _ROWS_A_COLUMN, least=2)
    if max(across.values()) >= _MOST_COLUMNS or max(down.values()) >= _MOST_COLUMNS:
        return []
    arms: dict[tuple[int, int], int] = {}
    for rect, _ in parts:
        _outline(arms, across[rect.left], down[rect.top], across[rect.right], down[rect.bottom])
    grid = [
        [_LINES.get(arms.get((column, row), 0), " ") for column in range(max(across.values()) + 1)]
        for row in range(max(down.values()) + 1)
    ]
    for rect, labels in parts:
        _label(grid, labels, across[rect.left], down[rect.top], across[rect.right], down[rect.bottom])
    return ["".join(row).rstrip() for row in grid]


def _places(edges: Iterable[int], scale: float, least: int) -> dict[int, int]:
    """Where each edge is drawn: to scale, and at least so many characters after the one before it."""
    ordered = sorted(edges)
    whole = ordered[-1] - ordered[0]
    places = {ordered[0]: 0}
    for before, edge in pairwise(ordered):
        to_scale = round((edge - ordered[0]) * _COLUMNS * scale / whole)
        places[edge] = max(places[before] + least, to_scale)
    return places


def _outline(arms: dict[tuple[int, int], int], left: int, top: int, right: int, bottom: int) -> None:
    for row in (top, bottom):
        for column in range(left, right):
            arms[column, row] = arms.get((column, row), 0) | _RIGHT
            arms[column + 1, row] = arms.get((column + 1, row), 0) | _LEFT
    for column in (left, right):
        for row in range(top, bottom):
            arms[column, row] = arms.get((column, row), 0) | _DOWN
            arms[column, row + 1] = arms.get((column, row + 1), 0) | _UP


def _label(grid: list[list[str]], labels: Sequence[str], left: int, top: int, right: int, bottom: int) -> None:
    room = right - left - 1
    fitting = next((label for label in labels if len(label) <= room), "")
    start, row = left + 1 + (room - len(fitting)) // 2, (top + bottom) // 2
    for offset, character in enumerate(fitting):
        grid[row][start + offset] = character
