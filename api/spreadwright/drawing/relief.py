"""What makes flat paper look as if it lay there: shadows, cut edges, light, the fold. Light comes from the upper left.

Shadows are a few translucent rounded rectangles on top of each other: blurring filters come out differently, or not at
all, outside browsers.
"""

from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, Stop, filled, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.theme import MM, SHADOW
from spreadwright.drawing.tint import darker, lighter
from spreadwright.geometry import Rect
from spreadwright.model import Core

LAYER_HEIGHT = 6 * MM // 10
"""How far the shadow of one more layer falls."""
_HIGHEST = 5
_STEPS = 8
_EDGE = MM // 4


def shadow(canvas: Canvas, rect: Rect, depth: int, *, opacity: float = 0.34) -> None:
    """The soft shadow of a sheet whose upper side lies `depth` ticks above what it falls on."""
    for step in range(_STEPS):
        spread = depth - 3 * depth * step // (2 * _STEPS)
        fallen = rect.moved(depth * 5 // 10, depth * 7 // 10).inset(-spread)
        canvas.rect(fallen, filled(SHADOW, opacity / _STEPS), radius=max(spread, 0) + MM // 4)


def depth_of(layer: int) -> int:
    """How deep the shadow of a layer is, ticks; beyond the fifth it grows no more."""
    return LAYER_HEIGHT * min(layer, _HIGHEST)


@dataclass(frozen=True, slots=True)
class Edge:
    """The colours of a cut edge where the light falls on it and where it does not; how much of the light is seen."""

    lit: str
    dull: str
    lit_opacity: float


def edge_of(colour: str, core: Core) -> Edge:
    """What shows where a paper of a colour is cut."""
    if core is Core.WHITE:
        return Edge("#ffffff", "#cfc8bc", 0.75)
    return Edge(lighter(colour, 0.3), darker(colour, 0.4), 0.6)


def cut_edge(canvas: Canvas, rect: Rect, colour: str, core: Core) -> None:
    """A hairline of core: bright where the light falls on the edge, dull where it does not."""
    near, edge = rect.inset(_EDGE // 2), edge_of(colour, core)
    lit = Path().lines([(near.left, near.bottom), (near.left, near.top), (near.right, near.top)])
    dull = Path().lines([(near.right, near.top), (near.right, near.bottom), (near.left, near.bottom)])
    canvas.path(lit, stroked(edge.lit, _EDGE, opacity=edge.lit_opacity))
    canvas.path(dull, stroked(edge.dull, _EDGE, opacity=0.55))


def table(canvas: Canvas, whole: Rect, surface: str) -> None:
    """What everything lies on, a little lighter at its upper left."""
    canvas.rect(whole, filled(surface))
    light = canvas.gradient((0, 0), (whole.right, whole.bottom), (Stop(0, "#ffffff", 0.35), Stop(0.6, "#ffffff", 0)))
    canvas.rect(whole, filled(light))


def sheen(canvas: Canvas, page: Rect) -> None:
    """Light that is a little stronger at the page's upper left."""
    fill = canvas.gradient(
        (page.left, page.top),
        (page.right, page.bottom),
        (Stop(0, "#fff6e4", 0.13), Stop(0.5, "#fff6e4", 0), Stop(1, SHADOW, 0.07)),
    )
    canvas.rect(page, filled(fill))


def fold(canvas: Canvas, x: int, top: int, bottom: int) -> None:
    """Two pages that dip towards the line where they meet; the one beyond it catches the light again."""
    left, right = x - 22 * MM, x + 26 * MM
    fall = canvas.gradient(
        (left, top),
        (x, top),
        (Stop(0, SHADOW, 0), Stop(0.6, SHADOW, 0.05), Stop(0.92, SHADOW, 0.2), Stop(1, SHADOW, 0.38)),
    )
    canvas.rect(Rect.between(left, top, x, bottom), filled(fall))
    rise = canvas.gradient(
        (x, top),
        (right, top),
        (
            Stop(0, SHADOW, 0.3),
            Stop(0.07, SHADOW, 0.13),
            Stop(0.22, "#fff6e4", 0.06),
            Stop(0.4, "#fff6e4", 0.16),
            Stop(1, "#fff6e4", 0),
        ),
    )
    canvas.rect(Rect.between(x, top, right, bottom), filled(rise))
