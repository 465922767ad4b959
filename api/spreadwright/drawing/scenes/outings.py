"""Scenes of a longer outing, one function each: mountain hut, camp, picnic, footbridge, two who look at the view."""

from spreadwright.drawing.scenes import life, nature
from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.scenes.light import SKIN
from spreadwright.drawing.tint import darker, lighter, mixed


def mountains(brush: Brush) -> None:
    """Snowy peaks, a hut among spruces, walkers on the path."""
    light, across, down = brush.light, brush.across, brush.down
    foot = down * brush.between(0.58, 0.66)
    nature.sky(brush, foot)
    _peaks(brush, foot, 0.46, light.far(mixed(light.water, light.dark, 0.2), 0.45))
    _peaks(brush, foot + 0.04, 0.28, light.far(mixed(light.pine, light.dark, 0.25), 0.3))
    slope = brush.ridge(foot + 0.02, 0.05, 0.8, light.far(light.grass, 0.2))
    x = brush.third()
    for _ in range(round(11 * across)):
        at = brush.between(0, across)
        if abs(at - x) > 0.2:
            nature.conifer(brush, at, slope(at) + brush.between(0.02, 0.09), brush.between(0.12, 0.22), light.pine)
    life.house(brush, x - 0.05, slope(x) + 0.07, 0.2, broad=0.8, roof=darker(light.roof, 0.25))
    brush.ridge(foot + 0.15, 0.035, 0.7, light.grass)
    nature.grass(brush, foot + 0.18, darker(light.grass, 0.25))
    for dx, size, coat in ((0.0, 0.2, light.coats[0]), (0.14, 0.19, light.coats[1])):
        life.person(brush, across - x + dx, down * 0.9, size, coat, stride=0.09)
        brush.disc(across - x + dx - 0.01, down * 0.9 - size * 0.66, size * 0.13, darker(coat, 0.3))
    nature.flowers(brush, down - 0.08, down, 16)


def _peaks(brush: Brush, foot: float, rise: float, rock: str) -> None:
    """A range of pointed summits, each with snow on top and its far side in the shade."""
    x = -0.1 + brush.between(0, 0.1)
    while x < brush.across + 0.2:
        half = rise * brush.between(0.75, 1.05)
        top = foot - rise * brush.between(0.7, 1.1)
        tall = foot - top
        brush.shape([(x - half, foot + 0.2), (x, top), (x + half, foot + 0.2)], rock)
        brush.shape(
            [(x, top), (x + half, foot + 0.2), (x + half * 0.12, foot + 0.2), (x - 0.02, top + tall * 0.4)],
            darker(rock, 0.14),
        )
        cap = [
            (x, top),
            (x + half * 0.24, top + tall * 0.3),
            (x + half * 0.12, top + tall * 0.27),
            (x + half * 0.02, top + tall * 0.36),
        ]
        brush.shape(
            [*cap, (x - half * 0.1, top + tall * 0.26), (x - half * 0.22, top + tall * 0.3)],
            lighter(brush.light.low_sky, 0.7),
        )
        x += half * brush.between(0.95, 1.3)


def camp(brush: Brush) -> None:
    """A tent under spruces, a small fire, somebody beside it."""
    light, across, down = brush.light, brush.across, brush.down
    ground = down * brush.between(0.58, 0.64)
    nature.sky(brush, ground)
    brush.ridge(ground - 0.12, 0.12, 0.9, light.far(light.pine, 0.65))
    for distance, size, count in ((0.5, 0.3, 15), (0.22, 0.42, 9)):
        for i in range(round(count * across)):
            x = (i + brush.between(0.1, 0.9)) / count
            if distance > 0.3 or min(x, across - x) < across * 0.3:
                nature.conifer(
                    brush,
                    x,
                    ground + 0.05 - distance * 0.05,
                    size * brush.between(0.7, 1.1),
                    light.far(light.pine, distance),
                )
    brush.ridge(ground + 0.03, 0.02, 0.7, light.grass)
    nature.grass(brush, ground + 0.06, darker(light.grass, 0.26))
    x = brush.third()
    _tent(brush, x, ground + 0.2, 0.34)
    _fire(brush, across - x, ground + 0.27)
    life.person(brush, across - x - 0.14, ground + 0.26, 0.22, light.coats[1])
    life.person(brush, across - x + 0.15, ground + 0.29, 0.14, light.coats[2])


