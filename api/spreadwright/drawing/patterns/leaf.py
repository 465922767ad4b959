"""Leaves: sprigs tossed over a tile that repeats, every second column half a tile lower."""

from random import Random

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.patterns.ground import ground, inks, seed_of, tile_side
from spreadwright.drawing.patterns.sprigs import Hand, Press, Sprig, berries, broad, fern, lean_of, olive, seedling
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Face

_ORDER: tuple[Sprig, ...] = (olive, broad, berries, fern)
_CELL = 17 * MM
"""About the room of one sprig."""
_MOST = 1200
"""More tiles than this on one piece, which no common sheet needs, are drawn larger."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """A tossed print, or one that grows upward when the face is directional; no sprig smaller than 5 mm."""
    ground(canvas, face, area)
    repeat = tile_side(face.repeat, 12 * MM, 7 * _CELL)
    name = f"leaf-{_short(seed_of(face))}-{repeat}"
    if not canvas.has_motif(name):
        with canvas.motif(name):
            _tile(canvas, face, repeat)
    scale = 1
    while (area.width // (repeat * scale) + 1) * (area.height // (repeat * scale) + 1) > _MOST:
        scale *= 2
    side = repeat * scale
    for column in range(area.left // side - 1, area.right // side + 2):
        drop = side // 2 if column % 2 else 0
        for row in range((area.top - drop) // side - 1, (area.bottom - drop) // side + 2):
            tile = Rect(column * side, row * side + drop, side, side)
            if tile.inset(-side * 2 // 5).overlaps(area):
                canvas.use(name, (tile.left, tile.top), scale=scale)


def _short(text: str) -> str:
    return f"{Random(text).getrandbits(32):08x}"


def _tile(canvas: Canvas, face: Face, repeat: int) -> None:
    """All sprigs of one tile; those that reach over its edge lie on the neighbours."""
    own, chance = inks(face), Random(seed_of(face))
    press = Press(len(own))
    side = max(2, round(repeat / _CELL))
    cell = repeat / side
    for number in range(side * side):
        column, row = number % side, number // side
        _sprig(press, face, chance, number + row, (column * cell, row * cell), cell)
    for fill, lines, ink in zip(press.fills, press.lines, own, strict=True):
        canvas.path(lines, stroked(ink, round(cell * 0.026), is_round=True))
        canvas.path(fill, filled(ink))
    canvas.path(press.veins, stroked(face.colours[0], round(cell * 0.02), is_round=True))


def _sprig(press: Press, face: Face, chance: Random, number: int, corner: tuple[float, float], cell: float) -> None:
    """One plant in its cell, and a seedling in the cell's corner."""
    lean = lean_of(chance.uniform(-0.05, 0.05) if face.is_directional else chance.random())
    tall = cell * chance.uniform(0.86, 1.0) * (0.82 if face.is_directional else 1)  # upright ones would touch
    middle = Hand(
        corner[0] + cell * chance.uniform(0.42, 0.58), corner[1] + cell * chance.uniform(0.42, 0.58), lean, tall
    )
    foot = middle.at(0, -0.5)
    first, second = number % press.count, (number + 1) % press.count
    hand = Hand(foot[0], foot[1], lean, tall, 1 if chance.random() < 0.5 else -1)
    _ORDER[number % len(_ORDER)](press, hand, first, second)
    small = lean_of(chance.uniform(-0.08, 0.08) if face.is_directional else chance.random())
    seedling(press, Hand(corner[0], corner[1], small, cell * 0.3), second, first)
