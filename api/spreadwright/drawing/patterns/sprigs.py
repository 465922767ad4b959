"""Sprigs: small plants as curves, grown upward from the origin, one unit tall.

Every part is a fill or a line of one ink; `Sprig.drawn` turns, scales and moves it into outlines in ticks.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from math import cos, pi, sin

from spreadwright.drawing.path import Path

Vector = tuple[float, float]


@dataclass
class Press:
    """Where sprigs are pressed: one outline for each ink's fills, one for its lines, one for veins cut out of them."""

    count: int
    fills: list[Path] = field(default_factory=list)
    lines: list[Path] = field(default_factory=list)
    veins: Path = field(default_factory=lambda: Path(places=2))

    def __post_init__(self) -> None:
        self.fills = [Path(places=2) for _ in range(self.count)]
        self.lines = [Path(places=2) for _ in range(self.count)]


@dataclass(frozen=True, slots=True)
class Hand:
    """Holds a sprig: where it grows from (ticks), how far it leans to the right, how tall it is (ticks)."""

    x: float
    y: float
    lean: float
    tall: float
    mirror: int = 1

    def at(self, across: float, up: float) -> tuple[int, int]:
        """A point of the sprig, ticks."""
        across *= self.mirror
        x = across * cos(self.lean) + up * sin(self.lean)
        y = across * sin(self.lean) - up * cos(self.lean)
        return round(self.x + x * self.tall), round(self.y + y * self.tall)


Sprig = Callable[[Press, Hand, int, int], None]
"""Presses one plant with a first and a second ink."""


def olive(press: Press, hand: Hand, first: int, second: int) -> None:
    """A bowed stem with narrow leaves in turn on either side."""
    _stem(press.lines[first], hand, ((0, 0), (0.10, 0.5), (0.0, 0.92)))
    for i in range(7):
        t = 0.12 + 0.125 * i
        side = 1 if i % 2 else -1
        length = 0.34 - 0.018 * i
        _leaf(press.fills[first], hand, _bow(t), side * (0.85 - 0.05 * i), length, 0.062)
    _leaf(press.fills[first], hand, _bow(0.98), -0.12, 0.26, 0.055)


def broad(press: Press, hand: Hand, first: int, second: int) -> None:
    """One broad leaf with its veins."""
    _stem(press.lines[second], hand, ((0, 0), (0.02, 0.1), (0, 0.24)))
    _leaf(press.fills[second], hand, (0, 0.2), 0, 0.78, 0.21)
    press.veins.move(*hand.at(0, 0.24)).quad(*hand.at(0.02, 0.6), *hand.at(0, 0.9))
    for i in range(4):
        up = 0.36 + 0.115 * i
        reach = 0.15 - 0.022 * abs(i - 0.6)
        for side in (1, -1):
            press.veins.move(*hand.at(0.01, up)).quad(
                *hand.at(side * reach * 0.5, up + 0.04), *hand.at(side * reach, up + 0.125)
            )


def berries(press: Press, hand: Hand, first: int, second: int) -> None:
    """A forked twig with round berries and two leaves."""
    _stem(press.lines[first], hand, ((0, 0), (-0.04, 0.4), (0.03, 0.8)))
    for t, side, reach in ((0.3, 1, 0.3), (0.46, -1, 0.3), (0.62, 1, 0.22), (0.74, -1, 0.18)):
        tip = (side * reach * 0.62, 0.8 * t + reach * 0.95)
        _stem(press.lines[first], hand, ((0, 0.8 * t), (side * reach * 0.5, 0.8 * t + reach * 0.35), tip))
        _berry(press.fills[second], hand, tip)
    _berry(press.fills[second], hand, (0.03, 0.85))
    _leaf(press.fills[first], hand, (-0.01, 0.14), -0.75, 0.3, 0.075)
    _leaf(press.fills[first], hand, (0, 0.06), 0.7, 0.26, 0.065)


def fern(press: Press, hand: Hand, first: int, second: int) -> None:
    """A frond whose leaflets shorten toward the tip."""
    _stem(press.lines[second], hand, ((0, 0), (0.06, 0.5), (-0.03, 0.97)))
    for i in range(9):
        t = 0.16 + 0.088 * i
        length = 0.3 * (1 - ((i - 2) / 8.5) ** 2) + 0.03
        x = 2 * t * (1 - t) * 0.06 - 0.03 * t * t
        for side in (1, -1):
            _leaf(press.fills[second], hand, (x, 0.97 * t), side * (1.05 - 0.045 * i), length, 0.036)


def seedling(press: Press, hand: Hand, first: int, second: int) -> None:
    """Two small leaves and a dot: what fills the gaps."""
    _leaf(press.fills[second], hand, (0, 0), 0.5, 0.62, 0.15)
    _leaf(press.fills[second], hand, (0, 0), -0.65, 0.5, 0.13)
    _berry(press.fills[first], hand, (0.02, -0.25), 0.1)


def _bow(t: float) -> Vector:
    """A point of the olive's stem."""
    return 2 * t * (1 - t) * 0.10, 2 * t * (1 - t) * 0.5 + 0.92 * t * t


def _stem(path: Path, hand: Hand, points: tuple[Vector, Vector, Vector]) -> None:
    start, control, end = (hand.at(*point) for point in points)
    path.move(*start).quad(*control, *end)


def _leaf(path: Path, hand: Hand, base: Vector, lean: float, length: float, half: float) -> None:
    """A leaf from its base: fuller below the middle, one side a little rounder than the other."""

    def at(along: float, across: float) -> tuple[int, int]:
        return hand.at(
            base[0] + along * length * sin(lean) + across * half * 1.33 * cos(lean),
            base[1] + along * length * cos(lean) - across * half * 1.33 * sin(lean),
        )

    path.move(*at(0, 0)).curve(*at(0.22, 1.06), *at(0.66, 0.86), *at(1, 0))
    path.curve(*at(0.72, -0.74), *at(0.26, -1.0), *at(0, 0)).close()


def _berry(path: Path, hand: Hand, middle: Vector, radius: float = 0.062) -> None:
    x, y = hand.at(*middle)
    size = round(radius * hand.tall)
    path.ellipse(x, y, size, size)


def lean_of(turn: float) -> float:
    """A share of a full turn as an angle."""
    return turn * 2 * pi
