"""The steps with the ruler: each piece in gluing order, with the moves that locate it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from spreadwright.geometry import Rect
from spreadwright.model import Bench, Recipe
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.locate import Located, locate
from spreadwright.placing.measures import Measure, measures, touches
from spreadwright.placing.words import carried, head, sentence


@dataclass(frozen=True, slots=True)
class PlaceStep:
    """One piece to glue down; places are ticks on its page.

    Attributes:
        number: Counts through the whole recipe, from 1.
        located: The piece, what it is glued on, and the moves that put it there.
        sentences: What is glued, then one for each move.
        measures: The distances that the moves name.
        touches: The edges laid on or in line with others, as lines without width.
    """

    number: int
    located: Located
    sentences: tuple[str, ...]
    measures: tuple[Measure, ...] = ()
    touches: tuple[Rect, ...] = ()

    @property
    def placed(self) -> PlacedPiece:
        """What is glued."""
        return self.located.placed

    @property
    def sentence(self) -> str:
        """The whole step in words."""
        return " ".join(self.sentences)

    @property
    def off(self) -> tuple[int, int]:
        """How far it lies from its design across and down, ticks: to the right and downward count above 0."""
        lands, rect = self.located.lands, self.placed.rect
        return lands.left - rect.left, lands.top - rect.top


def place_steps(recipe: Recipe, placed: Sequence[PlacedPiece], bench: Bench) -> tuple[PlaceStep, ...]:
    """Every piece in gluing order, page by page, in the language that is spoken."""
    size = recipe.spread.size
    if size is None:
        return ()
    pieces = {each.piece.id: each for each in placed}
    on_pages = [[each for each in placed if each.page == page] for page in recipe.spread.pages]
    located = [each for on_page in on_pages for each in locate(on_page, size, bench.ruler)]
    joined: dict[str, list[str]] = {}
    for each in located:
        if each.base is not None:
            joined.setdefault(each.base.piece.id, []).append(each.placed.piece.mark)
    return tuple(
        _step(number, each, joined.get(each.placed.piece.id, []), bench, pieces)
        for number, each in enumerate(located, start=1)
    )


def in_layers(steps: Sequence[PlaceStep]) -> tuple[PlaceStep, ...]:
    """From the page upward, as they are seen: what is joined first lies above what it is joined to."""
    return tuple(sorted(steps, key=lambda step: (step.placed.layer, step.number)))


def _step(
    number: int, located: Located, marks: Sequence[str], bench: Bench, pieces: Mapping[str, PlacedPiece]
) -> PlaceStep:
    told = [head(located, bench)]
    if marks:
        told.append(carried(marks))
    is_page = located.placed.rect == located.board and located.placed.layer == 1
    moves = () if is_page else located.moves
    return PlaceStep(
        number=number,
        located=located,
        sentences=(*told, *(sentence(move, located, bench, pieces) for move in moves)),
        measures=tuple(measures(located, bench.unit, pieces)),
        touches=tuple(touches(located)),
    )
