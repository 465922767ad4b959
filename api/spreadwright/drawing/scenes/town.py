"""Scenes between houses, one function each: a street, a garden, a market stall."""

from spreadwright.drawing.scenes import life, nature
from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.tint import darker, lighter, mixed


def street(brush: Brush) -> None:
    """A row of narrow fronts in the shade and the sun, a tree, a bicycle, somebody with a child."""
    light, across, down = brush.light, brush.across, brush.down
    kerb = down * brush.between(0.74, 0.8)
    nature.sky(brush, kerb)
    fronts = (
        light.wall,
        mixed(light.sand, light.roof, 0.25),
        mixed(light.wall, light.water, 0.4),
        mixed(light.wall, light.leaf, 0.28),
    )
    x, number = -brush.between(0.02, 0.14), brush.chance.randrange(4)
    while x < across:
        wide = brush.between(0.24, 0.34)
        _front(brush, x, kerb, (wide, kerb * brush.between(0.62, 0.84)), fronts[number % 4])
        x, number = x + wide, number + 1
    brush.shape([(0, kerb), (across, kerb), (across, down), (0, down)], mixed(light.sand, light.haze, 0.4))
    brush.marks(
        [
            (brush.between(-0.1, across), brush.between(kerb + 0.03, down), brush.between(0.03, 0.09))
            for _ in range(round(26 * across))
        ],
        darker(light.sand, 0.25),
        0.006,
        0.5,
    )
    place = brush.third()
    _bicycle(brush, across - place, kerb + 0.03, 0.24)
    life.person(brush, place, kerb + 0.11, 0.29, light.coats[0], stride=0.09)
    life.person(brush, place + 0.15, kerb + 0.12, 0.18, light.coats[2], stride=0.09)


def _front(brush: Brush, x: float, foot: float, size: tuple[float, float], wall: str) -> None:
    """One house front: gable, windows in rows, a door, an awning now and then."""
    light, (wide, tall) = brush.light, size
    eaves = foot - tall * 0.82
    brush.shape([(x, foot), (x, eaves), (x + wide / 2, foot - tall), (x + wide, eaves), (x + wide, foot)], wall)
    brush.shape(
        [(x + wide * 0.93, foot), (x + wide * 0.93, eaves), (x + wide, eaves), (x + wide, foot)],
        darker(wall, 0.14),
        0.7,
    )
    brush.stroke([(x, eaves), (x + wide / 2, foot - tall), (x + wide, eaves)], light.roof, 0.022)
    glass, frame = mixed(light.dark, light.sky, 0.45), lighter(light.wall, 0.4)
    rows = max(1, round((tall * 0.82 - 0.24) / 0.15))
    for row in range(rows):
        for share in (0.22, 0.6):
            _window(brush, (x + wide * share, eaves + 0.045 + 0.15 * row), wide * 0.2, glass, frame)
    door = brush.chance.choice(light.coats)
    brush.shape(
        [
            (x + wide * 0.18, foot),
            (x + wide * 0.18, foot - 0.15),
            (x + wide * 0.42, foot - 0.15),
            (x + wide * 0.42, foot),
        ],
        door,
    )
    if brush.chance.random() < 0.5:
        _awning(brush, x + wide * 0.5, foot - 0.16, wide * 0.45)
    else:
        _window(brush, (x + wide * 0.58, foot - 0.14), wide * 0.26, glass, frame)


def _window(brush: Brush, corner: tuple[float, float], wide: float, glass: str, frame: str) -> None:
    (x, y), tall = corner, wide * 1.5
    brush.shape([(x, y), (x + wide, y), (x + wide, y + tall), (x, y + tall)], glass)
    brush.stroke([(x, y + tall), (x + wide, y + tall)], frame, 0.012)
    brush.stroke([(x + wide / 2, y), (x + wide / 2, y + tall)], frame, 0.006)


def _awning(brush: Brush, x: float, y: float, wide: float) -> None:
    first, second = brush.light.coats[0], brush.light.wall
    brush.shape(
        [(x, y + 0.03), (x + wide, y + 0.03), (x + wide, y + 0.16), (x, y + 0.16)],
        mixed(brush.light.dark, brush.light.sky, 0.35),
    )
    for i in range(6):
        low, high = i / 6, (i + 1) / 6
        cloth = [
            (x + wide * low, y),
            (x + wide * high, y),
            (x + wide * (high * 1.1 - 0.05), y + 0.055),
            (x + wide * (low * 1.1 - 0.05), y + 0.055),
        ]
        brush.shape(cloth, second if i % 2 else first)


