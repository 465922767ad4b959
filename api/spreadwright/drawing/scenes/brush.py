"""A brush for scenes: shapes in units of the picture's shorter side, origin top left, y downward.

One of `across` and `down` is 1 and the other between 1 and 4, but for the oddest slips; what is drawn beyond them is
cut off.
"""

from collections.abc import Sequence
from itertools import pairwise
from math import pi, sin
from random import Random

from spreadwright.drawing.canvas import Canvas, Stop, filled, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.scenes.light import Light
from spreadwright.geometry import Rect

Spot = tuple[float, float]


_LONGEST = 4
"""A picture longer than this by its height is seen from further away, so that it holds no more than others do."""
_PLACES = 1
"""A tenth of a millimetre: finer is not seen, and outlines of scenes are most of a spread."""


class Brush:
    """Draws on one picture; `chance` makes each picture its own."""

    def __init__(self, canvas: Canvas, frame: Rect, light: Light, chance: Random) -> None:
        self._canvas = canvas
        self._frame = frame
        self._unit = max(min(frame.width, frame.height), max(frame.width, frame.height) // _LONGEST, 1)
        self.light = light
        self.chance = chance
        self.across = frame.width / self._unit
        self.down = frame.height / self._unit

    def at(self, x: float, y: float) -> tuple[int, int]:
        """A place on the canvas, ticks."""
        return self._frame.left + round(x * self._unit), self._frame.top + round(y * self._unit)

    def wash(self, top: float, bottom: float, stops: Sequence[tuple[float, str, float]]) -> None:
        """A band across the picture that changes from top to bottom; each stop a place, a colour, an opacity."""
        start, end = self.at(0, top), self.at(0, bottom)
        fill = self._canvas.gradient(start, end, [Stop(*stop) for stop in stops])
        rect = Rect.between(self._frame.left, start[1], self._frame.right, end[1])
        self._canvas.rect(rect, filled(fill))

    def glow(self) -> None:
        """Light over everything, from the upper left; a little shade in the far corner."""
        fill = self._canvas.gradient(
            self.at(0, 0),
            self.at(self.across, self.down),
            (Stop(0, self.light.glow, 0.34), Stop(0.55, self.light.glow, 0), Stop(1, self.light.dark, 0.11)),
        )
        self._canvas.rect(self._frame, filled(fill))

    def shape(self, spots: Sequence[Spot], colour: str, opacity: float = 1) -> None:
        """A shape with straight sides."""
        path = Path(places=_PLACES).lines(self.at(*spot) for spot in spots).close()
        self._canvas.path(path, filled(colour, opacity))

    def blob(self, spots: Sequence[Spot], colour: str, opacity: float = 1) -> None:
        """A closed shape whose corners are rounded off."""
        middles = [
            ((ax + bx) / 2, (ay + by) / 2) for (ax, ay), (bx, by) in zip(spots, [*spots[1:], spots[0]], strict=True)
        ]
        path = Path(places=_PLACES).move(*self.at(*middles[-1]))
        for corner, middle in zip(spots, middles, strict=True):
            path.quad(*self.at(*corner), *self.at(*middle))
        self._canvas.path(path.close(), filled(colour, opacity))

    def oval(self, x: float, y: float, half: float, half_down: float, colour: str, opacity: float = 1) -> None:
        """An ellipse by its middle and its two radii."""
        path = Path(places=_PLACES).ellipse(*self.at(x, y), round(half * self._unit), round(half_down * self._unit))
        self._canvas.path(path, filled(colour, opacity))

    def disc(self, x: float, y: float, radius: float, colour: str, opacity: float = 1) -> None:
        """A circle."""
        self.oval(x, y, radius, radius, colour, opacity)

    def stroke(self, spots: Sequence[Spot], colour: str, width: float, opacity: float = 1) -> None:
        """A line with round ends through spots."""
        path = Path(places=_PLACES).lines(self.at(*spot) for spot in spots)
        self._canvas.path(path, stroked(colour, max(round(width * self._unit), 1), opacity=opacity, is_round=True))

    def bow(self, start: Spot, control: Spot, end: Spot, colour: str, width: float, opacity: float = 1) -> None:
        """A curved line."""
        path = Path(places=_PLACES).move(*self.at(*start)).quad(*self.at(*control), *self.at(*end))
        self._canvas.path(path, stroked(colour, max(round(width * self._unit), 1), opacity=opacity, is_round=True))

    def marks(self, spots: Sequence[tuple[float, float, float]], colour: str, width: float, opacity: float = 1) -> None:
        """Short level strokes, each a start and a length: ripples, grass, tiles."""
        path = Path(places=_PLACES)
        for x, y, length in spots:
            path.move(*self.at(x, y)).line(*self.at(x + length, y))
        self._canvas.path(path, stroked(colour, max(round(width * self._unit), 1), opacity=opacity, is_round=True))

    def ridge(self, height: float, rise: float, waves: float, colour: str, opacity: float = 1) -> "Ridge":
        """Land from a wavy edge down to the bottom of the picture; gives its edge for what stands on it."""
        edge = Ridge(self.chance, height, rise, waves)
        count = max(8, round(10 * self.across))
        xs = [-0.05 + (self.across + 0.1) * i / count for i in range(count + 1)]
        path = Path(places=_PLACES).move(*self.at(xs[0], self.down)).line(*self.at(xs[0], edge(xs[0])))
        for left, right in pairwise(xs):
            middle = (left + right) / 2
            control = 2 * edge(middle) - (edge(left) + edge(right)) / 2
            path.quad(*self.at(middle, control), *self.at(right, edge(right)))
        self._canvas.path(path.line(*self.at(xs[-1], self.down)).close(), filled(colour, opacity))
        return edge

    def between(self, low: float, high: float) -> float:
        """Any number of a range."""
        return self.chance.uniform(low, high)

    def third(self) -> float:
        """A place across, about a third from either side."""
        return self.across * self.chance.choice((0.32, 0.68)) + self.between(-0.05, 0.05)


class Ridge:
    """The height of an edge at each place across: three waves, the finer the flatter."""

    def __init__(self, chance: Random, height: float, rise: float, waves: float) -> None:
        self._height = height
        self._waves = [
            (rise * share, 2 * pi * waves * factor, chance.uniform(0, 2 * pi))
            for share, factor in ((0.62, 0.5), (0.28, 1.1), (0.1, 2.3))
        ]

    def __call__(self, x: float) -> float:
        """How far down the edge lies at `x`."""
        return self._height - sum(size * sin(turn * x + phase) for size, turn, phase in self._waves)
