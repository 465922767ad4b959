"""Scenes at home: a table by the window."""

from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.tint import darker, lighter, mixed


def table(brush: Brush) -> None:
    """A mug, a bowl of fruit and a jug with a twig, the hills in the window."""
    light, across, down = brush.light, brush.across, brush.down
    edge = down * 0.7
    room = mixed(light.wall, light.earth, 0.28)
    brush.wash(0, down, [(0, room, 1), (1, darker(room, 0.14), 1)])
    _window(brush, across * brush.chance.choice((0.36, 0.6)), edge)
    wood = mixed(light.earth, light.sand, 0.35)
    brush.shape([(0, edge), (across, edge), (across, down), (0, down)], wood)
    brush.marks(
        [(brush.between(-0.2, across), brush.between(edge + 0.03, down), brush.between(0.2, 0.5)) for _ in range(12)],
        darker(wood, 0.2),
        0.005,
        0.35,
    )
    brush.stroke([(0, edge), (across, edge)], lighter(wood, 0.3), 0.012)
    order = [_jug, _bowl, _mug]
    brush.chance.shuffle(order)
    for place, thing in zip((0.22, 0.52, 0.8), order, strict=True):
        thing(brush, across * place, edge + brush.between(0.07, 0.16))


def _window(brush: Brush, x: float, edge: float) -> None:
    light = brush.light
    half, top, bottom = 0.3, edge - 0.62, edge - 0.1
    brush.shape([(x - half, top), (x + half, top), (x + half, bottom), (x - half, bottom)], light.low_sky)
    brush.shape([(x - half, top), (x + half, top), (x + half, top + 0.2), (x - half, top + 0.2)], light.sky, 0.6)
    for lift, distance in ((0.2, 0.6), (0.12, 0.3)):
        y = bottom - lift
        brush.blob(
            [
                (x - half, bottom),
                (x - half, y),
                (x - 0.1, y - 0.07),
                (x + 0.08, y + 0.03),
                (x + half, y - 0.04),
                (x + half, bottom),
            ],
            light.far(light.pine, distance),
        )
    brush.shape(
        [(x - half, bottom - 0.05), (x + half, bottom - 0.05), (x + half, bottom), (x - half, bottom)],
        light.far(light.grass, 0.2),
    )
    frame = lighter(light.wall, 0.35)
    for line in (
        [(x - half, top), (x + half, top), (x + half, bottom), (x - half, bottom), (x - half, top)],
        [(x, top), (x, bottom)],
        [(x - half, (top + bottom) / 2), (x + half, (top + bottom) / 2)],
    ):
        brush.stroke(line, frame, 0.024)
    brush.stroke([(x - half - 0.05, bottom + 0.02), (x + half + 0.05, bottom + 0.02)], frame, 0.035)


def _shade(brush: Brush, x: float, y: float, half: float) -> None:
    brush.oval(x + half * 0.5, y, half * 1.5, 0.025, brush.light.dark, 0.22)


def _jug(brush: Brush, x: float, y: float) -> None:
    light = brush.light
    _shade(brush, x, y, 0.09)
    for lean in (-0.16, 0.02, 0.18):
        tip = (x + lean, y - 0.52 - 0.06 * (lean < 0.1))
        brush.bow((x, y - 0.2), (x + lean * 0.2, y - 0.4), tip, darker(light.leaf, 0.2), 0.008)
        for i in range(5):
            share = 0.35 + 0.16 * i
            px, py = x + lean * share**1.6, y - 0.2 - 0.33 * share
            brush.oval(px + (0.03 if i % 2 else -0.03), py, 0.03, 0.016, light.leaf)
        brush.disc(tip[0], tip[1], 0.026, light.coats[0])
        brush.disc(tip[0] + 0.03, tip[1] + 0.05, 0.02, light.coats[2])
    body = light.coats[1]
    brush.blob(
        [
            (x - 0.05, y - 0.26),
            (x + 0.05, y - 0.26),
            (x + 0.055, y - 0.17),
            (x + 0.12, y - 0.06),
            (x + 0.07, y + 0.01),
            (x - 0.07, y + 0.01),
            (x - 0.12, y - 0.06),
            (x - 0.055, y - 0.17),
        ],
        body,
    )
    brush.blob(
        [(x - 0.05, y - 0.13), (x - 0.03, y - 0.12), (x - 0.05, y - 0.03), (x - 0.08, y - 0.06)],
        lighter(body, 0.4),
        0.7,
    )


def _bowl(brush: Brush, x: float, y: float) -> None:
    light = brush.light
    _shade(brush, x, y, 0.15)
    for dx, up, colour in (
        (-0.07, 0.14, light.coats[0]),
        (0.08, 0.14, light.coats[2]),
        (0.0, 0.18, mixed(light.leaf, light.glow, 0.3)),
        (0.02, 0.13, light.coats[0]),
    ):
        brush.disc(x + dx, y - up, 0.062, colour)
        brush.disc(x + dx - 0.02, y - up - 0.02, 0.018, lighter(colour, 0.4), 0.7)
    brush.blob(
        [
            (x - 0.2, y - 0.13),
            (x + 0.2, y - 0.13),
            (x + 0.15, y - 0.02),
            (x + 0.06, y + 0.015),
            (x - 0.06, y + 0.015),
            (x - 0.15, y - 0.02),
        ],
        light.wall,
    )
    brush.blob(
        [(x + 0.02, y - 0.11), (x + 0.18, y - 0.12), (x + 0.13, y - 0.02), (x + 0.05, y + 0.01)],
        darker(light.wall, 0.18),
        0.6,
    )


def _mug(brush: Brush, x: float, y: float) -> None:
    light = brush.light
    colour = mixed(light.coats[0], light.wall, 0.25)
    _shade(brush, x, y, 0.08)
    brush.bow((x + 0.07, y - 0.13), (x + 0.17, y - 0.08), (x + 0.07, y - 0.035), colour, 0.022)
    brush.shape([(x - 0.08, y - 0.17), (x + 0.08, y - 0.17), (x + 0.07, y - 0.005), (x - 0.07, y - 0.005)], colour)
    brush.oval(x, y - 0.005, 0.07, 0.018, colour)
    brush.oval(x, y - 0.17, 0.08, 0.02, lighter(colour, 0.3))
    brush.oval(x, y - 0.167, 0.062, 0.014, darker(light.earth, 0.4))
    for dx in (-0.02, 0.025):
        brush.bow((x + dx, y - 0.21), (x + dx + 0.03, y - 0.26), (x + dx, y - 0.32), light.wall, 0.008, 0.55)
