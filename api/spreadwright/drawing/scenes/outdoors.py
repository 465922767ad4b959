"""Scenes under the sky, one function each: coast, lake, village, wood, park, meadow."""

from spreadwright.drawing.scenes import life, nature
from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.tint import darker, lighter, mixed


def coast(brush: Brush) -> None:
    """A bay with a headland, boats, a beach that curves in, and somebody on it."""
    light, down = brush.light, brush.down
    horizon = down * brush.between(0.36, 0.46)
    sun = nature.sky(brush, horizon)
    brush.ridge(horizon - 0.05, 0.07, 0.9 / brush.across, light.far(light.pine, 0.68))
    nature.water(brush, horizon, down)
    if sun is not None:
        nature.glitter(brush, sun, horizon + 0.01, down)
    for _ in range(brush.chance.choice((1, 2, 3))):
        life.sailing_boat(
            brush,
            brush.between(0.1, 0.9) * brush.across,
            horizon + brush.between(0.03, 0.14),
            brush.between(0.09, 0.17),
            brush.chance.choice((light.wall, light.coats[2])),
        )
    _beach(brush, down * 0.7, brush.chance.random() < 0.5)
    nature.birds(brush, brush.third(), horizon * 0.5)


def _beach(brush: Brush, top: float, is_right: bool) -> None:
    light, across, down = brush.light, brush.across, brush.down
    far, near = (across + 0.1, -0.1) if is_right else (-0.1, across + 0.1)
    middle = across * (0.62 if is_right else 0.38)
    edge = [(far, top - 0.06), (middle, top + 0.02), (across / 2, top + 0.22), (near, down - 0.1)]
    for shift, colour, opacity in (
        (-0.02, lighter(light.low_sky, 0.6), 0.75),
        (0.005, darker(light.sand, 0.14), 1.0),
        (0.03, light.sand, 1.0),
    ):
        spots = [(x, y + shift) for x, y in edge]
        brush.blob([(far, top - 0.06 + shift), *spots, (near, down + 0.6), (far, down + 0.6)], colour, opacity)
    place = across * (0.74 if is_right else 0.2)
    if brush.chance.random() < 0.5:
        life.parasol(brush, place, down * 0.9, 0.3)
    else:
        life.family(brush, place - 0.05, down * 0.92, 0.24)
        life.dog(brush, place - 0.2, down * 0.94, 0.08)


def lake(brush: Brush) -> None:
    """Ranges of hills behind each other, their water, a jetty or a boat, reeds."""
    light, down = brush.light, brush.down
    shore = down * brush.between(0.5, 0.58)
    nature.sky(brush, shore)
    for distance, height, rise in ((0.78, 0.2, 0.13), (0.55, 0.11, 0.1), (0.3, 0.045, 0.05)):
        edge = brush.ridge(shore - height, rise, brush.between(0.8, 1.3), light.far(light.pine, distance))
    for i in range(round(14 * brush.across)):
        x = brush.across * i / (14 * brush.across) + brush.between(-0.03, 0.03)
        nature.conifer(
            brush,
            x,
            edge(x) + 0.03,
            brush.between(0.05, 0.1),
            light.far(darker(light.pine, 0.1), brush.between(0.16, 0.3)),
        )
    nature.water(brush, shore, down)
    brush.wash(shore, shore + 0.16, [(0, light.pine, 0.5), (1, light.pine, 0)])
    if brush.chance.random() < 0.5:
        _jetty(brush, brush.third(), shore)
    else:
        life.rowing_boat(brush, brush.third(), shore + (down - shore) * 0.55, 0.34)
    for side in (0.06, 0.93):
        nature.reeds(brush, brush.across * side, down + 0.03, brush.between(0.24, 0.36))


def _jetty(brush: Brush, x: float, shore: float) -> None:
    light, down = brush.light, brush.down
    end = shore + (down - shore) * 0.32
    wood = mixed(light.earth, light.dark, 0.15)
    brush.shape([(x - 0.2, down), (x - 0.045, end), (x + 0.045, end), (x + 0.16, down)], wood)
    for i in range(1, 9):
        y = end + (down - end) * (i / 9) ** 1.5
        half = 0.045 + 0.14 * (i / 9) ** 1.5
        brush.stroke([(x - half, y), (x + half, y)], darker(wood, 0.2), 0.004 + 0.006 * i / 9)
    life.person(brush, x - 0.015, end + 0.045, 0.2, light.coats[0])
    life.person(brush, x + 0.055, end + 0.06, 0.13, light.coats[2])