def _bicycle(brush: Brush, x: float, y: float, size: float) -> None:
    """Two wheels, a frame and a basket, leaning at nothing in particular."""
    light, wheel = brush.light, size * 0.24
    for dx in (-0.32, 0.32):
        for start, end in ((-1, 1), (1, -1)):
            middle = (x + size * dx, y - wheel)
            brush.bow(
                (middle[0] + wheel * start, middle[1]),
                (middle[0], middle[1] + wheel * 2 * end),
                (middle[0] + wheel * end, middle[1]),
                light.dark,
                0.008,
            )
    left, right, pedal = (x - size * 0.32, y - wheel), (x + size * 0.32, y - wheel), (x - size * 0.04, y - wheel)
    seat, bar = (x - size * 0.14, y - size * 0.52), (x + size * 0.22, y - size * 0.54)
    for line in ([left, seat, pedal, left], [seat, bar, pedal], [bar, right]):
        brush.stroke(line, light.coats[1], 0.009)
    brush.stroke([(seat[0] - 0.02, seat[1] - 0.012), (seat[0] + 0.025, seat[1] - 0.012)], light.dark, 0.014)
    brush.stroke([bar, (bar[0] + 0.01, bar[1] - 0.035), (bar[0] - 0.02, bar[1] - 0.045)], light.dark, 0.008)
    brush.shape(
        [
            (bar[0] + 0.01, bar[1] - 0.01),
            (bar[0] + 0.075, bar[1] - 0.01),
            (bar[0] + 0.065, bar[1] + 0.045),
            (bar[0] + 0.02, bar[1] + 0.045),
        ],
        light.earth,
    )


def garden(brush: Brush) -> None:
    """Washing on the line behind the house, flowers, a child."""
    light, across, down = brush.light, brush.across, brush.down
    lawn = down * brush.between(0.52, 0.58)
    nature.sky(brush, lawn)
    edge = brush.ridge(lawn - 0.05, 0.05, 1.2, light.far(light.leaf, 0.45))
    for i in range(round(6 * across)):
        x = (i + brush.between(0.2, 0.8)) / 6
        nature.round_tree(brush, x, edge(x) + 0.06, brush.between(0.16, 0.26), light.far(light.leaf, 0.35))
    place = brush.chance.choice((0.12, 0.62)) * across
    life.house(brush, place, lawn + 0.06, 0.42, broad=0.9)
    brush.ridge(lawn + 0.04, 0.012, 0.7, light.grass)
    nature.grass(brush, lawn + 0.07, darker(light.grass, 0.24), 60)
    _washing(brush, lawn + 0.02)
    x = across - place if 0.2 < (across - place) / across < 0.8 else across * 0.5
    life.person(brush, x, down * 0.86, 0.26, light.coats[0])
    life.person(brush, x + 0.17, down * 0.89, 0.17, light.coats[1], stride=0.1)
    _border(brush)


def _washing(brush: Brush, y: float) -> None:
    light, across = brush.light, brush.across
    left, right = (across * 0.04, y - 0.06), (across * 0.96, y - 0.06)
    for x, top in (left, right):
        brush.stroke([(x, y + 0.2), (x, top - 0.02)], darker(light.earth, 0.2), 0.014)
    brush.bow(left, (across / 2, y + 0.03), right, light.dark, 0.004, 0.7)
    cloths = (
        lighter(light.wall, 0.4),
        light.coats[2],
        lighter(light.wall, 0.4),
        light.coats[0],
        light.sand,
        light.coats[1],
    )
    x, number = across * 0.12, 0
    while x < across * 0.86:
        wide, tall = brush.between(0.07, 0.15), brush.between(0.1, 0.19)
        sag = y - 0.06 + 0.085 * 2 * (x / across) * (1 - x / across)
        cloth = cloths[number % len(cloths)]
        blow = brush.between(-0.015, 0.03)
        brush.shape(
            [(x, sag), (x + wide, sag + 0.002), (x + wide + blow, sag + tall), (x + blow, sag + tall * 0.96)], cloth
        )
        brush.shape(
            [
                (x + wide * 0.62, sag),
                (x + wide * 0.8, sag),
                (x + wide * 0.8 + blow, sag + tall),
                (x + wide * 0.55 + blow, sag + tall),
            ],
            darker(cloth, 0.1),
            0.7,
        )
        x, number = x + wide + brush.between(0.012, 0.05), number + 1


