"""Plain words for colours, as people would call them: “dark teal”, “beige”, “light grey”."""

import numpy as np
from numpy.typing import ArrayLike

from spreadwright.colour.spaces import oklab
from spreadwright.images.srgb import encoded_of, linear
from spreadwright.words import gettext as _

_GREY, _FAINT = 0.022, 0.045
"""Chroma in Oklab below which a colour is grey, or has only a touch of a hue."""

_HUES = (
    (10, "pink"),
    (37, "red"),
    (72, "orange"),
    (112, "yellow"),
    (162, "green"),
    (215, "teal"),
    (272, "blue"),
    (318, "violet"),
    (350, "magenta"),
    (360, "pink"),
)
"""Where each hue ends, degrees in Oklab."""

_GREYS = ((0.22, "black"), (0.45, "dark grey"), (0.72, "medium grey"), (0.9, "light grey"))
_LIGHT = {
    "pink": "light pink",
    "red": "light pink",
    "orange": "light orange",
    "yellow": "light yellow",
    "green": "light green",
    "teal": "light teal",
    "blue": "light blue",
    "violet": "light violet",
    "magenta": "light pink",
}
_DARK = {
    "pink": "dark red",
    "red": "dark red",
    "orange": "dark brown",
    "yellow": "dark olive",
    "green": "dark green",
    "teal": "dark teal",
    "blue": "navy",
    "violet": "dark violet",
    "magenta": "dark violet",
}


def colour_name(colour: str) -> str:
    """What people would call ``#rrggbb``, in the language spoken now.

    >>> colour_name("#043432"), colour_name("#e7ddc7"), colour_name("#808080")
    ('dark teal', 'beige', 'medium grey')
    """
    return _told()[_english(oklab(linear(encoded_of(colour))))]


def _english(colour: ArrayLike) -> str:
    lightness, a, b = (float(each) for each in np.asarray(colour))
    chroma, hue = float(np.hypot(a, b)), float(np.degrees(np.arctan2(b, a)) % 360)
    if chroma < _GREY or lightness < 0.14:
        return next((name for least, name in _GREYS if lightness < least), "white")
    return _earthen(lightness, chroma, hue) or _hued(lightness, chroma, hue)


def _earthen(lightness: float, chroma: float, hue: float) -> str:
    """Hues between red and yellow that are no orange and no yellow: they are dull, or dark."""
    if chroma < _FAINT and (hue < 25 or hue > 330):
        return "taupe"
    if not 25 < hue < 118:
        return ""
    if lightness > 0.8 and chroma < 0.075:
        return "cream" if lightness > 0.92 else "beige"
    if hue > 96 and lightness < 0.68 and chroma < 0.15:
        return "dark olive" if lightness < 0.35 else "olive"
    if chroma < _FAINT:
        return "taupe" if lightness > 0.4 else "dark brown"
    if lightness < 0.36:
        return "dark brown" if hue > 38 else "dark red"
    if hue > 38 and (lightness < 0.58 or chroma < 0.085):
        return "brown" if lightness < 0.66 else "tan"
    return "rust" if 34 < hue < 62 and lightness < 0.62 else ""


def _hued(lightness: float, chroma: float, hue: float) -> str:
    name = next(name for end, name in _HUES if hue <= end)
    if lightness > 0.78 and chroma < (0.15 if name != "yellow" else 0.1):
        return _LIGHT[name]
    return _DARK[name] if lightness < (0.45 if name == "red" else 0.36) else name


def _told() -> dict[str, str]:
    return {
        "beige": _("beige"),
        "black": _("black"),
        "blue": _("blue"),
        "brown": _("brown"),
        "cream": _("cream"),
        "dark brown": _("dark brown"),
        "dark green": _("dark green"),
        "dark grey": _("dark grey"),
        "dark olive": _("dark olive"),
        "dark red": _("dark red"),
        "dark teal": _("dark teal"),
        "dark violet": _("dark violet"),
        "green": _("green"),
        "light blue": _("light blue"),
        "light green": _("light green"),
        "light grey": _("light grey"),
        "light orange": _("light orange"),
        "light pink": _("light pink"),
        "light teal": _("light teal"),
        "light violet": _("light violet"),
        "light yellow": _("light yellow"),
        "magenta": _("magenta"),
        "medium grey": _("medium grey"),
        "navy": _("navy"),
        "olive": _("olive"),
        "orange": _("orange"),
        "pink": _("pink"),
        "red": _("red"),
        "rust": _("rust"),
        "tan": _("tan"),
        "taupe": _("taupe"),
        "teal": _("teal"),
        "violet": _("violet"),
        "white": _("white"),
        "yellow": _("yellow"),
    }
