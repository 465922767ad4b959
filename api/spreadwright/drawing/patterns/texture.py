"""How a surface feels, whatever is printed on it: raised and sunken threads that are hardly seen."""

from collections.abc import Callable
from functools import cache
from math import cos, pi, sin
from random import Random

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.patterns.ground import threads
from spreadwright.drawing.patterns.linen import weave
from spreadwright.drawing.theme import MM
from spreadwright.drawing.tint import lightness
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Face, Pattern, Texture

_Threads = tuple[tuple[int, ...], tuple[int, ...]]
"""Lengths drawn and left out in turn, ticks, of upright threads and of lying ones."""

_LIGHT, _SHADE = "#ffffff", "#2a1d10"


def _mm(*lengths: float) -> tuple[int, ...]:
    return tuple(round(length * MM) for length in lengths)


_CANVAS: _Threads = (_mm(0.55, 0.6, 0.5, 0.65, 0.6, 0.55), _mm(0.5, 0.7, 0.6, 0.6))
_LAID: _Threads = (_mm(0.3, 24.7), _mm(0.4, 0.6))
_FELT_TILE, _FIBRES = 40 * MM, 170


def draw_texture(canvas: Canvas, face: Face, area: Rect) -> None:
    """The surface of a part of a sheet, over what is printed there."""
    if face.texture is Texture.SMOOTH or (face.pattern is Pattern.LINEN and face.texture is Texture.LINEN):
        return  # the pattern of that name has woven it already
    _SURFACES[face.texture](canvas, face.colours[0], area)


def _canvas(canvas: Canvas, colour: str, area: Rect) -> None:
    _press(canvas, area, _CANVAS, shade=_seen(colour, 0.06), light=_seen(colour, 0.04))


def _laid(canvas: Canvas, colour: str, area: Rect) -> None:
    """Close lines that lie, and the chains that held them, an inch apart."""
    _press(canvas, area, _LAID, shade=_seen(colour, 0.07), light=_seen(colour, 0.03))


def _felt(canvas: Canvas, colour: str, area: Rect) -> None:
    """Short fibres that lie every way, on a tile that joins at its edges."""
    if not canvas.has_motif("felt"):
        with canvas.motif("felt"):
            for seed, ink in (("sunken", _SHADE), ("raised", _LIGHT)):
                canvas.path(_fibres(seed), stroked(ink, MM * 45 // 100, opacity=0.5, is_round=True))
    with canvas.group(opacity=_seen(colour, 0.08)):
        for row in range(area.top // _FELT_TILE, (area.bottom - 1) // _FELT_TILE + 1):
            for column in range(area.left // _FELT_TILE, (area.right - 1) // _FELT_TILE + 1):
                canvas.use("felt", (column * _FELT_TILE, row * _FELT_TILE))


@cache
def _fibres(seed: str) -> Path:
    chance = Random(seed)
    path = Path(places=1)
    for _ in range(_FIBRES):
        x, y = chance.randrange(_FELT_TILE), chance.randrange(_FELT_TILE)
        turn, bend, length = chance.uniform(0, 2 * pi), chance.uniform(-0.7, 0.7), chance.uniform(1.2, 3.4) * MM
        half = (round(length * cos(turn) / 2), round(length * sin(turn) / 2))
        end = (round(length * cos(turn + bend)), round(length * sin(turn + bend)))
        for left in (x, x - _FELT_TILE):
            for top in (y, y - _FELT_TILE):
                if max(left, left + end[0]) > 0 and max(top, top + end[1]) > 0:
                    path.move(left, top).quad(left + half[0], top + half[1], left + end[0], top + end[1])
    return path


def _seen(colour: str, opacity: float) -> float:
    """The same surface throws more shadow on pale paper than is seen on dark."""
    return opacity * (1.15 - 0.4 * lightness(colour))


def _press(canvas: Canvas, area: Rect, pressed: _Threads, *, shade: float, light: float) -> None:
    for axis, dash, low, high in (
        (Axis.COLUMNS, pressed[0], area.left, area.right),
        (Axis.ROWS, pressed[1], area.top, area.bottom),
    ):
        first = low // sum(dash) * sum(dash)
        threads(canvas, area, axis, first, high, dash, _SHADE, shade)
        threads(canvas, area, axis, first - dash[0] // 3, high, dash, _LIGHT, light)


_SURFACES: dict[Texture, Callable[[Canvas, str, Rect], None]] = {
    Texture.LINEN: weave,
    Texture.CANVAS: _canvas,
    Texture.LAID: _laid,
    Texture.FELT: _felt,
}
