"""The verb *place*: where every piece and photograph lies, and the steps with the ruler."""

from dataclasses import dataclass

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.photos import MattedPhoto, matted_photos
from spreadwright.placing import CAUTIONS, PlacedPiece, PlaceStep, place_steps, placed_pieces
from spreadwright.tasks.check import proven


@dataclass(frozen=True, slots=True)
class Placing:
    """How a recipe is put together on one bench."""

    recipe: Recipe
    bench: Bench
    placed: tuple[PlacedPiece, ...]
    steps: tuple[PlaceStep, ...]
    photos: tuple[MattedPhoto, ...]
    cautions: tuple[str, ...] = CAUTIONS


def place(reading: Reading[Recipe], bench: Bench) -> Placing:
    """The placement of a recipe, worded for one bench.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    cut = pieces(cut_sheets(recipe))
    placed = placed_pieces(recipe, cut)
    return Placing(recipe, bench, placed, place_steps(recipe, placed, bench), matted_photos(recipe, cut))
