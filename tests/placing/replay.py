"""Somebody who glues by the moves alone: knows what lies there, what an edge is, and what the ruler shows."""

from collections.abc import Sequence

from spreadwright.geometry import Rect, Size
from spreadwright.placing import PlaceStep

Places = dict[str, list[int]]
"""Left, top, right and bottom of every piece that lies there; the page has no name."""


def replayed(steps: Sequence[PlaceStep], page: Size, width: int) -> dict[str, Rect]:
    """Where everything lies in the end; `width` is that of the ruler. What is not there yet is a KeyError."""
    pages: dict[str, Places] = {}
    joined: dict[str, Places] = {}
    for step in steps:
        piece = step.placed.piece
        size = (piece.height, piece.width) if step.placed.is_turned else (piece.width, piece.height)
        if step.located.base is None:
            there = pages.setdefault(step.placed.page, {"": [0, 0, page.width, page.height]})
        else:
            base = step.located.base.piece
            sides = (base.height, base.width) if step.located.base.is_turned else (base.width, base.height)
            there = joined.setdefault(base.id, {base.id: [0, 0, *sides]})
        there[piece.id] = laid(step, size, there, width)
        carried = joined.pop(piece.id, {})
        x, y = there[piece.id][:2]
        for name, place in carried.items():
            if name != piece.id:
                there[f"on {piece.id}: {name}"] = [place[0] + x, place[1] + y, place[2] + x, place[3] + y]
    assert not joined
    return {
        name.rpartition(": ")[2]: Rect.between(*place)
        for there in pages.values()
        for name, place in there.items()
        if name
    }


def laid(step: PlaceStep, size: tuple[int, int], there: Places, width: int) -> list[int]:
    start = [None, None]
    for move in step.located.moves:
        axes = [0, 1] if move.axis is None else [0 if move.axis == "columns" else 1]
        for axis in axes:
            assert start[axis] is None
            start[axis] = start_of(move, axis, size[axis], there, width)
    return [start[0], start[1], start[0] + size[0], start[1] + size[1]]


def start_of(move, axis: int, side: int, there: Places, width: int) -> int:
    def at(line) -> int:
        return there[line.piece][(0 if line.axis == "columns" else 1) + (0 if line.end == "start" else 2)]

    lines = move.lines
    if move.kind == "cover":
        return there[lines[0].piece][axis]
    if move.kind in ("frame", "centre"):
        first, last = (at(line) for line in lines if (line.axis == "columns") == (axis == 0))
        return (first + last - side) // 2
    distance = {
        "flush": 0,
        "against": 0,
        "level": 0,
        "spacer": width,
        "offset": move.reading,
        "gap": move.reading,
        "equal-gap": abs(at(lines[1]) - at(lines[2])) if move.kind == "equal-gap" else 0,
    }[move.kind]
    return at(lines[0]) + distance if move.end == "start" else at(lines[0]) - distance - side
