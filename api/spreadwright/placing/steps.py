"""The steps with the ruler: each piece in gluing order, with the two distances that locate it."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.lengths import on_scale, size_text
from spreadwright.model import Bench, Edge, Offset, Recipe, Side
from spreadwright.placing.layers import PlacedPiece

CAUTIONS = (
    "Lay all pieces out before you glue anything.",
    "Air the room, and follow the instructions of your adhesive’s maker.",
)


@dataclass(frozen=True, slots=True)
class PlaceStep:
    """One piece to glue down.

    Attributes:
        number: Counts through the whole recipe, from 1.
        across: Its distance from the side that the ruler touches, in words.
        down: Likewise.
        sentence: The whole step in words.
    """

    number: int
    placed: PlacedPiece
    across: str
    down: str
    sentence: str


def place_steps(recipe: Recipe, placed: Sequence[PlacedPiece], bench: Bench) -> tuple[PlaceStep, ...]:
    """Every piece in gluing order: page by page, from the page upward."""
    in_order = [each for page in recipe.spread.pages for each in placed if each.page == page]
    return tuple(_step(number, recipe, each, bench) for number, each in enumerate(in_order, start=1))


def _step(number: int, recipe: Recipe, each: PlacedPiece, bench: Bench) -> PlaceStep:
    across, down = _where(each.across, bench), _where(each.down, bench)
    size = size_text(each.rect.width, each.rect.height, bench.unit)
    page = "page" if each.page == "page" else f"{each.page} page"
    turned = ", turned a quarter to the right" if each.is_turned else ""
    face = ", its other face up" if each.side is Side.BACK else ""
    what = f"“{each.piece.id}” ({each.piece.mark}), {size}{turned}{face}"
    if recipe.spread.size == each.rect.size:
        return PlaceStep(number, each, across, down, f"{what}: lay it down as the whole {page}.")
    return PlaceStep(number, each, across, down, f"{what}: on the {page}, {across}, {down}.")


def _where(offset: Offset, bench: Bench) -> str:
    distance = offset.distance or 0
    if offset.edge in (Edge.CENTRE, Edge.MIDDLE):
        return _from_middle(offset.edge, distance, bench)
    if distance == 0:
        return f"flush with the {offset.edge} edge"
    return f"{on_scale(distance, bench.ruler.graduation, bench.unit)} from the {offset.edge} edge"


def _from_middle(edge: Edge, distance: int, bench: Bench) -> str:
    if distance == 0:
        return "centred across" if edge is Edge.CENTRE else "centred up and down"
    sides = ("right", "left") if edge is Edge.CENTRE else ("below", "above")
    side = sides[distance < 0] + (" of" if edge is Edge.CENTRE else "")
    return f"its middle {on_scale(abs(distance), bench.ruler.graduation, bench.unit)} {side} the page’s middle"
