"""Contours: the height lines of a hilly land that never was, every fifth one bolder.

The land is a sum of waves whose crests fit the repeat, so the print joins at its edges. Lines are traced by marching
squares (linear interpolation on each cell's edges) and rounded off with curves.
"""

from functools import lru_cache
from itertools import pairwise
from math import pi, sin
from random import Random

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.patterns.ground import ground, inks, seed_of, tile_side
from spreadwright.drawing.patterns.level import Level, levels
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Face

_SMALLEST_LAND, _LARGEST_LAND = 150 * MM, 320 * MM
_CELL = 7 * MM
_SPACING = 6.5
"""Millimetres between two lines where the land is of middling steepness."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """Height lines; a second ink draws every fifth, a third tints the heights' edge."""
    ground(canvas, face, area)
    land = tile_side(face.repeat, _SMALLEST_LAND, _LARGEST_LAND)
    seed = seed_of(face)
    name = f"contour-{Random(seed).getrandbits(32):08x}"
    if not canvas.has_motif(name):
        with canvas.motif(name):
            _lines(canvas, face, seed, land)
    for column in range(area.left // land, (area.right - 1) // land + 1):
        for row in range(area.top // land, (area.bottom - 1) // land + 1):
            canvas.use(name, (column * land, row * land))


def _lines(canvas: Canvas, face: Face, seed: str, land: int) -> None:
    own = inks(face)
    thin, bold = Path(places=1), Path(places=1)  # a tenth of a millimetre: curves hide it
    for number, level in enumerate(_traced(seed, land)):
        for line in level:
            _smooth(bold if number % 5 == 2 else thin, line)
    canvas.path(thin, stroked(own[0], MM * 32 // 100, is_round=True))
    canvas.path(bold, stroked(own[1 % len(own)], MM * 75 // 100, is_round=True))


@lru_cache(maxsize=64)
def _traced(seed: str, land: int) -> tuple[Level, ...]:
    """The lines of every level on a square land, ticks."""
    cells = max(8, min(round(land / _CELL), 96))
    heights = _heights(seed, land, cells)
    low, high = min(map(min, heights)), max(map(max, heights))
    count = max(6, min(round(land / MM / _SPACING / 2.4), 30))
    step = (high - low) / (count + 1)
    return levels(heights, land, tuple(low + step * (i + 0.7) for i in range(count)))


def _heights(seed: str, land: int, cells: int) -> list[list[float]]:
    """Heights at the corners of the cells; the last row and column repeat the first."""
    chance = Random(seed)
    finest = max(1, round(land / (70 * MM)))
    waves = [
        (across, down, chance.uniform(0, 2 * pi), chance.uniform(0.6, 1.0) / (across**2 + down**2) ** 0.62)
        for across in range(finest + 1)
        for down in range(-finest, finest + 1)
        if (across, down) > (0, 0)
    ]
    turn = 2 * pi / cells
    return [
        [sum(size * sin(turn * (a * x + d * y) + phase) for a, d, phase, size in waves) for x in range(cells + 1)]
        for y in range(cells + 1)
    ]


def _smooth(path: Path, line: tuple[tuple[int, int], ...]) -> None:
    """A line rounded off: curves from middle to middle, the points between as controls."""
    is_closed = line[0] == line[-1]
    middles = [((ax + bx) // 2, (ay + by) // 2) for (ax, ay), (bx, by) in pairwise(line)]
    path.move(*(middles[0] if is_closed else line[0]))
    if not is_closed:
        path.line(*middles[0])
    for control, end in zip(line[1:-1], middles[1:], strict=True):
        path.quad(*control, *end)
    if is_closed:
        path.quad(*line[0], *middles[0]).close()
    else:
        path.line(*line[-1])
