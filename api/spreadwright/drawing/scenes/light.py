"""The light of a day out: muted colours that all photographs of one recipe share."""

from dataclasses import dataclass
from random import Random

from spreadwright.drawing.tint import mixed


@dataclass(frozen=True, slots=True)
class Light:
    """Colours of one day.

    Attributes:
        haze: What distance fades into.
        glow: Light that falls over everything from the upper left.
        coats: What the people of that day wear.
    """

    sky: str
    low_sky: str
    haze: str
    glow: str
    water: str
    grass: str
    leaf: str
    pine: str
    sand: str
    earth: str
    wall: str
    roof: str
    dark: str
    coats: tuple[str, str, str]

    def far(self, colour: str, distance: float) -> str:
        """A colour seen through so much air, 0 to 1."""
        return mixed(colour, self.haze, distance)


SKIN = "#d9b195"
"""Muted like everything else; the figures are a few millimetres tall."""

_DAYS = (
    Light(  # a clear morning
        "#a9c6d3", "#f1eadc", "#d3dfe0", "#fff3d6", "#8fb4bf", "#9fae80", "#71895f", "#4d6a5c",
        "#e2d3b6", "#a68b6c", "#f0e8d9", "#b5765c", "#3d4a4b", ("#c4694f", "#3f627a", "#dcae58"),
    ),
    Light(  # late afternoon
        "#c9c6bd", "#f8e0b8", "#ead7bb", "#ffdf9e", "#b8b59e", "#b3a66a", "#8a8450", "#5d6148",
        "#ead2a4", "#a5805a", "#f6e6c9", "#b8684a", "#4a4438", ("#9c4a3c", "#56707a", "#f0dfb8"),
    ),
    Light(  # high thin cloud
        "#bccad0", "#e9eae4", "#d8dfde", "#ffffff", "#9db3b6", "#96a887", "#6c8570", "#4a645e",
        "#d9d0bd", "#938573", "#ebe7de", "#9a6f62", "#3b4548", ("#d0a046", "#5c6f8a", "#b4584c"),
    ),
    Light(  # after the rain, towards evening
        "#9fa9c0", "#f2d5c2", "#d6cbd0", "#ffd9c0", "#9aa3b5", "#8e9c78", "#667f66", "#445a59",
        "#d8c3ad", "#8d7668", "#f0e0d2", "#a4655c", "#3c4050", ("#d98e5f", "#4f7377", "#e8d9c0"),
    ),
)  # fmt: skip


def light_of(seed: str) -> Light:
    """The light of one recipe's day."""
    return Random(f"light of {seed}").choice(_DAYS)
