"""The distances in the picture of a placement, drawn between the edges that the ruler touches (ISO 129-1).

A dimension line runs from edge to edge, its figure above it, or on a prolonged line where there is no room between.
Each stands where it meets no label and no other figure and crosses the fewest edges; one that finds no such place is
left to the table.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from math import inf

from spreadwright.drawing.callouts import Callout
from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.dimensions import slashes
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.path import Point
from spreadwright.drawing.placement_page import DrawnPage
from spreadwright.drawing.theme import HAIRLINE, INK, MM, SMALL
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect
from spreadwright.model import Axis
from spreadwright.placing import EQUAL, Measure, PlaceStep

_FIGURE = Style(size=SMALL, is_tabular=True)
_HIGH = SMALL * 3 // 4
_ABOVE = MM * 3 // 4
_PAST = MM
_CLEAR = MM
_LINE = stroked(INK, HAIRLINE)
_DOT = MM
"""What lines keep clear of round the dot on a piece."""
_SMALL = 3 * _HIGH
"""A figure would hide most of the outline of a piece that is drawn no larger."""
_PARTS = 24
_ALONG = sorted(range(1, _PARTS), key=lambda part: abs(2 * part - _PARTS))
"""Where along a piece a line may stand, in 24ths: the middle first."""
_OVER = 12
"""What it costs to run over a piece that is glued on later; a crossed edge costs 3, a place far from the middle 11."""


@dataclass(frozen=True, slots=True)
class Distance:
    """One distance as drawn: the two ends of its line, and the box of its figure."""

    axis: Axis
    start: Point
    end: Point
    figure: str
    box: Rect

    @property
    def line(self) -> Rect:
        """What the line takes, prolonged beneath its figure."""
        if self.axis is Axis.COLUMNS:
            low, high = min(self.start[0], self.box.left), max(self.end[0], self.box.right)
            return Rect.between(low, self.start[1] - 1, high, self.start[1] + 1)
        low, high = min(self.start[1], self.box.top), max(self.end[1], self.box.bottom)
        return Rect.between(self.start[0] - 1, low, self.start[0] + 1, high)


@dataclass(slots=True)
class Obstacles:
    """What figures keep clear of, and the edges that they had better not cross."""

    board: Rect
    boxes: list[Rect]
    edges: list[Rect]
    lines: list[Rect] = field(default_factory=list)
    small: list[Rect] = field(default_factory=list)

    @staticmethod
    def around(
        page: DrawnPage, steps: Sequence[PlaceStep], photos: Sequence[Rect], labels: Sequence[Callout]
    ) -> "Obstacles":
        """The labels with their lines, and the edges of pieces and photographs of a page."""
        boxes = [label.box.inset(-_CLEAR) for label in labels]
        for label in labels:
            if label.leader:
                boxes += [_around(*label.leader[:2]), Rect(*label.leader[0], 0, 0).inset(-_DOT)]
        rects = [page.rect(step.placed.rect) for step in steps] + list(photos)
        return Obstacles(
            page.whole, boxes, [edge for rect in rects for edge in _edges(rect)], small=_small(page, steps)
        )

    def crossed(self, figure: Rect, line: Rect) -> int | None:
        """How many edges a figure crosses; None where it may not stand with its line."""
        if not self.board.contains(figure):
            return None
        if any(box.overlaps(figure) or box.overlaps(line) for box in self.boxes):
            return None
        if any(other.overlaps(figure) for other in (*self.lines, *self.small)):
            return None
        return sum(edge.overlaps(figure) for edge in self.edges)


def _small(page: DrawnPage, steps: Sequence[PlaceStep]) -> list[Rect]:
    """The small pieces that are joined to others: a figure over both would seem to tell of either."""
    joined = [page.rect(step.placed.rect) for step in steps if step.located.base is not None]
    return [rect for rect in joined if max(rect.width, rect.height) <= _SMALL]


def distances(page: DrawnPage, steps: Sequence[PlaceStep], obstacles: Obstacles) -> Iterator[Distance]:
    """Those that find a place, the short ones first; what the eye settles at once has none.

    A distance to an edge that lies under another piece is left to the steps, and of equal ones both are drawn or none.
    """
    measured = [(step, measure) for step in steps if len(step.located.moves) > 1 for measure in step.measures]
    drawn: dict[_Where, Distance] = {}
    for step, measure in sorted(measured, key=lambda each: (each[1].end - each[1].start, each[1].is_repeated)):
        if _where(measure) in drawn:
            continue
        found = _cheapest(page, step, measure, steps, obstacles)
        if found:
            obstacles.boxes.append(found.box)
            obstacles.lines.append(found.line)
            drawn[_where(measure)] = found
    alone = {
        _where(each)
        for step, measure in measured
        if measure.figure == EQUAL and _where(measure) not in drawn
        for each in step.measures
        if each.axis is measure.axis and each.figure == EQUAL
    }
    yield from (each for where, each in drawn.items() if each.figure != EQUAL or where not in alone)


_Where = tuple[Axis, int, int, tuple[int, int]]


def _where(measure: Measure) -> _Where:
    return measure.axis, measure.start, measure.end, measure.beside


def _cheapest(
    page: DrawnPage, step: PlaceStep, measure: Measure, steps: Sequence[PlaceStep], obstacles: Obstacles
) -> Distance | None:
    above = [page.rect(other.placed.rect) for other in steps if other.placed.layer > step.placed.layer]
    least, cheapest = inf, None
    for away, each in enumerate(_places(page, measure)):
        if away // 2 >= least:  # nor is any place further away cheaper
            break
        line = each.line
        if _is_seen(each, above) and (crossed := obstacles.crossed(each.box, line)) is not None:
            cost = 3 * crossed + _OVER * sum(rect.overlaps(line) for rect in above) + away // 2
            if cost < least:
                least, cheapest = cost, each
    return cheapest


def _is_seen(distance: Distance, above: Sequence[Rect]) -> bool:
    """Whether none of its ends lies under a piece that is glued over them."""
    ends = [Rect(end[0] - 1, end[1] - 1, 2, 2) for end in (distance.start, distance.end)]
    return not any(rect.contains(end) for rect in above for end in ends)


def draw_distance(canvas: Canvas, distance: Distance) -> None:
    """The line with its strokes, and the figure on white."""
    line, box = distance.line, distance.box
    canvas.rect(box, filled(WHITE))
    if distance.axis is Axis.COLUMNS:
        canvas.line((line.left, distance.start[1]), (line.right, distance.start[1]), _LINE)
        at, turned_deg = (box.left + box.width // 2, box.bottom), 0
    else:
        canvas.line((distance.start[0], line.top), (distance.start[0], line.bottom), _LINE)
        at, turned_deg = (box.right, box.top + box.height // 2), -90
    slashes(canvas, [distance.start, distance.end])
    write(canvas, distance.figure, at, _FIGURE, align=Align.MIDDLE, turned_deg=turned_deg)


def _places(page: DrawnPage, measure: Measure) -> Iterator[Distance]:
    low, high = measure.beside
    long = width(measure.figure, _FIGURE) + MM // 2
    for part in _ALONG:
        at = low + (high - low) * part // _PARTS
        start, end = _drawn(page, measure, measure.start, at), _drawn(page, measure, measure.end, at)
        first, last = (start[0], end[0]) if measure.axis is Axis.COLUMNS else (start[1], end[1])
        starts = (first + last - long) // 2, last + _PAST, first - _PAST - long
        for where in starts[:1] if last - first >= long else starts[1:]:
            yield Distance(measure.axis, start, end, measure.figure, _box(measure.axis, start, where, long))


def _box(axis: Axis, on_line: Point, start: int, long: int) -> Rect:
    """Above a level line, left of an upright one, so that its figure reads from the right."""
    if axis is Axis.COLUMNS:
        return Rect(start, on_line[1] - _ABOVE - _HIGH, long, _HIGH)
    return Rect(on_line[0] - _ABOVE - _HIGH, start, _HIGH, long)


def _drawn(page: DrawnPage, measure: Measure, along: int, beside: int) -> Point:
    at = (along, beside) if measure.axis is Axis.COLUMNS else (beside, along)
    drawn = page.rect(Rect(*at, 0, 0))
    return drawn.left, drawn.top


def _edges(rect: Rect) -> tuple[Rect, ...]:
    return (
        Rect(rect.left, rect.top, rect.width, 1),
        Rect(rect.left, rect.bottom, rect.width, 1),
        Rect(rect.left, rect.top, 1, rect.height),
        Rect(rect.right, rect.top, 1, rect.height),
    )


def _around(one: Point, two: Point) -> Rect:
    xs, ys = sorted((one[0], two[0])), sorted((one[1], two[1]))
    return Rect.between(xs[0] - MM // 4, ys[0] - MM // 4, xs[1] + MM // 4, ys[1] + MM // 4)
