"""Contours: the height lines of a hilly land that never was, every fifth one bolder.

The land is a sum of waves whose crests fit the repeat, so the print joins at its edges. Lines are traced by marching
squares (linear interpolation on each cell's edges) and rounded off with curves.
"""

from collections.abc import Iterator
from functools import lru_cache
from itertools import groupby, pairwise
from math import pi, sin
from random import Random

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.patterns.ground import ground, inks, seed_of, tile_side
from spreadwright.drawing.patterns.level import Level, Line, levels
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Face

_SMALLEST_LAND, _LARGEST_LAND = 150 * MM, 320 * MM
_CELL = 9 * MM // 2
_SPACING = 6.5
"""Millimetres between two lines where the land is of middling steepness."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """Height lines; a second ink draws every fifth, a third tints the heights' edge."""
    ground(canvas, face, area)
    land = tile_side(face.repeat, _SMALLEST_LAND, _LARGEST_LAND)
    seed = seed_of(face)
    corners = [
        (column * land, row * land)
        for column in range(area.left // land, (area.right - 1) // land + 1)
        for row in range(area.top // land, (area.bottom - 1) // land + 1)
    ]
    if 4 * area.area < land * land and len(corners) == 1:
        with canvas.group(at=corners[0]):
            _lines(canvas, face, _near(_traced(seed, land), area.moved(-corners[0][0], -corners[0][1])))
        return
    name = f"contour-{Random(seed).getrandbits(32):08x}"
    if not canvas.has_motif(name):
        with canvas.motif(name):
            _lines(canvas, face, _traced(seed, land))
    for corner in corners:
        canvas.use(name, corner)


def _near(land: tuple[Level, ...], area: Rect) -> tuple[Level, ...]:
    """The parts of the lines in and about a small area, so that a small piece is a small picture."""
    wide = area.inset(-3 * _CELL)
    return tuple(tuple(run for line in level for run in _runs_within(line, wide)) for level in land)


def _runs_within(line: Line, area: Rect) -> Iterator[Line]:
    for inside, run in groupby(line, lambda at: area.left <= at[0] <= area.right and area.top <= at[1] <= area.bottom):
        points = tuple(run)
        if inside and len(points) > 2:
            yield points


def _lines(canvas: Canvas, face: Face, levels_of_land: tuple[Level, ...]) -> None:
    own = inks(face)
    thin, bold = Path(places=1), Path(places=1)  # a tenth of a millimetre: curves hide it
    for number, level in enumerate(levels_of_land):
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
        if (across, down) > (0, 0) and across**2 + down**2 <= finest**2 + 1
    ]
    turn = 2 * pi / cells
    return [
        [sum(size * sin(turn * (a * x + d * y) + phase) for a, d, phase, size in waves) for x in range(cells + 1)]
        for y in range(cells + 1)
    ]


def _thinned(line: Line) -> Line:
    """The line without points too near the one before: squares cut a bend into uneven steps that would show."""
    kept = [line[0]]
    for x, y in line[1:-1]:
        if abs(x - kept[-1][0]) + abs(y - kept[-1][1]) >= _CELL:
            kept.append((x, y))
    return (*kept, line[-1])


def _smooth(path: Path, line: Line) -> None:
    """A line rounded off: curves from middle to middle, the points between as controls."""
    line = _thinned(line)
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
