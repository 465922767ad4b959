"""The verb *cut*: the sheets, the steps at the trimmer, and the piles."""

from dataclasses import dataclass

from spreadwright.cutting import (
    CAUTIONS,
    CutSheet,
    CutStep,
    CutWords,
    Pile,
    cut_sheets,
    cut_steps,
    pieces,
    pile_of,
    piles,
    sentences,
)
from spreadwright.document import Reading
from spreadwright.model import Bench, Piece, Recipe
from spreadwright.tasks.check import proven


@dataclass(frozen=True, slots=True)
class Cutting:
    """How a recipe is cut on one bench; `words` has one entry for each step."""

    recipe: Recipe
    bench: Bench
    sheets: tuple[CutSheet, ...]
    pieces: tuple[Piece, ...]
    steps: tuple[CutStep, ...]
    words: tuple[CutWords, ...]
    piles: tuple[Pile, ...]
    page_of: dict[str, str]
    cautions: tuple[str, ...] = CAUTIONS

    def steps_of(self, sheet: CutSheet) -> tuple[CutStep, ...]:
        """The cuts of one sheet."""
        return tuple(step for step in self.steps if step.sheet == sheet.number)


def cut(reading: Reading[Recipe], bench: Bench) -> Cutting:
    """The cuts of a recipe on one bench.

    Raises:
        InvalidDocument: The recipe carries an error, on this bench or on any.
    """
    recipe = proven(reading, bench)
    sheets = cut_sheets(recipe)
    steps = cut_steps(sheets, bench)
    by_id = {piece.id: piece for piece in pieces(sheets)}
    page_of = pile_of(recipe)
    titles = {role.id: role.title or role.id for role in recipe.roles}
    words = tuple(sentences(step, titles[sheets[step.sheet - 1].role], bench, by_id, page_of) for step in steps)
    return Cutting(recipe, bench, sheets, tuple(by_id.values()), steps, words, piles(recipe, sheets, steps), page_of)
