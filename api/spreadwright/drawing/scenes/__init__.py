"""Small illustrated photographs, until there are real ones: one day out for each recipe."""

from collections.abc import Callable, Sequence
from functools import lru_cache
from random import Random

from spreadwright.drawing.canvas import Canvas, Fragment, filled
from spreadwright.drawing.scenes.brush import Brush
from spreadwright.drawing.scenes.indoors import table
from spreadwright.drawing.scenes.light import light_of
from spreadwright.drawing.scenes.outdoors import coast, harbour, lake, meadow, park, village, wood
from spreadwright.drawing.scenes.outings import camp, footbridge, mountains, picnic, viewpoint
from spreadwright.drawing.scenes.town import garden, stall, street
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size

Scene = Callable[[Brush], None]

_SEASIDE: tuple[Scene, ...] = (coast, harbour, street, stall, picnic, viewpoint, table)
_HILLS: tuple[Scene, ...] = (lake, mountains, wood, camp, viewpoint, meadow, footbridge)
_HOME: tuple[Scene, ...] = (garden, park, street, table, picnic, footbridge, meadow)
_COUNTRY: tuple[Scene, ...] = (village, wood, meadow, stall, lake, park, picnic)
_DAYS = (_SEASIDE, _HILLS, _HOME, _COUNTRY)
SCENES: tuple[Scene, ...] = tuple(dict.fromkeys(scene for day in _DAYS for scene in day))
"""Every scene once."""
_NEEDS_HEIGHT = (table, stall, harbour)
"""These have nothing to show at either end of a long picture."""
PRINT_WHITE = "#fdfcf9"


def chosen(sizes: Sequence[Size], seed: str) -> tuple[Scene, ...]:
    """A scene for each picture, all of one day out; none twice before every scene that suits has been seen."""
    chance = Random(f"scenes of {seed}")
    day = chance.choice(_DAYS)
    seen: list[Scene] = []
    for size in sizes:
        fresh = [scene for scene in day if _suits(scene, size) and scene not in seen]
        seen.append(chance.choice(fresh or _least_seen(size, seen)))
    return tuple(seen)


def _least_seen(size: Size, seen: Sequence[Scene]) -> list[Scene]:
    suited = [scene for scene in SCENES if _suits(scene, size)]
    fewest = min(seen.count(scene) for scene in suited)
    return [scene for scene in suited if seen.count(scene) == fewest]


def _suits(scene: Scene, size: Size) -> bool:
    return scene not in _NEEDS_HEIGHT or 5 * size.width <= 8 * size.height


def draw_print(canvas: Canvas, rect: Rect, scene: Scene, *, day: str, seed: str) -> None:
    """A photograph as a print with a thin white border.

    Args:
        rect: The paper of the print, ticks.
        day: Recipes of one day share their light.
        seed: Makes the picture its own.
    """
    canvas.show(_print(f"{canvas.prefix}p{canvas.fragments + 1}-", rect, scene, day, seed))


@lru_cache(maxsize=128)
def _print(prefix: str, rect: Rect, scene: Scene, day: str, seed: str) -> Fragment:
    """No colourway changes it, so a layout in many papers shows the same one."""
    canvas = Canvas(rect.size, title="", prefix=prefix)
    canvas.rect(rect, filled(PRINT_WHITE))
    frame = rect.inset(min(2 * MM, min(rect.width, rect.height) // 16))
    with canvas.group(clip=frame):
        brush = Brush(canvas, frame, light_of(day), Random(f"{day}/{seed}"))
        scene(brush)
        brush.glow()
    return canvas.fragment()
