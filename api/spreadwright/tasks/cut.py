"""The verb *cut*: the sheets, the steps at the trimmer, and the piles."""

from collections.abc import Mapping
from dataclasses import dataclass

from spreadwright.cutting import (
    CutSheet,
    CutStep,
    CutWords,
    Effort,
    Pile,
    cautions,
    cut_sheets,
    cut_steps,
    effort,
    is_cut,
    pieces,
    pile_of,
    piles,
    rounding,
    sentences,
    told_sizes,
)
from spreadwright.document import Reading
from spreadwright.geometry import Size
from spreadwright.model import Bench, Piece, Recipe, role_titles
from spreadwright.placing import marked, placed_pieces
from spreadwright.tasks.check import proven


@dataclass(frozen=True, slots=True)
class Cutting:
    """How a recipe is cut on one bench, in the language spoken when it was worked out.

    Attributes:
        words: One entry for each step.
        effort: What the steps cost together.
        page_of: The page on whose pile each piece goes, by id.
        sizes: Of every piece by id, unturned, as they are told: to the marks of the scale, ticks.
        rounding: What these marks do to the sizes, in words; empty where they show all of them.
        cautions: What is said before the first cut.
    """

    recipe: Recipe
    bench: Bench
    sheets: tuple[CutSheet, ...]
    pieces: tuple[Piece, ...]
    steps: tuple[CutStep, ...]
    words: tuple[CutWords, ...]
    effort: Effort
    piles: tuple[Pile, ...]
    page_of: dict[str, str]
    sizes: Mapping[str, Size]
    rounding: str
    cautions: tuple[str, ...]

    def steps_of(self, sheet: CutSheet) -> tuple[CutStep, ...]:
        """The cuts of one sheet, those that it shares with equal sheets included."""
        return tuple(step for step in self.steps if sheet.number in step.sheets)

    def words_of(self, sheet: CutSheet) -> tuple[CutWords, ...]:
        """What is said of the cuts of one sheet."""
        return tuple(words for step, words in zip(self.steps, self.words, strict=True) if sheet.number in step.sheets)

    def together(self, sheet: CutSheet) -> tuple[CutSheet, ...]:
        """The sheets that are cut together with this one, itself included."""
        steps = self.steps_of(sheet)
        return tuple(self.sheets[number - 1] for number in steps[0].sheets) if steps else (sheet,)

    @property
    def stacks(self) -> tuple[tuple[CutSheet, ...], ...]:
        """The sheets as they come to the trimmer: those that are cut together, and whole ones."""
        return tuple(dict.fromkeys(self.together(sheet) for sheet in self.sheets))


def cut(reading: Reading[Recipe], bench: Bench) -> Cutting:
    """The cuts of a recipe on one bench.

    Raises:
        InvalidDocument: The recipe carries an error, on this bench or on any.
    """
    recipe = proven(reading, bench)
    return cutting(recipe, bench, pile_of(recipe))


def cutting(recipe: Recipe, bench: Bench, page_of: Mapping[str, str]) -> Cutting:
    """The cuts of a recipe that is known to be sound; `page_of` tells the page of every piece that is put on a pile."""
    sheets = cut_sheets(recipe)
    steps = cut_steps(sheets, bench)
    by_id = {piece.id: piece for piece in pieces(sheets)}
    marks = marked(recipe, placed_pieces(recipe, by_id.values()), is_cut(sheets))
    titles = role_titles(recipe)
    return Cutting(
        recipe=recipe,
        bench=bench,
        sheets=sheets,
        pieces=tuple(by_id.values()),
        steps=steps,
        words=tuple(
            sentences(step, titles[sheets[step.sheet - 1].role], bench, by_id, page_of, marks) for step in steps
        ),
        effort=effort(steps, bench.trimmer),
        piles=piles(recipe, sheets, steps),
        page_of=dict(page_of),
        sizes=told_sizes(sheets, bench),
        rounding=rounding(sheets, bench),
        cautions=cautions(),
    )
