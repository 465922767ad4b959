"""Sky, water and what grows: parts of scenes. Places are the foot of a thing, sizes its height, both in units."""

from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.tint import darker, lighter, mixed


def sky(brush: Brush, horizon: float) -> float | None:
    """The sky down to the horizon, a low sun or none, a few clouds; gives where the sun stands."""
    sun = None
    light = brush.light
    brush.wash(0, horizon, [(0, light.sky, 1), (0.75, mixed(light.sky, light.low_sky, 0.8), 1), (1, light.low_sky, 1)])
    if brush.chance.random() < 0.6:
        sun = x = brush.between(0.15, 0.85) * brush.across
        y = horizon * brush.between(0.3, 0.62)
        brush.disc(x, y, 0.16, light.glow, 0.25)
        brush.disc(x, y, 0.10, light.glow, 0.35)
        brush.disc(x, y, 0.055, lighter(light.glow, 0.5), 0.9)
    for _ in range(brush.chance.choice((1, 2, 3))):
        cloud(brush, brush.between(0, brush.across), horizon * brush.between(0.15, 0.6), brush.between(0.1, 0.2))
    return sun


def cloud(brush: Brush, x: float, y: float, size: float) -> None:
    """A flat-bottomed cloud of a few soft heads."""
    colour = lighter(brush.light.low_sky, 0.55)
    spots = [(x - size * 1.5, y), (x - size * 1.2, y - size * 0.3), (x - size * 0.6, y - size * 0.25)]
    spots += [(x - size * 0.3, y - size * 0.75), (x + size * 0.4, y - size * 0.7), (x + size * 0.6, y - size * 0.3)]
    spots += [(x + size * 1.3, y - size * 0.35), (x + size * 1.7, y), (x + size * 0.2, y + size * 0.1)]
    brush.blob(spots, colour, 0.75)


def birds(brush: Brush, x: float, y: float) -> None:
    """Three or four far birds."""
    for _ in range(brush.chance.choice((3, 4))):
        bx, by, size = x + brush.between(-0.14, 0.14), y + brush.between(-0.07, 0.07), brush.between(0.012, 0.022)
        colour = brush.light.far(brush.light.dark, 0.35)
        brush.bow((bx - size, by - size * 0.4), (bx - size * 0.4, by - size * 0.7), (bx, by), colour, 0.0045)
        brush.bow((bx, by), (bx + size * 0.4, by - size * 0.7), (bx + size, by - size * 0.4), colour, 0.0045)


def water(brush: Brush, top: float, bottom: float) -> None:
    """Water that takes the sky's light far away, with ripples that lengthen towards us."""
    light = brush.light
    brush.wash(top, bottom, [(0, mixed(light.water, light.low_sky, 0.6), 1), (1, light.water, 1)])
    ripples = []
    for _ in range(round(26 * brush.across)):
        near = brush.chance.random()
        ripples.append(
            (brush.between(-0.1, brush.across), top + (bottom - top) * (0.03 + 0.94 * near**1.4), 0.03 + 0.11 * near)
        )
    half = len(ripples) // 2
    brush.marks(ripples[:half], lighter(light.low_sky, 0.5), 0.006, 0.6)
    brush.marks(ripples[half:], darker(light.water, 0.25), 0.006, 0.28)


def round_tree(brush: Brush, x: float, y: float, size: float, colour: str) -> None:
    """A broad tree of a few leafy heads, lighter towards the light."""
    trunk = darker(colour, 0.45)
    brush.shape(
        [
            (x - size * 0.035, y),
            (x - size * 0.022, y - size * 0.6),
            (x + size * 0.022, y - size * 0.6),
            (x + size * 0.035, y),
        ],
        trunk,
    )
    if size < 0.3:
        _far_tree(brush, x, y, size, colour)
        return
    heads = [(-0.2, 0.52, 0.2), (0.2, 0.5, 0.2), (0.0, 0.62, 0.27), (-0.1, 0.78, 0.2), (0.13, 0.74, 0.19)]
    for dx, up, radius in heads:
        brush.disc(x + size * (dx + brush.between(-0.03, 0.03)), y - size * up, size * radius, colour)
    for dx, up, radius in ((-0.24, 0.58, 0.11), (-0.12, 0.82, 0.12), (0.06, 0.66, 0.1)):
        brush.disc(x + size * dx, y - size * up, size * radius, lighter(colour, 0.16), 0.7)


