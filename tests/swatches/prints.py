"""Draws the pictures of the shipped paper set “Potting bench”, prints of our own design, each one repeat.

    python -m tests.swatches.prints recipes/paper-sets/potting-bench

Every print is painted on a torus, so that it joins at its edges: noise is filtered white noise (its Fourier transform
wraps round), distances are the shortest round the torus, and shapes are drawn once more beyond each edge they cross.
The same code gives the same pixels. Coordinates run from 0 to 1 across one repeat, y down.
"""

import sys
from collections.abc import Callable, Sequence
from functools import lru_cache
from io import BytesIO
from itertools import pairwise
from math import cos, pi, sin
from pathlib import Path

import numpy as np
import numpy.typing as npt
from PIL import Image, ImageDraw

Field = npt.NDArray[np.float64]
"""One number a pixel, rows from the top; of pictures three, 0 to 1."""
Point = tuple[float, float]

SIDE = 512
FINE = 2
"""Pixels of work for one that is kept, each way."""
WORK = SIDE * FINE

CREAM, PUTTY, CLAY, RUST = "#f3ecdd", "#d8ccb6", "#bd6a47", "#8f4a33"
MOSS, BOTTLE, ZINC, OCHRE = "#77834f", "#3a5142", "#a3b3b4", "#d4a44f"


def colour(name: str) -> Field:
    """`#rrggbb` as three numbers from 0 to 1."""
    return np.array([int(name[i : i + 2], 16) for i in (1, 3, 5)]) / 255


@lru_cache(maxsize=4)
def noise(seed: int, fineness: float, steepness: float = 2.0) -> Field:
    """Soft hills between about -2 and 2, `fineness` of them across the picture."""
    chance = np.random.default_rng(seed)
    rows, columns = np.fft.fftfreq(WORK, 1 / WORK), np.fft.fftfreq(WORK, 1 / WORK)
    distance = np.hypot(rows[:, None], columns[None, :])
    weight = 1 / (1 + (distance / fineness) ** 2) ** steepness
    weight[0, 0] = 0
    hills = np.fft.ifft2(np.fft.fft2(chance.standard_normal((WORK, WORK))) * weight).real
    return hills / hills.std()


def grid() -> tuple[Field, Field]:
    """x and y of every pixel's middle."""
    steps = (np.arange(WORK) + 0.5) / WORK
    x, y = np.meshgrid(steps, steps)
    return x, y


def step(values: Field, width: float) -> Field:
    """From 0 to 1 where the values pass through 0, over that width."""
    return np.clip(values / width + 0.5, 0, 1)


def laid(ground: Field, ink: Field, cover: Field) -> Field:
    """Ink over a ground where it covers."""
    return ground * (1 - cover[..., None]) + ink * cover[..., None]


def flat(name: str) -> Field:
    """A colour everywhere."""
    return np.broadcast_to(colour(name), (WORK, WORK, 3)).copy()


def toothed(picture: Field, seed: int, strength: float) -> Field:
    """With the tooth of the paper showing through."""
    return picture * (1 + strength * noise(seed, 90)[..., None])


def shapes(outlines: Sequence[Sequence[Point]]) -> Field:
    """1 within the outlines; what leaves the picture on one side comes in on the other."""
    image = Image.new("L", (WORK, WORK))
    pen = ImageDraw.Draw(image)
    for outline in outlines:
        for across in (-1, 0, 1):
            for down in (-1, 0, 1):
                pen.polygon([((x + across) * WORK, (y + down) * WORK) for x, y in outline], fill=255)
    return np.asarray(image) / 255


def inked(cover: Field, seed: int) -> Field:
    """As a cut block prints it: a little starved in places, specks left bare."""
    starved = step(noise(seed, 60) + 0.5 * noise(seed + 1, 12) + 2.1, 0.5)
    return cover * (0.82 + 0.18 * step(noise(seed + 2, 25), 1.5)) * starved


def marbled() -> Field:
    """Colours floated on water, stirred and combed."""
    x, y = grid()
    stirred = 0.085 * noise(11, 2.2) + 0.02 * noise(12, 7)
    combed = 0.028 * np.abs(((x * 10 + 0.25 * noise(13, 3)) % 2) - 1)
    height = (y + stirred + combed) % 1
    picture = flat(CREAM)
    bands = ((BOTTLE, 0.15), (ZINC, 0.10), (CREAM, 0.06), (CLAY, 0.13), (PUTTY, 0.09), (OCHRE, 0.06), (CREAM, 0.05))
    start, rounds = 0.0, 3
    whole = sum(width for _, width in bands)
    for name, width in bands:
        place = (height * rounds) % 1
        low, high = start / whole, (start + width) / whole
        inside = step(place - low, 0.012) * step(high - place, 0.012)
        picture = laid(picture, colour(name), inside)
        start += width
    return toothed(picture * (1 + 0.035 * noise(14, 4)[..., None]), 15, 0.008)


