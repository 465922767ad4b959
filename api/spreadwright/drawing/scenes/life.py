"""People and what they make: figures, houses, boats. Places are the foot of a thing, sizes its height, in units."""

from collections.abc import Sequence
from itertools import pairwise

from spreadwright.drawing.scenes.brush import Brush, Spot
from spreadwright.drawing.scenes.light import SKIN
from spreadwright.drawing.tint import darker, lighter, mixed


def person(brush: Brush, x: float, y: float, size: float, coat: str, *, stride: float = 0.05) -> None:
    """Somebody seen from behind or afar: legs, coat, head, hair."""
    legs = brush.light.far(brush.light.dark, 0.12)
    brush.oval(x + size * 0.16, y, size * 0.26, size * 0.035, brush.light.dark, 0.22)
    for side in (-1, 1):
        brush.stroke(
            [(x + side * size * stride, y - size * 0.02), (x + side * size * 0.04, y - size * 0.42)], legs, size * 0.075
        )
    brush.blob(
        [
            (x - size * 0.11, y - size * 0.86), (x + size * 0.11, y - size * 0.86), (x + size * 0.17, y - size * 0.56),
            (x + size * 0.16, y - size * 0.3), (x - size * 0.16, y - size * 0.3), (x - size * 0.17, y - size * 0.56),
        ],
        coat,
    )  # fmt: skip
    brush.stroke(
        [(x + size * 0.12, y - size * 0.7), (x + size * 0.16, y - size * 0.42)], darker(coat, 0.14), size * 0.06
    )
    brush.disc(x, y - size * 0.9, size * 0.085, SKIN)
    brush.blob(
        [
            (x - size * 0.11, y - size * 0.9), (x - size * 0.09, y - size * 1.03), (x + size * 0.09, y - size * 1.03),
            (x + size * 0.11, y - size * 0.9), (x, y - size * 0.93),
        ],
        darker(brush.light.earth, 0.45),
    )  # fmt: skip


def family(brush: Brush, x: float, y: float, size: float) -> None:
    """Two grown-ups and a child between them."""
    first, second, third = brush.light.coats
    person(brush, x, y, size, first)
    person(brush, x + size * 0.74, y + size * 0.02, size * 0.92, second)
    person(brush, x + size * 0.38, y + size * 0.04, size * 0.6, third)


def dog(brush: Brush, x: float, y: float, size: float) -> None:
    """A small dog that looks ahead."""
    coat = darker(brush.light.earth, 0.25)
    for leg in (-0.32, -0.2, 0.22, 0.34):
        brush.stroke([(x + size * leg, y), (x + size * leg, y - size * 0.35)], coat, size * 0.1)
    brush.oval(x, y - size * 0.45, size * 0.45, size * 0.17, coat)
    brush.disc(x + size * 0.5, y - size * 0.66, size * 0.16, coat)
    brush.stroke([(x + size * 0.55, y - size * 0.64), (x + size * 0.7, y - size * 0.6)], coat, size * 0.12)
    brush.bow(
        (x - size * 0.42, y - size * 0.5),
        (x - size * 0.62, y - size * 0.6),
        (x - size * 0.6, y - size * 0.85),
        coat,
        size * 0.08,
    )


def kite(brush: Brush, hand: Spot, at: Spot, size: float) -> None:
    """A kite on its line."""
    x, y = at
    brush.bow(hand, ((hand[0] + x) / 2 + 0.03, (hand[1] + y) / 2 + 0.06), at, brush.light.dark, 0.003, 0.6)
    brush.shape(
        [(x, y - size), (x + size * 0.6, y - size * 0.2), (x, y + size * 0.8), (x - size * 0.6, y - size * 0.2)],
        brush.light.coats[0],
    )
    brush.shape(
        [(x, y - size), (x, y + size * 0.8), (x - size * 0.6, y - size * 0.2)], lighter(brush.light.coats[0], 0.2)
    )
    brush.bow((x, y + size * 0.8), (x + size * 0.5, y + size * 1.3), (x, y + size * 1.9), brush.light.coats[2], 0.008)


