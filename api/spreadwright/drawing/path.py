"""The outline of a shape: move, line, curve, close.

Coordinates are absolute ticks. They are written as rounded relative steps, so that long outlines stay short, rounding
never adds up, and an outline that has been written can be moved as a whole.
"""

from collections.abc import Iterable

from spreadwright.drawing.millimetres import DECIMALS, decimal, scaled
from spreadwright.geometry import Rect

Point = tuple[int, int]


class Path:
    """An outline under construction; every verb returns the path itself.

    >>> Path().move(320, 320).line(640, 320).line(640, 480).close().data
    'M1 1h1v0.5z'
    """

    def __init__(self, *, places: int = DECIMALS) -> None:
        self._places = places
        self._parts: list[str] = []
        self._first = self._here = self._start = (0, 0)

    @property
    def data(self) -> str:
        """What an SVG path holds in `d`."""
        if not self._parts:
            return ""
        return "M" + _joined(self._first, self._places) + "".join(self._parts)

    def moved(self, x: int, y: int) -> "Path":
        """The same outlines further right and further down, by ticks; rounded as one."""
        copy = Path(places=self._places)
        right, down = self._scaled(x, y)
        copy._first = (self._first[0] + right, self._first[1] + down)
        copy._here = (self._here[0] + right, self._here[1] + down)
        copy._start = (self._start[0] + right, self._start[1] + down)
        copy._parts = ["".join(self._parts)]
        return copy

    def add(self, other: "Path", x: int, y: int) -> "Path":
        """The outlines of another path, further right and further down by ticks; it has as many places."""
        if not other._parts:
            return self
        moved = other.moved(x, y)
        if self._parts:
            step = moved._first[0] - self._here[0], moved._first[1] - self._here[1]
            self._parts += "m" + _joined(step, self._places), *moved._parts
        else:
            self._first, self._parts = moved._first, moved._parts
        self._here, self._start = moved._here, moved._start
        return self

    def move(self, x: int, y: int) -> "Path":
        """Start a new outline at a point."""
        if not self._parts:
            self._first = self._here = self._scaled(x, y)
            self._parts.append("")
        else:
            self._parts.append("m" + _joined(self._step(x, y), self._places))
        self._start = self._here
        return self

    def line(self, x: int, y: int) -> "Path":
        """A straight line to a point."""
        dx, dy = self._step(x, y)
        if dy == 0:
            self._parts.append("h" + decimal(dx, self._places))
        elif dx == 0:
            self._parts.append("v" + decimal(dy, self._places))
        else:
            self._parts.append("l" + _joined((dx, dy), self._places))
        return self

    def quad(self, x1: int, y1: int, x: int, y: int) -> "Path":
        """A curve to a point with one control point."""
        control, end = self._offset(x1, y1), self._step(x, y)
        self._parts.append("q" + _joined((*control, *end), self._places))
        return self

    def curve(self, x1: int, y1: int, x2: int, y2: int, x: int, y: int) -> "Path":
        """A curve to a point with two control points."""
        first, second, end = self._offset(x1, y1), self._offset(x2, y2), self._step(x, y)
        self._parts.append("c" + _joined((*first, *second, *end), self._places))
        return self

    def close(self) -> "Path":
        """Back to where the outline started."""
        self._parts.append("z")
        self._here = self._start
        return self

    def lines(self, points: Iterable[Point]) -> "Path":
        """Move to the first point and draw straight lines through the others."""
        for index, (x, y) in enumerate(points):
            _ = self.line(x, y) if index else self.move(x, y)
        return self

    def rect(self, rect: Rect) -> "Path":
        """A rectangle, from its top left corner to the right."""
        self.move(rect.left, rect.top).line(rect.right, rect.top).line(rect.right, rect.bottom)
        return self.line(rect.left, rect.bottom).close()

    def ellipse(self, x: int, y: int, across: int, down: int) -> "Path":
        """A whole ellipse by its middle and its two radii."""
        a, d = across * 4 * 138071 // 1000000, down * 4 * 138071 // 1000000  # 0.5523: a quarter circle as one curve
        self.move(x + across, y).curve(x + across, y + d, x + a, y + down, x, y + down)
        self.curve(x - a, y + down, x - across, y + d, x - across, y)
        self.curve(x - across, y - d, x - a, y - down, x, y - down)
        return self.curve(x + a, y - down, x + across, y - d, x + across, y).close()

    def _scaled(self, x: int, y: int) -> Point:
        return scaled(x, self._places), scaled(y, self._places)

    def _offset(self, x: int, y: int) -> Point:
        to = self._scaled(x, y)
        return to[0] - self._here[0], to[1] - self._here[1]

    def _step(self, x: int, y: int) -> Point:
        offset = self._offset(x, y)
        self._here = (self._here[0] + offset[0], self._here[1] + offset[1])
        return offset


def _joined(values: Iterable[int], places: int) -> str:
    """Numbers side by side; a minus sign parts them as well as a space does."""
    text = " ".join(decimal(value, places) for value in values)
    return text.replace(" -", "-")
