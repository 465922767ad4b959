"""Small illustrated photographs, until there are real ones: one day out for each recipe."""

from collections.abc import Callable, Sequence
from random import Random

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.scenes import indoors, outdoors
from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.scenes.light import light_of
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size

Scene = Callable[[Brush], None]

_WIDE: tuple[Scene, ...] = (outdoors.coast, outdoors.lake, outdoors.village, outdoors.park, outdoors.meadow)
_TALL: tuple[Scene, ...] = (outdoors.wood, outdoors.harbour, outdoors.village, indoors.table, outdoors.lake)
_SQUARE: tuple[Scene, ...] = (
    indoors.table,
    outdoors.coast,
    outdoors.harbour,
    outdoors.wood,
    outdoors.park,
    outdoors.meadow,
)
PRINT_WHITE = "#fdfcf9"


def chosen(sizes: Sequence[Size], seed: str) -> tuple[Scene, ...]:
    """A scene for each picture: one that suits its shape, none twice before all that suit have been seen."""
    chance = Random(f"scenes of {seed}")
    seen: list[Scene] = []
    for size in sizes:
        suited = _suited(size)
        fewest = min(seen.count(scene) for scene in suited)
        seen.append(chance.choice([scene for scene in suited if seen.count(scene) == fewest]))
    return tuple(seen)


def _suited(size: Size) -> tuple[Scene, ...]:
    if 4 * size.width >= 5 * size.height:
        return _WIDE
    return _TALL if 5 * size.width <= 4 * size.height else _SQUARE


def draw_print(canvas: Canvas, rect: Rect, scene: Scene, *, day: str, seed: str) -> None:
    """A photograph as a print with a thin white border.

    Args:
        rect: The paper of the print, ticks.
        day: Recipes of one day share their light.
        seed: Makes the picture its own.
    """
    canvas.rect(rect, filled(PRINT_WHITE))
    frame = rect.inset(min(2 * MM, min(rect.width, rect.height) // 16))
    with canvas.group(clip=frame):
        brush = Brush(canvas, frame, light_of(day), Random(f"{day}/{seed}"))
        scene(brush)
        brush.glow()