def _tent(brush: Brush, x: float, y: float, size: float) -> None:
    cloth = mixed(brush.light.coats[0], brush.light.sand, 0.25)
    brush.oval(x + size * 0.25, y, size * 0.95, size * 0.08, brush.light.dark, 0.2)
    top = (x, y - size)
    brush.shape(
        [top, (x + size * 0.75, y - size * 0.84), (x + size * 1.15, y - size * 0.06), (x + size * 0.5, y)],
        darker(cloth, 0.16),
    )
    brush.shape([(x - size * 0.55, y), top, (x + size * 0.5, y)], cloth)
    brush.shape([(x - size * 0.12, y), (x, y - size * 0.8), (x + size * 0.17, y)], darker(cloth, 0.5))
    brush.shape([(x - size * 0.12, y), (x, y - size * 0.8), (x - size * 0.24, y)], lighter(cloth, 0.25))
    for end in ((x - size * 0.85, y + size * 0.04), (x + size * 1.35, y)):
        brush.stroke([(x if end[0] < x else x + size * 0.75, y - size * 0.85), end], brush.light.wall, 0.004, 0.8)


def _fire(brush: Brush, x: float, y: float) -> None:
    brush.disc(x, y - 0.04, 0.13, brush.light.glow, 0.25)
    brush.disc(x, y - 0.04, 0.075, brush.light.glow, 0.35)
    for lean in (-1, 1):
        brush.stroke([(x - 0.05 * lean, y), (x + 0.04 * lean, y - 0.022)], darker(brush.light.earth, 0.4), 0.017)
    for half, tall, colour in ((0.035, 0.105, brush.light.coats[0]), (0.021, 0.062, brush.light.coats[2])):
        brush.blob(
            [
                (x - half, y - 0.015),
                (x - half * 0.9, y - tall * 0.5),
                (x + half * 0.1, y - tall * 1.15),
                (x + half, y - tall * 0.45),
                (x + half * 0.9, y - 0.01),
            ],
            colour,
        )
    brush.bow((x, y - 0.12), (x + 0.05, y - 0.2), (x, y - 0.32), brush.light.wall, 0.012, 0.3)


def picnic(brush: Brush) -> None:
    """A checked blanket in the shade of a tree, with a basket, and a lake beyond."""
    light, across, down = brush.light, brush.across, brush.down
    line = down * brush.between(0.42, 0.5)
    nature.sky(brush, line)
    brush.ridge(line - 0.06, 0.09, 0.8, light.far(light.pine, 0.62))
    nature.water(brush, line, line + 0.14)
    brush.ridge(line + 0.1, 0.025, 0.8, light.grass)
    nature.grass(brush, line + 0.15, darker(light.grass, 0.24), 70)
    x = brush.third()
    side = 1 if x < across / 2 else -1
    nature.round_tree(brush, x - side * 0.22, line + 0.3, 0.74, light.leaf)
    brush.oval(x + side * 0.05, down * 0.84, 0.5, 0.1, light.dark, 0.12)
    _blanket(brush, x + side * 0.14, down * 0.84)
    life.person(brush, x + side * 0.56, down * 0.86, 0.27, light.coats[0])
    life.dog(brush, x + side * 0.44, down * 0.93, 0.1)
    nature.flowers(brush, down - 0.07, down, 16)