def _border(brush: Brush) -> None:
    """Tall flowers along the lower edge."""
    for i in range(round(22 * brush.across)):
        x, tall = (i + brush.between(0, 1)) / 22, brush.between(0.07, 0.17)
        brush.bow(
            (x, brush.down),
            (x, brush.down - tall * 0.5),
            (x + brush.between(-0.02, 0.02), brush.down - tall),
            darker(brush.light.leaf, 0.2),
            0.007,
        )
        brush.disc(
            x,
            brush.down - tall,
            brush.between(0.013, 0.022),
            brush.chance.choice((*brush.light.coats, brush.light.wall)),
        )


def stall(brush: Brush) -> None:
    """A market stall: striped roof, crates of fruit, somebody choosing."""
    light, across, down = brush.light, brush.across, brush.down
    ground = down * 0.8
    brush.wash(0, down, [(0, mixed(light.low_sky, light.wall, 0.4), 1), (1, mixed(light.sand, light.wall, 0.4), 1)])
    for i in range(round(5 * across)):
        x = i / 5 + brush.between(-0.04, 0.04)
        brush.shape(
            [(x, ground), (x, down * 0.2 + brush.between(-0.1, 0.1)), (x + 0.19, down * 0.16), (x + 0.19, ground)],
            light.far(brush.chance.choice((light.wall, light.sand, light.roof)), 0.62),
        )
    brush.shape([(0, ground), (across, ground), (across, down), (0, down)], light.far(light.earth, 0.5))
    middle, half, top = across / 2, min(0.46, across * 0.44), down * 0.27
    for x in (middle - half * 0.94, middle + half * 0.94):
        brush.stroke([(x, ground + 0.04), (x, top)], darker(light.earth, 0.3), 0.014)
    _crates(brush, middle, ground + 0.05, half)
    for i in range(9):
        low, high = middle - half * 1.08 + half * 2.16 * i / 9, middle - half * 1.08 + half * 2.16 * (i + 1) / 9
        cloth = light.wall if i % 2 else light.coats[0]
        brush.blob(
            [
                (low, top - 0.09),
                (high, top - 0.09),
                (high, top + 0.05),
                ((low + high) / 2, top + 0.1),
                (low, top + 0.05),
            ],
            darker(cloth, 0.12),
        )
        brush.shape(
            [
                (middle + (low - middle) * 0.86, top - 0.16),
                (middle + (high - middle) * 0.86, top - 0.16),
                (high, top + 0.02),
                (low, top + 0.02),
            ],
            cloth,
        )
    life.person(brush, middle - half * 0.6, ground + 0.14, 0.42, light.coats[1])
    life.person(brush, middle - half * 0.18, ground + 0.16, 0.25, light.coats[2])


def _crates(brush: Brush, middle: float, foot: float, half: float) -> None:
    light = brush.light
    wood = mixed(light.earth, light.sand, 0.4)
    fruit = (
        light.coats[0],
        light.coats[2],
        mixed(light.leaf, light.glow, 0.25),
        light.roof,
        mixed(light.coats[2], light.roof, 0.4),
    )
    for row, y in enumerate((foot - 0.16, foot - 0.02)):
        for i in range(5):
            x, wide = middle - half * 0.9 + half * 1.8 * i / 5, half * 0.34
            colour = fruit[(i + 2 * row) % len(fruit)]
            for k in range(5):
                brush.disc(
                    x + wide * (0.12 + 0.19 * k),
                    y - 0.085 - 0.012 * (k % 2),
                    0.021,
                    colour if k % 2 else lighter(colour, 0.12),
                )
            brush.shape([(x, y - 0.085), (x + wide, y - 0.085), (x + wide, y), (x, y)], wood)
            brush.stroke([(x, y - 0.045), (x + wide, y - 0.045)], darker(wood, 0.25), 0.006)