def house(brush: Brush, x: float, y: float, size: float, *, broad: float = 1.0, roof: str = "", far: float = 0) -> None:
    """A house with its gable end lit, a pitched roof, windows and a door; `size` to the ridge."""
    light = brush.light
    wall, side = light.far(light.wall, far), light.far(darker(light.wall, 0.14), far)
    tile = light.far(roof or light.roof, far)
    gable, length, eaves = size * 0.34, size * 0.62 * broad, size * 0.56
    brush.shape([(x - gable, y), (x - gable, y - eaves), (x, y - size), (x + gable, y - eaves), (x + gable, y)], wall)
    brush.shape(
        [(x + gable, y), (x + gable, y - eaves), (x + gable + length, y - eaves), (x + gable + length, y)], side
    )
    brush.shape(
        [
            (x, y - size * 1.03),
            (x + gable * 1.12, y - eaves * 0.96),
            (x + gable + length * 1.04, y - eaves * 0.96),
            (x + length, y - size * 1.03),
        ],
        tile,
    )
    brush.stroke([(x - gable * 1.1, y - eaves * 0.95), (x, y - size * 1.02)], darker(tile, 0.15), size * 0.04)
    glass = light.far(mixed(light.dark, light.sky, 0.35), far)
    _panes(brush, [(x - gable * 0.45, y - eaves * 0.85), (x + gable * 0.2, y - eaves * 0.85)], size * 0.1, glass)
    _panes(brush, [(x + gable + length * f, y - eaves * 0.68) for f in (0.18, 0.62)], size * 0.11, glass)
    door = light.far(light.coats[1], far + 0.1)
    brush.shape(
        [
            (x - gable * 0.2, y),
            (x - gable * 0.2, y - size * 0.26),
            (x + gable * 0.24, y - size * 0.26),
            (x + gable * 0.24, y),
        ],
        door,
    )
    brush.shape(
        [
            (x + length * 0.55, y - size * 0.98),
            (x + length * 0.55, y - size * 1.2),
            (x + length * 0.55 + size * 0.09, y - size * 1.2),
            (x + length * 0.55 + size * 0.09, y - size * 0.98),
        ],
        side,
    )


def _panes(brush: Brush, corners: Sequence[Spot], size: float, colour: str) -> None:
    for x, y in corners:
        brush.shape([(x, y), (x + size, y), (x + size, y + size * 1.25), (x, y + size * 1.25)], colour)


def tower(brush: Brush, x: float, y: float, size: float, far: float = 0) -> None:
    """A church tower with a pointed roof."""
    light = brush.light
    half = size * 0.11
    brush.shape(
        [(x - half, y), (x - half, y - size * 0.62), (x + half, y - size * 0.62), (x + half, y)],
        light.far(light.wall, far),
    )
    brush.shape(
        [(x + half * 0.25, y), (x + half * 0.25, y - size * 0.62), (x + half, y - size * 0.62), (x + half, y)],
        light.far(darker(light.wall, 0.14), far),
    )
    brush.shape(
        [(x - half * 1.3, y - size * 0.61), (x, y - size), (x + half * 1.3, y - size * 0.61)],
        light.far(darker(light.roof, 0.2), far),
    )
    brush.oval(x - half * 0.3, y - size * 0.5, half * 0.26, half * 0.45, light.far(light.dark, far + 0.2))


def lighthouse(brush: Brush, x: float, y: float, size: float) -> None:
    """A banded lighthouse."""
    light = brush.light

    def band(low: float, high: float, colour: str) -> None:
        wide, slim = 0.12 - 0.05 * low, 0.12 - 0.05 * high
        brush.shape(
            [
                (x - size * wide, y - size * low),
                (x - size * slim, y - size * high),
                (x + size * slim, y - size * high),
                (x + size * wide, y - size * low),
            ],
            colour,
        )

    for number in range(5):
        band(0.16 * number, 0.16 * (number + 1), light.roof if number % 2 else light.wall)
    brush.shape(
        [
            (x - size * 0.1, y - size * 0.8),
            (x - size * 0.1, y - size * 0.83),
            (x + size * 0.1, y - size * 0.83),
            (x + size * 0.1, y - size * 0.8),
        ],
        light.dark,
    )
    brush.shape(
        [
            (x - size * 0.05, y - size * 0.83),
            (x - size * 0.05, y - size * 0.93),
            (x + size * 0.05, y - size * 0.93),
            (x + size * 0.05, y - size * 0.83),
        ],
        light.glow,
    )
    brush.shape([(x - size * 0.075, y - size * 0.92), (x, y - size), (x + size * 0.075, y - size * 0.92)], light.roof)