def washed_stripes() -> Field:
    """Upright strokes of a wide brush, the pigment gathered at their edges."""
    x, _ = grid()
    picture = flat(CREAM)
    strokes = (
        (0.10, 0.085, MOSS),
        (0.26, 0.03, OCHRE),
        (0.42, 0.10, ZINC),
        (0.585, 0.02, CLAY),
        (0.74, 0.085, MOSS),
        (0.90, 0.03, CLAY),
    )
    for number, (middle, half, name) in enumerate(strokes):
        wobble = 0.0045 * noise(30 + number, 5) + 0.0015 * noise(40 + number, 28)
        away = np.abs((x - middle + 0.5) % 1 - 0.5) + wobble
        within = step(half - away, 0.006)
        pooled = np.exp(-(((half - away) / 0.008) ** 2))
        body = 0.62 + 0.10 * noise(50 + number, 4) + 0.05 * noise(60 + number, 40)
        picture = laid(picture, colour(name), np.clip(within * (body + 0.26 * pooled), 0, 1))
    return toothed(picture, 29, 0.008)


def spread(chance: np.random.Generator, count: int) -> Field:
    """Points that keep away from each other: each is the loneliest of a few."""
    found = chance.random((1, 2))
    while len(found) < count:
        tried = chance.random((12, 2))
        apart = np.hypot(*(np.abs((tried[:, None] - found[None, :] + 0.5) % 1 - 0.5)).transpose(2, 0, 1)).min(1)
        found = np.vstack([found, tried[apart.argmax()]])
    return found


def chips() -> Field:
    """Broken stone set in plaster."""
    x, y = grid()
    chance = np.random.default_rng(71)
    count = 150
    sites = spread(chance, count)
    near = np.full((WORK, WORK), 9.0)
    second, owner = near.copy(), np.zeros((WORK, WORK), dtype=int)
    for number, (left, top) in enumerate(sites):
        across, down = (x - left + 0.5) % 1 - 0.5, (y - top + 0.5) % 1 - 0.5
        turn = chance.uniform(0, pi)
        along, beside = across * cos(turn) + down * sin(turn), down * cos(turn) - across * sin(turn)
        distance = np.maximum(np.abs(along) * 0.9, np.abs(beside) * 1.25) + 0.25 * np.hypot(across, down)
        closer = distance < near
        second = np.where(closer, near, np.minimum(second, distance))
        owner, near = np.where(closer, number, owner), np.where(closer, distance, near)
    sizes = chance.choice([0.010, 0.016, 0.026, 0.05], count, p=[0.35, 0.3, 0.2, 0.15])
    names = chance.choice(
        [CLAY, RUST, MOSS, BOTTLE, ZINC, OCHRE, PUTTY], count, p=[0.22, 0.1, 0.2, 0.1, 0.16, 0.1, 0.12]
    )
    inks = np.array([colour(name) for name in names])[owner]
    cover = step(second - near - sizes[owner], 0.003) * step(0.062 - near, 0.003)
    return laid(flat("#f1e9da"), inks, cover)


def leaf(base: Point, turn: float, length: float, half: float) -> list[Point]:
    """The outline of a leaf that grows from its base, `turn` from upright to the right."""
    sides = [(t, half * sin(pi * t**0.8) * (1 - 0.25 * t)) for t in np.linspace(0, 1, 14)]
    outline = sides + [(t, -across) for t, across in reversed(sides)]
    return [
        (base[0] + length * (t * sin(turn) + w * cos(turn)), base[1] - length * (t * cos(turn) - w * sin(turn)))
        for t, w in outline
    ]


def stalk(start: Point, end: Point, width: float) -> list[Point]:
    """A straight thin shape."""
    across, down = end[0] - start[0], end[1] - start[1]
    size = max((across**2 + down**2) ** 0.5, 1e-9)
    dx, dy = -down / size * width / 2, across / size * width / 2
    return [
        (start[0] + dx, start[1] + dy),
        (end[0] + dx, end[1] + dy),
        (end[0] - dx, end[1] - dy),
        (start[0] - dx, start[1] - dy),
    ]


def ring(middle: Point, radius: float) -> list[Point]:
    """A round shape."""
    return [(middle[0] + radius * cos(2 * pi * i / 20), middle[1] + radius * sin(2 * pi * i / 20)) for i in range(20)]