def village(brush: Brush) -> None:
    """Roofs gathered around a tower below a hill, a lane that leads to them."""
    light, across, down = brush.light, brush.across, brush.down
    ground = down * brush.between(0.6, 0.68)
    nature.sky(brush, ground)
    brush.ridge(ground - 0.26, 0.14, 0.8, light.far(light.pine, 0.72))
    brush.ridge(ground - 0.12, 0.08, 1.0, light.far(light.leaf, 0.45))
    middle = brush.third()
    life.tower(brush, middle, ground + 0.01, 0.5, 0.14)
    _houses(brush, middle, ground)
    brush.ridge(ground + 0.035, 0.02, 0.9, light.grass)
    nature.grass(brush, ground + 0.06, darker(light.grass, 0.25))
    foot = across * 0.5 + (0.25 if middle < across / 2 else -0.25)
    brush.blob(
        [
            (middle + 0.02, ground + 0.04),
            (middle + 0.1, ground + 0.16),
            (foot, down + 0.05),
            (foot + 0.34, down + 0.3),
            (foot - 0.3, down + 0.3),
            (middle - 0.02, ground + 0.14),
        ],
        light.sand,
    )
    nature.round_tree(brush, across * (0.93 if middle < across / 2 else 0.08), down * 0.93, 0.52, light.leaf)
    nature.flowers(brush, down - 0.1, down, 14)
    life.person(brush, (middle + foot) / 2 + 0.02, (ground + down) / 2 + 0.05, 0.17, light.coats[0])


def _houses(brush: Brush, middle: float, ground: float) -> None:
    roofs = (brush.light.roof, darker(brush.light.roof, 0.2), mixed(brush.light.roof, brush.light.earth, 0.5))
    for row, (far, lift, size) in enumerate(((0.3, -0.05, 0.17), (0.1, 0.02, 0.2))):
        x = middle - 0.62 - 0.12 * row
        while x < middle + 0.6:
            broad = brush.between(0.7, 1.2)
            tall = size * brush.between(0.85, 1.15)
            life.house(brush, x, ground + lift, tall, broad=broad, roof=brush.chance.choice(roofs), far=far)
            x += tall * (0.72 + 0.62 * broad)
            if brush.chance.random() < 0.45:
                nature.cypress(
                    brush,
                    x - tall * 0.2,
                    ground + lift,
                    tall * brush.between(0.8, 1.25),
                    brush.light.far(brush.light.pine, far),
                )
                x += tall * 0.12


def wood(brush: Brush) -> None:
    """A path between tall trunks towards the light."""
    light, across, down = brush.light, brush.across, brush.down
    middle, ground = across * brush.between(0.42, 0.58), down * 0.62
    brush.wash(
        0, down, [(0, light.far(light.leaf, 0.5), 1), (0.5, mixed(light.haze, light.glow, 0.6), 1), (1, light.grass, 1)]
    )
    brush.disc(middle, ground - 0.12, 0.42, light.glow, 0.35)
    brush.disc(middle, ground - 0.1, 0.24, light.glow, 0.5)
    for distance, count, spread in ((0.72, 12, 0.04), (0.5, 8, 0.09), (0.22, 5, 0.16)):
        _trunks(brush, middle, ground + 0.16, distance, count, spread)
    brush.ridge(ground + 0.1, 0.02, 0.8, light.grass)
    brush.blob(
        [
            (middle - 0.02, ground + 0.06),
            (middle + 0.03, ground + 0.06),
            (middle + 0.1, ground + 0.16),
            (middle + 0.3, down + 0.3),
            (middle - 0.42, down + 0.3),
            (middle - 0.02, ground + 0.18),
        ],
        light.sand,
    )
    nature.grass(brush, ground + 0.12, darker(light.grass, 0.28))
    life.person(brush, middle - 0.02, ground + 0.16, 0.19, light.coats[0], stride=0.09)
    life.person(brush, middle + 0.07, ground + 0.17, 0.13, light.coats[2], stride=0.09)
    _canopy(brush)


def _trunks(brush: Brush, middle: float, foot: float, distance: float, count: int, clear: float) -> None:
    light = brush.light
    colour = light.far(mixed(light.earth, light.dark, 0.55), distance)
    for i in range(count):
        x = brush.across * (i + brush.between(0.2, 0.8)) / count
        if abs(x - middle) < clear + 0.03:
            continue
        half = 0.035 * (1.05 - distance)
        sway = brush.between(-0.03, 0.03)
        y = foot + brush.between(-0.01, 0.03)
        brush.blob(
            [
                (x - half * 2, y + 0.02),
                (x - half, y - 0.1),
                (x - half + sway, -0.3),
                (x + half + sway, -0.3),
                (x + half, y - 0.1),
                (x + half * 2.2, y + 0.02),
            ],
            colour,
        )


