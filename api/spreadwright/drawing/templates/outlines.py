"""The edges of pieces that lie on one another: what is seen of each, and what is hidden."""

from collections.abc import Iterable
from itertools import pairwise

from spreadwright.drawing.path import Path, Point
from spreadwright.geometry import Rect

Segment = tuple[Point, Point]


def edges(rect: Rect, covers: Iterable[Rect]) -> tuple[list[Segment], list[Segment]]:
    """The seen and the hidden parts of a rectangle's four edges; an edge on that of a cover is seen.

    >>> seen, hidden = edges(Rect(0, 0, 10, 10), [Rect(4, -5, 20, 10)])
    >>> hidden
    [((4, 0), (10, 0)), ((10, 0), (10, 5))]
    """
    listed = list(covers)
    seen: list[Segment] = []
    hidden: list[Segment] = []
    for y in (rect.top, rect.bottom):
        over = [(c.left, c.right) for c in listed if c.top < y < c.bottom]
        for start, end, is_seen in _parts(rect.left, rect.right, over):
            (seen if is_seen else hidden).append(((start, y), (end, y)))
    for x in (rect.left, rect.right):
        over = [(c.top, c.bottom) for c in listed if c.left < x < c.right]
        for start, end, is_seen in _parts(rect.top, rect.bottom, over):
            (seen if is_seen else hidden).append(((x, start), (x, end)))
    return seen, hidden


def path(segments: Iterable[Segment]) -> Path:
    """Segments as one path."""
    found = Path()
    for start, end in segments:
        found.move(*start).line(*end)
    return found


def _parts(first: int, last: int, over: list[tuple[int, int]]) -> list[tuple[int, int, bool]]:
    """A line from `first` to `last` in parts, each with whether nothing lies over it."""
    ends = sorted({first, last, *(end for span in over for end in span if first < end < last)})
    parts: list[tuple[int, int, bool]] = []
    for start, end in pairwise(ends):
        is_seen = not any(low <= start and end <= high for low, high in over)
        if parts and parts[-1][2] == is_seen:
            start = parts.pop()[0]
        parts.append((start, end, is_seen))
    return parts
