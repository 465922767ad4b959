"""What all prints share: ground and inks, a repeat that can be drawn, bands as wide dashed lines.

A print is drawn in the coordinates of the whole sheet, ticks from its top left corner, so that it runs on from piece
to piece as it did before cutting; `area` says which part of it is wanted.
"""

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.theme import MM
from spreadwright.drawing.tint import darker, lighter, lightness
from spreadwright.geometry import Rect
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Axis, Face

COMMON_SHEET = 12 * TICKS[Unit.INCH]


def ground(canvas: Canvas, face: Face, area: Rect) -> None:
    """The paper itself."""
    canvas.rect(area, filled(face.colours[0]))


def inks(face: Face) -> tuple[str, ...]:
    """What is printed on the ground; a face of one colour is printed tone in tone."""
    own = face.colours[0]
    return face.colours[1:] or (darker(own, 0.14) if lightness(own) > 0.35 else lighter(own, 0.16),)


def drawn_repeat(face: Face, area: Rect, *, finest: int, most: int) -> int:
    """The repeat at which a print is drawn, ticks.

    It is the face's own unless that is too fine to be seen or would give more than `most` repeats: then it is doubled
    until it is not, so that an odd paper never makes an endless picture. No piece of a common sheet is smaller than
    the sheet here, so that all of them show the print at one scale.
    """
    repeat = max(face.repeat, MM)
    width, height = max(area.width, COMMON_SHEET), max(area.height, COMMON_SHEET)
    while repeat < finest or (width // repeat + 1) * (height // repeat + 1) > most:
        repeat *= 2
    return repeat


def tile_side(repeat: int, smallest: int, largest: int) -> int:
    """The side of the tile that is drawn: some whole part or multiple of the repeat, so that it repeats with it.

    At least `smallest`; no more than `largest` unless the repeat's parts leave no choice. All in ticks.
    """
    repeat = max(repeat, MM)
    if repeat < smallest:
        return repeat * -(-smallest // repeat)
    return repeat // -(-repeat // largest)


def bands(
    canvas: Canvas, area: Rect, axis: Axis, *, start: int, width: int, period: int, colour: str, opacity: float = 1
) -> None:
    """Bands of one width at equal distances: one line as wide as the area, dashed.

    Args:
        axis: Columns stand upright, rows lie.
        start: Where a band begins, ticks from the sheet's edge.
    """
    low, high = (area.left, area.right) if axis is Axis.COLUMNS else (area.top, area.bottom)
    first = start + (low - start) // period * period
    threads(canvas, area, axis, first, high, (width, period - width), colour, opacity)


def threads(
    canvas: Canvas, area: Rect, axis: Axis, first: int, last: int, dash: tuple[int, ...], colour: str, opacity: float
) -> None:
    """A line across the area, as wide as the area, dashed from `first` on."""
    if axis is Axis.COLUMNS:
        middle = area.top + area.height // 2
        ends, width = ((first, middle), (last, middle)), area.height + 2
    else:
        middle = area.left + area.width // 2
        ends, width = ((middle, first), (middle, last)), area.width + 2
    canvas.line(*ends, stroked(colour, width, opacity=opacity, dash=dash))


def seed_of(face: Face) -> str:
    """What chooses between the variants of a print: its colours and scale, nothing else."""
    return f"{face.pattern}{face.colours}{face.repeat}"