def _canopy(brush: Brush) -> None:
    leaf = brush.light.leaf
    for i in range(round(13 * brush.across)):
        x = (i + brush.between(0, 1)) / 13
        edge = min(x, brush.across - x) / brush.across
        y = brush.between(-0.06, 0.16) + 0.12 * (0.5 - edge)
        colour = brush.chance.choice((darker(leaf, 0.2), leaf, lighter(leaf, 0.15), mixed(leaf, brush.light.glow, 0.3)))
        brush.disc(x, y, brush.between(0.06, 0.13), colour, 0.75)


def park(brush: Brush) -> None:
    """A great tree, a bench, people on the lawn."""
    light, across, down = brush.light, brush.across, brush.down
    ground = down * brush.between(0.52, 0.6)
    nature.sky(brush, ground)
    edge = brush.ridge(ground - 0.05, 0.04, 1.2, light.far(light.leaf, 0.55))
    for i in range(round(9 * across)):
        x = (i + brush.between(0.1, 0.9)) / 9
        nature.round_tree(brush, x, edge(x) + 0.05, brush.between(0.14, 0.24), light.far(light.leaf, 0.45))
    brush.ridge(ground + 0.01, 0.015, 0.7, light.grass)
    nature.grass(brush, ground + 0.03, darker(light.grass, 0.22), 60)
    x = brush.third()
    other = across - x
    brush.oval(x + 0.1, ground + 0.19, 0.34, 0.04, light.dark, 0.16)
    nature.round_tree(brush, x, ground + 0.18, 0.8, light.leaf)
    life.bench(brush, x + (0.2 if x < other else -0.2), ground + 0.24, 0.24)
    life.family(brush, other - 0.1, down * 0.9, 0.26)
    nature.flowers(brush, down - 0.07, down, 18)


def meadow(brush: Brush) -> None:
    """Rolling fields, a fence, a child with a kite."""
    light, across, down = brush.light, brush.across, brush.down
    line = down * brush.between(0.54, 0.62)
    nature.sky(brush, line)
    brush.ridge(line - 0.1, 0.1, 0.7, light.far(light.pine, 0.65))
    edge = brush.ridge(line, 0.07, 0.8, light.far(light.grass, 0.35))
    for _ in range(round(6 * across)):
        x = brush.between(0, across)
        nature.cypress(brush, x, edge(x) + 0.02, brush.between(0.06, 0.13), light.far(light.pine, 0.3))
    brush.ridge(line + 0.1, 0.06, 0.6, mixed(light.grass, light.sand, 0.45))
    brush.ridge(line + 0.2, 0.05, 0.55, light.grass)
    nature.grass(brush, line + 0.24, darker(light.grass, 0.25), 60)
    life.fence(brush, (-0.05, down * 0.98), (across * 0.75, line + 0.2), 8)
    x = brush.third()
    life.person(brush, x, down * 0.9, 0.25, light.coats[1], stride=0.1)
    life.kite(brush, (x + 0.04, down * 0.9 - 0.16), (across - x * 0.8, line * 0.4), 0.085)
    nature.flowers(brush, down - 0.13, down, 30)


def harbour(brush: Brush) -> None:
    """A lighthouse on its rock, the sea about it, boats coming home."""
    light, across, down = brush.light, brush.across, brush.down
    horizon = down * brush.between(0.52, 0.6)
    sun = nature.sky(brush, horizon)
    brush.ridge(horizon - 0.03, 0.045, 0.9, light.far(light.pine, 0.7))
    nature.water(brush, horizon, down)
    if sun is not None:
        nature.glitter(brush, sun, horizon + 0.01, down)
    x = brush.third()
    life.lighthouse(brush, x, horizon + 0.06, 0.48)
    stone = mixed(light.earth, light.dark, 0.3)
    brush.blob(
        [
            (x - 0.34, horizon + 0.16),
            (x - 0.2, horizon + 0.02),
            (x, horizon + 0.03),
            (x + 0.14, horizon),
            (x + 0.36, horizon + 0.17),
        ],
        stone,
    )
    brush.blob(
        [(x - 0.3, horizon + 0.14), (x - 0.17, horizon + 0.03), (x - 0.02, horizon + 0.05), (x - 0.06, horizon + 0.14)],
        lighter(stone, 0.2),
    )
    brush.marks(
        [(x - 0.3 + 0.07 * i, horizon + 0.135 + 0.008 * (i % 3), 0.06) for i in range(9)], light.wall, 0.009, 0.8
    )
    life.sailing_boat(
        brush, across - x + brush.between(-0.1, 0.1), horizon + (down - horizon) * 0.62, 0.3, light.coats[0]
    )
    life.sailing_boat(brush, across - x * 0.5, horizon + 0.05, 0.1, light.wall)
    nature.birds(brush, across - x, horizon * 0.4)