def _blanket(brush: Brush, x: float, y: float) -> None:
    light = brush.light
    corners = [(-0.34, 0.03), (-0.16, -0.085), (0.32, -0.06), (0.2, 0.085)]
    brush.shape([(x + dx, y + dy) for dx, dy in corners], light.wall)

    def on(along: float, deep: float) -> tuple[float, float]:
        near = (
            corners[0][0] + (corners[3][0] - corners[0][0]) * along,
            corners[0][1] + (corners[3][1] - corners[0][1]) * along,
        )
        far = (
            corners[1][0] + (corners[2][0] - corners[1][0]) * along,
            corners[1][1] + (corners[2][1] - corners[1][1]) * along,
        )
        return x + near[0] + (far[0] - near[0]) * deep, y + near[1] + (far[1] - near[1]) * deep

    for i in range(4):
        low, high = i / 4 + 0.02, i / 4 + 0.145
        brush.shape([on(low, 0), on(high, 0), on(high, 1), on(low, 1)], light.coats[0], 0.5)
        brush.shape([on(0, low), on(1, low), on(1, high), on(0, high)], light.coats[0], 0.5)
    straw = mixed(light.earth, light.sand, 0.4)
    bx, by = on(0.45, 0.62)
    brush.bow((bx - 0.075, by - 0.07), (bx, by - 0.22), (bx + 0.075, by - 0.07), darker(straw, 0.2), 0.012)
    brush.shape([(bx - 0.09, by - 0.085), (bx + 0.09, by - 0.085), (bx + 0.07, by), (bx - 0.07, by)], straw)
    brush.marks([(bx - 0.07, by - 0.02 - 0.022 * i, 0.14) for i in range(3)], darker(straw, 0.25), 0.006)
    fx, fy = on(0.75, 0.4)
    for dx, colour in ((0, light.coats[2]), (0.05, light.coats[0]), (0.025, light.leaf)):
        brush.disc(fx + dx, fy - 0.02 - (0.02 if dx == 0.025 else 0), 0.024, colour)


def footbridge(brush: Brush) -> None:
    """A little arched bridge over a stream, willows on either bank."""
    light, across, down = brush.light, brush.across, brush.down
    bank = down * brush.between(0.5, 0.56)
    nature.sky(brush, bank)
    edge = brush.ridge(bank - 0.05, 0.05, 1.1, light.far(light.leaf, 0.5))
    for i in range(round(7 * across)):
        x = (i + brush.between(0.1, 0.9)) / 7
        nature.round_tree(brush, x, edge(x) + 0.05, brush.between(0.16, 0.26), light.far(light.leaf, 0.4))
    brush.ridge(bank, 0.015, 0.7, light.grass)
    nature.grass(brush, bank + 0.03, darker(light.grass, 0.22))
    middle = across / 2
    stream = [
        (middle - 0.16, bank + 0.03),
        (middle + 0.16, bank + 0.03),
        (middle + 0.16, bank + 0.16),
        (middle + 0.52, down + 0.4),
        (middle - 0.5, down + 0.4),
        (middle - 0.17, bank + 0.16),
    ]
    brush.blob(stream, light.water)
    brush.marks(
        [
            (
                middle + brush.between(-0.3, 0.15) * (i / 9),
                bank + 0.14 + (down - bank - 0.16) * i / 10,
                0.03 + 0.012 * i,
            )
            for i in range(1, 10)
        ],
        lighter(light.low_sky, 0.5),
        0.007,
        0.7,
    )
    _arch(brush, middle, bank + 0.17)
    life.person(brush, middle - 0.08, bank + 0.075, 0.19, light.coats[0])
    life.person(brush, middle + 0.06, bank + 0.075, 0.13, light.coats[2])
    _rail(brush, middle, bank + 0.17)
    for x in (0.1, across - 0.12):
        nature.round_tree(brush, x, bank + 0.24, 0.6, mixed(light.leaf, light.grass, 0.3))
    for x in (middle - 0.42, middle + 0.44):
        nature.reeds(brush, x, down + 0.02, 0.2)


_BRIDGE = ((-0.42, 0.0), (-0.2, -0.125), (0.2, -0.125), (0.42, 0.0))


def _arch(brush: Brush, x: float, y: float) -> None:
    wood = mixed(brush.light.earth, brush.light.dark, 0.1)
    deck = [(x + dx, y + dy) for dx, dy in _BRIDGE]
    brush.blob(
        [
            (x - 0.5, y + 0.05),
            *deck,
            (x + 0.5, y + 0.05),
            (x + 0.26, y + 0.03),
            (x + 0.1, y - 0.035),
            (x - 0.1, y - 0.035),
            (x - 0.26, y + 0.03),
        ],
        darker(wood, 0.15),
    )


def _rail(brush: Brush, x: float, y: float) -> None:
    wood = mixed(brush.light.earth, brush.light.wall, 0.25)
    for i in range(9):
        dx = -0.36 + 0.09 * i
        foot = y - 0.105 * (1 - (dx / 0.42) ** 2)
        brush.stroke([(x + dx, foot), (x + dx, foot - 0.085)], wood, 0.009)
    for lift in (0.045, 0.085):
        brush.bow((x - 0.4, y - lift - 0.005), (x, y - 0.215 - lift), (x + 0.4, y - lift - 0.005), wood, 0.011)


