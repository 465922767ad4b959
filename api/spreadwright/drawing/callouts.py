"""The labels of a placement: number and mark of each piece, inside what is seen of it, or beside the pages with a line.

A label goes into the roomiest free rectangle that holds it, upright or turned, in two sizes. Where none does, a line
runs from a dot on the piece straight to an edge of the pages, past other labels and lines wherever it can. Beside each
edge the labels stand in the order of their lines, so that lines do not cross there either.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import Enum

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.theme import ACCENT, BODY, HAIRLINE, INK, MM, SMALL
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size

REACH = 3 * MM
"""From the edge of the pages to the labels beside it."""
_NUMBER = Style(face=Typeface.SANS_BOLD, size=SMALL, colour=ACCENT, is_tabular=True)
_GAP = MM
_PAD = MM // 2
_BETWEEN = MM
_DOT = MM // 2
_CLEAR = MM * 3 // 4
_PAST_LABEL, _PAST_LINE = 60 * MM, 600 * MM
"""What a detour may cost rather than running through a label, or across a line."""


class _Way(Enum):
    """To which edge of the pages a line runs."""

    LEFT = (-1, 0)
    RIGHT = (1, 0)
    UP = (0, -1)
    DOWN = (0, 1)

    @property
    def is_level(self) -> bool:
        return self in (_Way.LEFT, _Way.RIGHT)


@dataclass(frozen=True, slots=True)
class Spot:
    """A piece that wants a label; `rooms` are the free rectangles of what is seen of it, the roomiest first."""

    number: int
    mark: str
    rooms: tuple[Rect, ...]


@dataclass(frozen=True, slots=True)
class Callout:
    """A label with its place.

    Attributes:
        size: Of the mark, ticks.
        leader: From the dot on the piece to the box; empty when the box lies inside the piece.
    """

    number: int
    mark: str
    box: Rect
    size: int
    is_turned: bool = False
    leader: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class _Line:
    """The part of a leader that lies on the pages."""

    spot: Spot
    dot: Point
    end: Point
    way: _Way

    @property
    def along(self) -> int:
        """Where it meets the edge."""
        return self.end[1] if self.way.is_level else self.end[0]

    @property
    def length(self) -> int:
        return abs(self.dot[0] - self.end[0]) + abs(self.dot[1] - self.end[1])

    def around(self, margin: int) -> Rect:
        xs, ys = sorted((self.dot[0], self.end[0])), sorted((self.dot[1], self.end[1]))
        return Rect.between(xs[0] - margin, ys[0] - margin, xs[1] + margin, ys[1] + margin)


def callouts(spots: Sequence[Spot], board: Rect) -> tuple[Callout, ...]:
    """The labels of all pieces; one that is hidden has none, nor has one for which no edge has room left.

    Args:
        spots: The pieces in gluing order.
        board: All pages together, as drawn.
    """
    inside = {spot.number: found for spot in spots if (found := _inside(spot)) is not None}
    edges = _Edges(board, [callout.box for callout in inside.values()])
    for spot in spots:
        if spot.number not in inside and spot.rooms:
            edges.add(spot)
    return tuple(sorted([*inside.values(), *edges.callouts()], key=lambda callout: callout.number))


def box_size(number: int, mark: str, size: int) -> Size:
    """What an upright label takes, ticks, with a little air."""
    return Size(_run(number, mark, size) + 2 * _PAD, size * 3 // 4 + 2 * _PAD)


def draw_callout(canvas: Canvas, callout: Callout) -> None:
    """The label, and its line with the dot."""
    if callout.leader:
        canvas.path(Path().lines(callout.leader), stroked(INK, HAIRLINE))
        canvas.circle(callout.leader[0], _DOT, filled(INK))
    box = callout.box
    half = _run(callout.number, callout.mark, callout.size) // 2
    turned_deg = -90 if callout.is_turned else 0
    with canvas.group(at=(box.left + box.width // 2, box.top + box.height // 2), turned_deg=turned_deg):
        write(canvas, str(callout.number), (-half, callout.size // 3), _NUMBER)
        write(canvas, callout.mark, (half, callout.size // 3), _mark(callout.size), align=Align.END)


def _mark(size: int) -> Style:
    return Style(face=Typeface.SANS_BOLD, size=size)


def _run(number: int, mark: str, size: int) -> int:
    return width(str(number), _NUMBER) + _GAP + width(mark, _mark(size))


def _inside(spot: Spot) -> Callout | None:
    for is_turned in (False, True):
        for size in (BODY, SMALL):
            upright = box_size(spot.number, spot.mark, size)
            box = upright.turned() if is_turned else upright
            room = next((room for room in spot.rooms if room.size.fits(box)), None)
            if room is not None:
                left, top = room.left + (room.width - box.width) // 2, room.top + (room.height - box.height) // 2
                return Callout(spot.number, spot.mark, Rect.at(left, top, box), size, is_turned)
    return None


@dataclass(slots=True)
class _Edges:
    """The labels beside the pages, edge by edge."""

    board: Rect
    boxes: Sequence[Rect]
    lines: list[_Line] = field(default_factory=list)

    def add(self, spot: Spot) -> None:
        """Choose the shortest line past everything else, unless every edge is full."""
        choices = [line for way in _Way if self._has_room(way, spot) for line in self._lines(spot, way)]
        if choices:
            self.lines.append(self._cheapest(choices))

    def callouts(self) -> Iterator[Callout]:
        for way in _Way:
            lines = sorted((each for each in self.lines if each.way is way), key=lambda each: each.along)
            for line, start in zip(lines, self._starts(way, lines), strict=True):
                yield self._callout(line, start)

    def _lines(self, spot: Spot, way: _Way) -> Iterator[_Line]:
        for room in spot.rooms[:4]:
            for dot in _dots(room):
                yield _Line(spot, dot, self._end(dot, way), way)

    def _end(self, dot: Point, way: _Way) -> Point:
        ends = {
            _Way.LEFT: (self.board.left, dot[1]),
            _Way.RIGHT: (self.board.right, dot[1]),
            _Way.UP: (dot[0], self.board.top),
            _Way.DOWN: (dot[0], self.board.bottom),
        }
        return ends[way]

    def _cheapest(self, choices: Sequence[_Line]) -> _Line:
        """The short ones first: no line costs less than its length."""
        best: tuple[int, Point] | None = None
        for line in sorted(choices, key=lambda each: each.length):
            if best is not None and line.length > best[0]:
                break
            cost = self._cost(line)
            if best is None or cost < best:
                best, found = cost, line
        return found

    def _cost(self, line: _Line) -> tuple[int, Point]:
        near, clear = line.around(MM // 4), line.around(_CLEAR)
        labels = sum(box.overlaps(near) for box in self.boxes)
        lines = sum(other.around(_CLEAR).overlaps(clear) for other in self.lines)
        return line.length + labels * _PAST_LABEL + lines * _PAST_LINE, line.dot

    def _has_room(self, way: _Way, spot: Spot) -> bool:
        taken = [*(line.spot for line in self.lines if line.way is way), spot]
        low, high = self._span(way)
        return sum(_extent(each, way) + _BETWEEN for each in taken) - _BETWEEN <= high - low

    def _span(self, way: _Way) -> tuple[int, int]:
        return (self.board.top, self.board.bottom) if way.is_level else (self.board.left, self.board.right)

    def _starts(self, way: _Way, lines: Sequence[_Line]) -> list[int]:
        """Each label as near to its line as those beside it let it stand."""
        low, high = self._span(way)
        extents = [_extent(line.spot, way) for line in lines]
        before = [sum(extents[:index]) + index * _BETWEEN for index in range(len(lines))]
        wanted = [line.along - each // 2 - past for line, each, past in zip(lines, extents, before, strict=True)]
        last = high - sum(extents) - max(len(lines) - 1, 0) * _BETWEEN
        return [max(low, min(start, last)) + past for start, past in zip(_never_falling(wanted), before, strict=True)]

    def _callout(self, line: _Line, start: int) -> Callout:
        size = box_size(line.spot.number, line.spot.mark, SMALL)
        dx, dy = line.way.value
        near = (line.end[0] + dx * REACH, line.end[1] + dy * REACH)
        if line.way.is_level:
            box = Rect.at(near[0] - (size.width if dx < 0 else 0), start, size)
            end = (near[0], start + size.height // 2)
        else:
            box = Rect.at(start, near[1] - (size.height if dy < 0 else 0), size)
            end = (start + size.width // 2, near[1])
        return Callout(line.spot.number, line.spot.mark, box, SMALL, leader=(line.dot, line.end, end))


def _never_falling(values: Sequence[int]) -> list[int]:
    """The nearest values of which none is below the one before it: neighbours that fall are pooled at their mean."""
    pools: list[tuple[int, int]] = []  # sum and count
    for value in values:
        total, count = value, 1
        while pools and pools[-1][0] * count > total * pools[-1][1]:
            other = pools.pop()
            total, count = total + other[0], count + other[1]
        pools.append((total, count))
    return [total // count for total, count in pools for _ in range(count)]


def _extent(spot: Spot, way: _Way) -> int:
    """What a label takes along its edge, ticks."""
    size = box_size(spot.number, spot.mark, SMALL)
    return size.height if way.is_level else size.width


def _dots(room: Rect) -> Iterator[Point]:
    """Points spread over a room, away from its edges where it is wide enough."""
    for x in _spread(room.left, room.right):
        for y in _spread(room.top, room.bottom):
            yield x, y


def _spread(low: int, high: int) -> list[int]:
    """Both ends, the middle and points between, as far inside as a dot needs."""
    margin = min(_DOT + MM // 4, (high - low) // 2)
    inner = high - low - 2 * margin
    return sorted({low + margin + inner * step // 4 for step in range(5)})
