"""The piles: the pieces of one page, put together as they fall from the trimmer."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.cutting.parts import CutSheet, pieces
from spreadwright.cutting.steps import CutStep, Fate
from spreadwright.model import Piece, Recipe, Use


@dataclass(frozen=True, slots=True)
class Pile:
    """The pieces of one page, in the order in which they are put there."""

    page: str
    pieces: tuple[Piece, ...]


def pile_of(recipe: Recipe) -> dict[str, str]:
    """The page of each piece that is placed: its pile follows from its placement."""
    return {placement.piece: placement.page for placement in recipe.placements}


def piles(recipe: Recipe, sheets: Sequence[CutSheet], steps: Sequence[CutStep]) -> tuple[Pile, ...]:
    """One pile a page, in page order."""
    page_of = pile_of(recipe)
    by_id = {piece.id: piece for piece in pieces(tuple(sheets))}
    order = fall_order(sheets, steps)
    return tuple(
        Pile(page, tuple(by_id[name] for name in order if name in by_id and page_of.get(name) == page))
        for page in recipe.spread.pages
    )


def fall_order(sheets: Sequence[CutSheet], steps: Sequence[CutStep]) -> tuple[str, ...]:
    """Ids of all pieces and spares in the order in which they are ready; an uncut sheet is ready at its turn.

    Equal sheets that are cut together are all ready at the turn of the first.
    """
    order: list[str] = []
    for sheet in sheets:
        cuts = [step for step in steps if sheet.number in step.sheets]
        if not cuts:
            order += [part.id for part in sheet.parts if part.use is not Use.SCRAP]
            continue
        shares = [share for step in cuts for share in (step.falling, step.kept) if sheet.number == step.sheet]
        order += [each for share in shares if share.fate in (Fate.PIECE, Fate.SPARE) for each in share.ids]
    return tuple(order)
