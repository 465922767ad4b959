"""The verb *tolerance*: how far each piece may come out off on a bench, and what that does to the layout."""

from dataclasses import dataclass

from spreadwright.cutting import cut_sheets, cut_steps, pieces
from spreadwright.document import Reading
from spreadwright.errors import Finding, UnknownName
from spreadwright.model import Bench, Recipe
from spreadwright.placing import placed_pieces
from spreadwright.tasks.check import proven
from spreadwright.tasks.laying import places
from spreadwright.tolerance import PieceTolerance, partings, piece_tolerances, tolerance_findings, traced
from spreadwright.words import SOURCE, speaking, spoken


@dataclass(frozen=True, slots=True)
class Tolerance:
    """What to expect of every piece of a recipe on one bench."""

    recipe: Recipe
    bench: Bench
    pieces: tuple[PieceTolerance, ...]
    findings: tuple[Finding, ...]

    def of(self, piece_id: str) -> PieceTolerance:
        """What to expect of one piece.

        Raises:
            UnknownName: No sheet gives it.
        """
        found = next((each for each in self.pieces if each.piece.id == piece_id), None)
        if found is None:
            raise UnknownName("piece", piece_id, [each.piece.id for each in self.pieces])
        return found


def tolerance(reading: Reading[Recipe], bench: Bench) -> Tolerance:
    """The errors to expect on one bench, worded in the language spoken now.

    Raises:
        InvalidDocument: The recipe carries an error, on this bench or on any.
    """
    recipe = proven(reading, bench)
    sheets = cut_sheets(recipe)
    steps, cut = cut_steps(sheets, bench), pieces(sheets)
    found = traced(sheets, partings(steps, bench.trimmer))
    placed = placed_pieces(recipe, cut)
    with speaking(SOURCE):
        laid = places(recipe, placed, bench)
    findings = tolerance_findings(recipe, sheets, steps, placed, laid, bench, language=spoken())
    return Tolerance(recipe, bench, piece_tolerances(cut, found, bench), findings)