def sailing_boat(brush: Brush, x: float, y: float, size: float, sail: str) -> None:
    """A small boat under two sails, with its reflection."""
    hull = brush.light.dark
    brush.oval(x, y + size * 0.07, size * 0.34, size * 0.05, lighter(sail, 0.3), 0.4)
    brush.shape(
        [
            (x - size * 0.34, y - size * 0.1),
            (x + size * 0.38, y - size * 0.1),
            (x + size * 0.26, y),
            (x - size * 0.26, y),
        ],
        hull,
    )
    brush.stroke([(x, y - size * 0.1), (x, y - size)], hull, size * 0.022)
    brush.shape(
        [(x - size * 0.03, y - size * 0.15), (x - size * 0.03, y - size * 0.97), (x - size * 0.36, y - size * 0.15)],
        sail,
    )
    brush.shape(
        [(x + size * 0.03, y - size * 0.15), (x + size * 0.03, y - size * 0.88), (x + size * 0.33, y - size * 0.15)],
        lighter(sail, 0.35),
    )


def rowing_boat(brush: Brush, x: float, y: float, size: float) -> None:
    """A rowing boat drawn up or afloat; `size` is its length."""
    hull = brush.light.coats[1]
    brush.oval(x, y + size * 0.02, size * 0.52, size * 0.06, brush.light.dark, 0.25)
    rim = [
        (x - size * 0.5, y - size * 0.2),
        (x - size * 0.2, y - size * 0.13),
        (x + size * 0.25, y - size * 0.13),
        (x + size * 0.52, y - size * 0.23),
    ]
    brush.shape([*rim, (x + size * 0.34, y), (x - size * 0.36, y)], hull)
    brush.shape(
        [rim[0], rim[1], rim[2], rim[3], (x + size * 0.3, y - size * 0.17), (x - size * 0.25, y - size * 0.17)],
        darker(brush.light.wall, 0.3),
    )
    brush.stroke(rim, lighter(brush.light.wall, 0.3), size * 0.03)


def bench(brush: Brush, x: float, y: float, size: float) -> None:
    """A slatted bench; `size` is its length."""
    wood = darker(brush.light.earth, 0.2)
    for dx in (-0.42, 0.42):
        brush.stroke([(x + size * dx, y), (x + size * dx, y - size * 0.42)], darker(wood, 0.3), size * 0.03)
    for up in (0.2, 0.31, 0.42):
        brush.stroke([(x - size * 0.5, y - size * up), (x + size * 0.5, y - size * up)], wood, size * 0.055)


def parasol(brush: Brush, x: float, y: float, size: float) -> None:
    """A beach umbrella, leaning a little, with a towel in its shade."""
    first, second, third = brush.light.coats
    brush.oval(x + size * 0.3, y + size * 0.04, size * 0.55, size * 0.07, brush.light.dark, 0.16)
    towel = [(0.12, 0.0), (0.74, -0.03), (0.86, 0.09), (0.2, 0.13)]
    brush.shape([(x + size * dx, y + size * dy) for dx, dy in towel], second)
    brush.stroke([(x, y + size * 0.04), (x + size * 0.17, y - size * 0.9)], brush.light.wall, size * 0.03)
    top = (x + size * 0.19, y - size)
    rim = [
        (x + size * dx, y - size * up)
        for dx, up in ((-0.46, 0.5), (-0.22, 0.55), (0.06, 0.59), (0.36, 0.62), (0.64, 0.61), (0.86, 0.56))
    ]
    for number, (left, right) in enumerate(pairwise(rim)):
        bulge = (1 - abs(number - 2) / 3.2) * 0.05
        corners = [left, _towards(left, top, 0.55, -0.09 + 0.045 * number), top]
        back = [_towards(right, top, 0.55, -0.09 + 0.045 * (number + 1)), right]
        hem = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2 - size * bulge)
        brush.shape([*corners, *back, hem], lighter(third, 0.35) if number % 2 else first)


def _towards(start: Spot, end: Spot, share: float, lift: float) -> Spot:
    """A spot on the way from one to another, pushed sideways and up like the cloth between two ribs."""
    x, y = start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
    return x + lift * 0.4, y - 0.035


def fence(brush: Brush, left: Spot, right: Spot, posts: int) -> None:
    """A post and rail fence that runs from one spot to another, smaller towards the far end."""
    wood = mixed(brush.light.earth, brush.light.dark, 0.3)
    tops, rails = [], []
    for i in range(posts):
        share = i / (posts - 1)
        x, y = left[0] + (right[0] - left[0]) * share, left[1] + (right[1] - left[1]) * share
        tall = 0.11 * (1 - 0.6 * share)
        brush.stroke([(x, y), (x, y - tall)], wood, 0.014 * (1 - 0.6 * share))
        tops.append((x, y - tall * 0.85))
        rails.append((x, y - tall * 0.45))
    for line in (tops, rails):
        brush.stroke(line, wood, 0.007)
