"""The tables of a placement: every piece with its two distances, every photograph with its size."""

from collections.abc import Sequence

from spreadwright.drawing.readings import reading
from spreadwright.drawing.tables import Table
from spreadwright.lengths import Unit, size_text, with_unit
from spreadwright.model import Bench, Edge, Offset, Side
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlaceStep

_FROM_MIDDLE = {
    Edge.CENTRE: ("right of the centre", "left of the centre"),
    Edge.MIDDLE: ("below the middle", "above the middle"),
}


def piece_table(steps: Sequence[PlaceStep], bench: Bench) -> Table:
    """A row for each piece, in gluing order."""
    heads = ("No.", "Piece", "", "Size", "Page", "Across", "Down")
    note = f"Sizes and distances for the bench “{bench.title}”."
    return Table(heads, tuple(_piece(step, bench) for step in steps), note=note)


def photo_table(steps: Sequence[PlaceStep], photos: Sequence[MattedPhoto], unit: Unit) -> Table:
    """A row for each photograph, in the order of its mats; sizes as they are seen on the page."""
    by_mat = {photo.on: photo for photo in photos}
    rows = tuple(_photo(step, photo, unit) for step in steps if (photo := by_mat.get(step.placed.piece.id)) is not None)
    note = "Photos go on last, when all paper is glued; in the picture they are dashed."
    return Table(("No.", "Mat", "", "Photo size", "Page", "Border all round"), rows, note=note)


def _piece(step: PlaceStep, bench: Bench) -> tuple[str, ...]:
    placed = step.placed
    turned = ", turned" if placed.is_turned else ""
    face = ", other face up" if placed.side is Side.BACK else ""
    size = size_text(placed.rect.width, placed.rect.height, bench.unit)
    across, down = _distance(placed.across, bench), _distance(placed.down, bench)
    return (str(step.number), placed.piece.mark, placed.piece.id + turned + face, size, placed.page, across, down)


def _photo(step: PlaceStep, photo: MattedPhoto, unit: Unit) -> tuple[str, ...]:
    placed = step.placed
    rect = photo.rect_on(placed.rect)
    size, border = size_text(rect.width, rect.height, unit), with_unit(photo.border, unit)
    return (str(step.number), placed.piece.mark, placed.piece.id, size, placed.page, border)


def _distance(offset: Offset, bench: Bench) -> str:
    distance = offset.distance or 0
    shown = reading(abs(distance), bench.ruler.graduation, bench.unit)
    if offset.edge in _FROM_MIDDLE:
        return f"{shown} {_FROM_MIDDLE[offset.edge][distance < 0]}" if distance else "centred"
    return f"{shown} from {offset.edge}" if distance else f"flush {offset.edge}"
