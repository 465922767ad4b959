"""The steps with the ruler: each piece in gluing order, with the moves that locate it."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from spreadwright.geometry import Rect, Size
from spreadwright.model import Bench, Recipe
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.locate import Located, locate
from spreadwright.placing.measures import Measure, measures, touches
from spreadwright.placing.words import Telling, carried, head, is_page, sentence


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


def place_steps(
    recipe: Recipe,
    placed: Sequence[PlacedPiece],
    bench: Bench,
    sizes: Mapping[str, Size] | None = None,
    marked: Collection[str] = (),
) -> tuple[PlaceStep, ...]:
    """Every piece in gluing order, page by page, in the language that is spoken.

    Args:
        recipe: One without errors.
        placed: Its pieces from the page upward.
        bench: Whose ruler places them.
        sizes: The size of every piece as it is told, by id, unturned; as designed where none are given.
        marked: The pieces that were given a pencil mark when they were cut.
    """
    size = recipe.spread.size
    if size is None:
        return ()
    pieces = {each.piece.id: each for each in placed}
    telling = Telling(bench, pieces, {**_designed(placed), **(sizes or {})}, marked)
    on_pages = [[each for each in placed if each.page == page] for page in recipe.spread.pages]
    located = [each for on_page in on_pages for each in locate(on_page, size, bench.ruler)]
    joined: dict[str, list[str]] = {}
    for each in located:
        if each.base is not None:
            joined.setdefault(each.base.piece.id, []).append(each.placed.piece.mark)
    return tuple(
        _step(number, each, joined.get(each.placed.piece.id, []), telling)
        for number, each in enumerate(located, start=1)
    )


def in_layers(steps: Sequence[PlaceStep]) -> tuple[PlaceStep, ...]:
    """From the page upward, as they are seen: what is joined first lies above what it is joined to."""
    return tuple(sorted(steps, key=lambda step: (step.placed.layer, step.number)))


def _designed(placed: Sequence[PlacedPiece]) -> dict[str, Size]:
    return {each.piece.id: each.rect.size.turned() if each.is_turned else each.rect.size for each in placed}


def _step(number: int, located: Located, marks: Sequence[str], telling: Telling) -> PlaceStep:
    told = [head(located, telling)]
    if marks:
        told.append(carried(marks))
    moves = () if is_page(located) else located.moves
    return PlaceStep(
        number=number,
        located=located,
        sentences=(*told, *(sentence(move, located, telling) for move in moves)),
        measures=tuple(measures(located, telling.bench, telling.pieces)),
        touches=tuple(touches(located)),
    )
