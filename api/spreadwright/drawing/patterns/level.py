"""Level lines of a grid of heights, by marching squares.

Each cell is crossed by no segment, one, or two; the end of a segment is named by the grid edge that it lies on, so
segments join into lines by name and never by comparing coordinates.
"""

from collections.abc import Iterator, Sequence

Line = tuple[tuple[int, int], ...]
Level = tuple[Line, ...]
_Edge = tuple[int, int, bool]
"""Column and row of the corner it starts from, and whether it runs across."""

_Heights = Sequence[Sequence[float]]


def levels(heights: _Heights, side: int, at: Sequence[float]) -> tuple[Level, ...]:
    """The lines of each height on a square of `side` ticks; closed lines end where they start."""
    return tuple(_level(heights, side, level) for level in at)


def _level(heights: _Heights, side: int, level: float) -> Level:
    joined = _neighbours(heights, level)
    points = {edge: _crossing(heights, side, level, edge) for edge in joined}
    return tuple(tuple(points[edge] for edge in chain) for chain in _chains(joined) if len(chain) > 2)


def _neighbours(heights: _Heights, level: float) -> dict[_Edge, list[_Edge]]:
    joined: dict[_Edge, list[_Edge]] = {}
    for y in range(len(heights) - 1):
        for x in range(len(heights) - 1):
            for a, b in _segments(heights, level, x, y):
                joined.setdefault(a, []).append(b)
                joined.setdefault(b, []).append(a)
    return joined


def _segments(heights: _Heights, level: float, x: int, y: int) -> Iterator[tuple[_Edge, _Edge]]:
    """Pairs of edges of one cell that a line joins."""
    corners = (heights[y][x], heights[y][x + 1], heights[y + 1][x + 1], heights[y + 1][x])
    above = [corner > level for corner in corners]
    if all(above) or not any(above):
        return
    edges: tuple[_Edge, ...] = ((x, y, True), (x + 1, y, False), (x, y + 1, True), (x, y, False))
    cut = [edge for i, edge in enumerate(edges) if above[i] != above[(i + 1) % 4]]
    if len(cut) == 2:
        yield cut[0], cut[1]
        return
    middle_is_above = sum(corners) / 4 > level  # a saddle: its middle says which corners belong together
    if middle_is_above == above[0]:
        yield edges[0], edges[1]
        yield edges[2], edges[3]
    else:
        yield edges[3], edges[0]
        yield edges[1], edges[2]


def _crossing(heights: _Heights, side: int, level: float, edge: _Edge) -> tuple[int, int]:
    x, y, is_across = edge
    start, end = heights[y][x], heights[y][x + 1] if is_across else heights[y + 1][x]
    share = (level - start) / (end - start)
    cell = side / (len(heights) - 1)
    return round((x + share * is_across) * cell), round((y + share * (not is_across)) * cell)


def _chains(joined: dict[_Edge, list[_Edge]]) -> Iterator[list[_Edge]]:
    """Edges in order along each line: first the lines that end at the border, then the closed ones."""
    left = dict.fromkeys(joined)
    starts = [edge for edge, others in joined.items() if len(others) == 1] + list(joined)
    for start in starts:
        if start not in left:
            continue
        chain, here = [start], start
        del left[start]
        while following := next((edge for edge in joined[here] if edge in left), None):
            del left[following]
            chain.append(following)
            here = following
        if len(joined[start]) == 2 and start in joined[here] and len(chain) > 2:
            chain.append(start)
        yield chain