def _far_tree(brush: Brush, x: float, y: float, size: float, colour: str) -> None:
    """The same from afar: one crown and its lit side."""
    wide = size * brush.between(0.3, 0.4)
    crown = [(-1, -0.5), (-0.9, -1.05), (0, -1.3), (0.95, -1.0), (1, -0.45), (0.3, -0.25), (-0.4, -0.25)]
    brush.blob([(x + wide * dx, y + size * 0.75 * dy) for dx, dy in crown], colour)
    brush.disc(x - wide * 0.25, y - size * 0.68, wide * 0.4, lighter(colour, 0.16), 0.6)


def glitter(brush: Brush, x: float, top: float, bottom: float) -> None:
    """The sun's road on the water."""
    spots = []
    for _ in range(26):
        near = brush.chance.random()
        length = 0.02 + 0.06 * near
        spots.append(
            (x - length / 2 + brush.between(-0.5, 0.5) * (0.05 + 0.2 * near), top + (bottom - top) * near**1.3, length)
        )
    brush.marks(spots, lighter(brush.light.glow, 0.4), 0.0065, 0.65)


def conifer(brush: Brush, x: float, y: float, size: float, colour: str) -> None:
    """A spruce: tiers that widen downward."""
    half = size * 0.2
    spots = [(x, y - size)]
    tiers = 4
    right = []
    for tier in range(1, tiers + 1):
        depth = y - size + size * 0.92 * tier / tiers
        wide = half * (tier / tiers) ** 0.85
        right += [(x + wide, depth), (x + wide * 0.55, depth - size * 0.03)]
    left = [(2 * x - px, py) for px, py in reversed(right)]
    brush.stroke([(x, y), (x, y - size * 0.12)], darker(colour, 0.4), size * 0.05)
    brush.shape(spots + right + left, colour)
    brush.shape([(x, y - size), *left[::-1][:6], (x - half * 0.1, y - size * 0.2)], lighter(colour, 0.12), 0.5)


def cypress(brush: Brush, x: float, y: float, size: float, colour: str) -> None:
    """A slim upright tree."""
    brush.stroke([(x, y), (x, y - size * 0.2)], darker(colour, 0.4), size * 0.035)
    spots = [(x, y - size * 1.06), (x + size * 0.12, y - size * 0.5), (x + size * 0.09, y - size * 0.06)]
    brush.blob([*spots, (x - size * 0.09, y - size * 0.06), (x - size * 0.12, y - size * 0.5)], colour)


def grass(brush: Brush, top: float, colour: str, count: int = 40) -> None:
    """Short level marks that make a slope of flat colour a meadow."""
    spots = []
    for _ in range(round(count * brush.across)):
        near = brush.chance.random()
        spots.append((brush.between(0, brush.across), top + (brush.down - top) * near, 0.008 + 0.03 * near))
    brush.marks(spots, colour, 0.006, 0.4)


def reeds(brush: Brush, x: float, y: float, size: float) -> None:
    """A tuft of reeds that leans with the wind."""
    for _ in range(9):
        foot, tall = x + brush.between(-0.5, 0.5) * size * 0.6, size * brush.between(0.6, 1.1)
        lean = brush.between(0.02, 0.25) * size
        colour = darker(brush.light.leaf, brush.between(0.15, 0.4))
        brush.bow((foot, y), (foot, y - tall * 0.6), (foot + lean, y - tall), colour, 0.007)
        if brush.chance.random() < 0.4:
            brush.stroke([(foot + lean, y - tall), (foot + lean * 1.1, y - tall * 1.12)], brush.light.earth, 0.018)


def flowers(brush: Brush, top: float, bottom: float, count: int) -> None:
    """Dots of blossom in the near grass."""
    for _ in range(round(count * brush.across)):
        near = brush.chance.random()
        colour = brush.chance.choice((*brush.light.coats, brush.light.wall))
        brush.disc(brush.between(0, brush.across), top + (bottom - top) * near, 0.006 + 0.009 * near, colour, 0.9)