def viewpoint(brush: Brush) -> None:
    """Two from behind, close by, and the land that they look at."""
    light, across, down = brush.light, brush.across, brush.down
    line = down * brush.between(0.44, 0.52)
    nature.sky(brush, line)
    for distance, lift, rise in ((0.78, 0.1, 0.1), (0.58, 0.03, 0.07), (0.36, -0.06, 0.05), (0.15, -0.16, 0.05)):
        brush.ridge(
            line - lift,
            rise,
            brush.between(0.7, 1.1),
            light.far(light.pine if distance > 0.3 else light.leaf, distance),
        )
    middle = brush.third()
    tall = 0.62
    left, right = middle - 0.13, middle + 0.17
    _bust(brush, left, down, tall, light.coats[0])
    _hair(brush, left, down, tall, mixed(light.roof, light.dark, 0.6))
    _bust(brush, right, down, tall * 0.9, light.coats[1])
    _cap(brush, right, down, tall * 0.9, light.coats[2])
    nature.birds(brush, across - middle, line * 0.45)
    for x in (0.03, across - 0.05):
        nature.reeds(brush, x, down + 0.05, 0.24)


def _bust(brush: Brush, x: float, y: float, size: float, coat: str) -> None:
    """Neck and shoulders from behind; `size` from the picture's edge to the crown."""
    shoulders = [(-0.36, -0.1), (-0.34, 0.36), (-0.12, 0.52), (0.12, 0.52), (0.34, 0.36), (0.36, -0.1)]
    brush.blob([(x + size * dx, y - size * up) for dx, up in shoulders], coat)
    for side in (-1, 1):
        fold = [(x + side * size * dx, y - size * up) for dx, up in ((0.2, 0), (0.17, 0.2), (0.19, 0.3))]
        brush.bow(fold[0], fold[1], fold[2], darker(coat, 0.2), 0.007)
    neck = [(-0.055, 0.44), (-0.055, 0.66), (0.055, 0.66), (0.055, 0.44)]
    brush.shape([(x + size * dx, y - size * up) for dx, up in neck], darker(SKIN, 0.12))
    collar = [(-0.14, 0.5), (0.14, 0.5), (0.1, 0.42), (-0.1, 0.42)]
    brush.blob([(x + size * dx, y - size * up) for dx, up in collar], lighter(coat, 0.15))
    for side in (-1, 1):
        brush.oval(x + side * size * 0.15, y - size * 0.73, size * 0.03, size * 0.045, SKIN)


def _hair(brush: Brush, x: float, y: float, size: float, colour: str) -> None:
    """Shoulder-long hair with a bun."""
    long = [(-0.13, 0.92), (0.13, 0.92), (0.2, 0.72), (0.15, 0.54), (0.02, 0.5), (-0.15, 0.54), (-0.2, 0.72)]
    brush.disc(x + size * 0.02, y - size * 0.99, size * 0.075, darker(colour, 0.15))
    brush.blob([(x + size * dx, y - size * up) for dx, up in long], colour)
    for dx in (-0.07, 0.0, 0.07):
        start, end = (x + size * dx, y - size * 0.88), (x + size * dx * 1.2, y - size * 0.6)
        brush.bow(start, (x + size * dx * 2, y - size * 0.75), end, lighter(colour, 0.16), 0.006, 0.7)


def _cap(brush: Brush, x: float, y: float, size: float, wool: str) -> None:
    """Short hair under a knitted cap with a bobble."""
    hair = darker(brush.light.earth, 0.4)
    brush.oval(x, y - size * 0.71, size * 0.145, size * 0.15, hair)
    dome = [(-0.17, 0.76), (-0.16, 1.02), (0.16, 1.02), (0.17, 0.76), (0, 0.74)]
    brush.blob([(x + size * dx, y - size * up) for dx, up in dome], wool)
    brush.stroke(
        [(x - size * 0.135, y - size * 0.77), (x + size * 0.135, y - size * 0.77)], lighter(wool, 0.25), size * 0.06
    )
    brush.disc(x, y - size * 0.985, size * 0.05, lighter(wool, 0.3))
