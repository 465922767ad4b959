"""Stripes: upright bands with a rhythm that follows from the number of inks and the repeat."""

from zlib import crc32

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns.ground import bands, drawn_repeat, ground, inks, seed_of
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.model import Axis, Face

_Band = tuple[int, int, int]
"""Start and width in thousandths of the repeat, and the number of the ink."""

_FINE: tuple[tuple[_Band, ...], ...] = (((0, 460, 0),),)
_AWNING: tuple[_Band, ...] = ((0, 380, 0), (500, 50, 1), (760, 50, 1))
_RHYTHMS: tuple[tuple[_Band, ...], ...] = (
    ((0, 300, 0), (370, 40, 1), (620, 40, 2), (730, 40, 2), (900, 30, 1)),
    ((80, 60, 0), (200, 60, 0), (320, 200, 1), (580, 60, 0), (700, 60, 0), (860, 30, 2)),
)
"""Deckchair and ticking."""
_NARROWEST = 12 * MM
"""Below this a rhythm would only be noise, and the stripe is even."""


def draw(canvas: Canvas, face: Face, area: Rect) -> None:
    """Stripes that run up the sheet."""
    ground(canvas, face, area)
    repeat = drawn_repeat(face, area, finest=MM, most=10**6)
    own = inks(face)
    if repeat < _NARROWEST and len(own) > 1:
        rhythm: tuple[_Band, ...] = tuple((1000 * i // len(own), 520 // len(own), i) for i in range(len(own)))
    elif repeat < _NARROWEST:
        rhythm = _FINE[0]
    else:
        known = _RHYTHMS if len(own) > 2 else (_AWNING, *_RHYTHMS)
        rhythm = known[crc32(seed_of(face).encode()) % len(known)] + _further(len(own))
    for start, width, ink in rhythm:
        bands(
            canvas,
            area,
            Axis.COLUMNS,
            start=repeat * start // 1000,
            width=max(repeat * width // 1000, 1),
            period=repeat,
            colour=own[ink % len(own)],
        )


def _further(count: int) -> tuple[_Band, ...]:
    """Inks beyond the third get a pinstripe each within the first band."""
    return tuple((40 + 70 * (ink - 3), 25, ink) for ink in range(3, count))
