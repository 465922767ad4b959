"""How a surface feels, whatever is printed on it: raised and sunken threads that are hardly seen."""

from collections.abc import Callable
from functools import lru_cache
from math import cos, radians, sin
from zlib import crc32

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
_FIBRES = (_mm(1.6, 7.1, 2.4, 4.6, 1.1, 9.3), _mm(2.0, 5.9, 1.3, 8.8, 2.6, 7.7))
_FIBRE_PITCH = 3 * MM
_WAYS = (17, 74, 139)
"""Directions of the fibres, degrees to the right."""


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
    """Short fibres that lie in three directions, on lines of which no two begin alike."""
    for direction, turned_deg in enumerate(_WAYS):
        for number, ink in enumerate((_SHADE, _LIGHT)):
            fibres = stroked(ink, MM * 4 // 10, opacity=_seen(colour, 0.047), dash=_FIBRES[number], is_round=True)
            with canvas.group(turned_deg=turned_deg):
                canvas.path(_fibre_lines(area, turned_deg, 2 * direction + number), fibres)


@lru_cache(maxsize=4096)
def _fibre_lines(area: Rect, turned_deg: int, seed: int) -> Path:
    """Lines over an area in the coordinates of the sheet turned about its corner, the same for every part of it.

    They are kept, since a piece lies in the same place of its sheet whatever the paper: no verb may be added to them.
    """
    turn = radians(turned_deg)
    corners = [(x, y) for x in (area.left, area.right) for y in (area.top, area.bottom)]
    along = [x * cos(turn) + y * sin(turn) for x, y in corners]
    beside = [y * cos(turn) - x * sin(turn) for x, y in corners]
    path, period = Path(places=1), sum(_FIBRES[seed % 2])
    for number in range(int(min(beside) // _FIBRE_PITCH), int(max(beside) // _FIBRE_PITCH) + 2):
        chance = crc32(b"%d %d" % (number, seed))
        start = int(min(along) // period - 1) * period + chance % period
        y = number * _FIBRE_PITCH + chance // period % _FIBRE_PITCH
        path.move(start, y).line(int(max(along)), y)
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
