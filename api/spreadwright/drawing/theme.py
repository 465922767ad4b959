"""What every picture shares: ink and paper, line widths, type sizes, space. Lengths are ticks."""

from spreadwright.lengths import TICKS, Unit

MM = TICKS[Unit.MILLIMETRE]

INK = "#2b2a28"
PAPER = "#fbf8f2"
ACCENT = "#b4472e"
"""“Cut here”: 5.0 : 1 on paper."""
WARNING = "#8a5a00"
TINT = "#e4e9ec"
"""“This falls”."""
QUIET = "#6f6b64"
"""Secondary words: 4.9 : 1 on paper."""
TABLE = "#efe9df"
"""What a spread lies on."""
SHADOW = "#3b2f22"
"""Shadows are warm, never grey."""

HAIRLINE = 48
THIN = 80
LINE = 128
BOLD_LINE = 208
"""0.15, 0.25, 0.4 and 0.65 mm."""

SPACE = 4 * MM
"""The unit of space on paper."""


def points(size: float) -> int:
    """Ticks of a type size in points (1/72 in).

    >>> points(72)
    8128
    """
    return round(size * TICKS[Unit.INCH] / 72)


SIZES = tuple(points(10 * 1.25**step) for step in range(6))
"""The type scale: 10, 12.5, 15.6, 19.5, 24.4 and 30.5 pt."""

BODY, LARGE, HEADING, TITLE, DISPLAY, POSTER = SIZES
SMALL = points(9)
"""What stands beside the scale: nothing is printed smaller, for it is read at arm's length."""