def pea_shoot(foot: Point, tall: float, lean: float) -> list[list[Point]]:
    """A stem with leaves in pairs that grow smaller."""
    spine = [(foot[0] + lean * (t**2) * tall, foot[1] - t * tall) for t in np.linspace(0, 1, 9)]
    found = [stalk(a, b, 0.008) for a, b in pairwise(spine)]
    for number, base in enumerate(spine[1:-1]):
        for side in (-1, 1):
            found.append(leaf(base, side * (1.12 - 0.07 * number), 0.135 - 0.011 * number, 0.22))
    return [*found, leaf(spine[-1], lean, 0.075, 0.24)]


def seed_head(foot: Point, tall: float, lean: float) -> list[list[Point]]:
    """A bare stem that ends in rays, a seed on each."""
    top = (foot[0] + lean * tall, foot[1] - tall)
    found = [stalk(foot, top, 0.008)]
    for number in range(9):
        turn = (number - 4) * 0.36 + lean
        end = (top[0] + 0.13 * sin(turn), top[1] - 0.13 * cos(turn) * 0.9)
        found += [stalk(top, end, 0.005), ring(end, 0.018)]
    return [*found, leaf((foot[0], foot[1] - 0.1), -0.8, 0.1, 0.16), leaf((foot[0], foot[1] - 0.16), 0.8, 0.08, 0.16)]


def shoots() -> Field:
    """Two plants cut in lino, one beside and below the other, that grow upward."""
    picture = flat("#eef0e2")
    green = shapes([*pea_shoot((0.25, 0.48), 0.4, 0.06), *pea_shoot((0.77, 0.98), 0.4, -0.08)])
    brown = shapes([*seed_head((0.74, 0.46), 0.29, 0.04), *seed_head((0.24, 0.97), 0.29, -0.05)])
    spots = shapes(
        [
            ring((x, y), 0.010)
            for x, y in ((0.5, 0.08), (0.5, 0.58), (0.02, 0.34), (0.52, 0.34), (0.0, 0.84), (0.5, 0.83))
        ]
    )
    picture = laid(picture, colour(BOTTLE), inked(green, 81))
    picture = laid(picture, colour(CLAY), inked(brown, 85))
    return toothed(laid(picture, colour(OCHRE), inked(spots, 89)), 92, 0.007)


def pantiles() -> Field:
    """Rows of rounded tiles, each painted by hand, the lower edge of one over the next."""
    x, y = grid()
    chance = np.random.default_rng(101)
    across, rows = 6, 8
    tints = chance.choice(
        [CLAY, "#c87b55", RUST, "#cf9470", PUTTY, OCHRE], (rows, across), p=[0.3, 0.22, 0.14, 0.18, 0.1, 0.06]
    )
    picture = flat("#efe3d2")
    wobble_x, wobble_y = 0.0022 * noise(102, 9), 0.0022 * noise(103, 9)
    for row in reversed(range(rows + 3)):  # the upper rows lie on the lower ones
        for column in range(across):
            left = (column + 0.5 * (row % 2) + 0.5) / across
            dx = (x - left + 0.5) % 1 - 0.5 + wobble_x
            dy = y - (row - 1) / rows + wobble_y
            radius = 0.5 / across
            below = np.hypot(dx, np.maximum(dy, 0) * 0.92)
            inside = step(radius * 0.955 - below, 0.004) * step(dy + 1.4 / rows, 0.004)
            edge = np.exp(-(((radius * 0.955 - below) / 0.006) ** 2))
            paint = np.clip(0.80 + 0.07 * noise(104, 6) + 0.16 * edge + 0.8 * dy, 0, 1)
            picture = laid(
                picture, np.array([0.94, 0.89, 0.82]), step(radius - below, 0.004) * step(dy + 1.4 / rows, 0.004)
            )
            picture = laid(picture, colour(str(tints[row % rows, column])), inside * paint)
    return toothed(picture, 105, 0.008)


PRINTS: dict[str, Callable[[], Field]] = {
    "chips.png": chips,
    "marbled.jpg": marbled,
    "pantiles.jpg": pantiles,
    "shoots.jpg": shoots,
    "washed-stripes.jpg": washed_stripes,
}


def painted(name: str) -> bytes:
    """One picture as a file: JPEG, or PNG of at most 64 colours."""
    fine = np.clip(PRINTS[name](), 0, 1).reshape(SIDE, FINE, SIDE, FINE, 3).mean((1, 3))
    image, file = Image.fromarray(np.rint(fine * 255).astype(np.uint8)), BytesIO()
    if name.endswith(".png"):
        image.quantize(64, dither=Image.Dither.NONE).save(file, "PNG", optimize=True)
    else:
        image.save(file, "JPEG", quality=82, optimize=True)
    return file.getvalue()


def write(folder: Path) -> None:
    """Every picture into a folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in PRINTS:
        (folder / name).write_bytes(painted(name))


if __name__ == "__main__":
    write(Path(sys.argv[1]))
