"""The verb *place*: where every piece and photograph lies, the steps with the ruler, and the adhesive."""

from dataclasses import dataclass, replace

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading
from spreadwright.model import Bench, Recipe
from spreadwright.photos import MattedPhoto, matted_photos
from spreadwright.placing import (
    Adhesives,
    PlacedPiece,
    PlaceStep,
    Stick,
    adhesive_words,
    adhesives,
    cautions,
    glued,
    place_steps,
    placed_pieces,
)
from spreadwright.tasks.check import proven


@dataclass(frozen=True, slots=True)
class Placing:
    """How a recipe is put together on one bench, in the language spoken when it was worked out.

    Attributes:
        placed: From the page upward.
        steps: In gluing order.
        adhesive: What holds pieces and photographs, and how much of it.
        cautions: What is said before anything is glued.
    """

    recipe: Recipe
    bench: Bench
    placed: tuple[PlacedPiece, ...]
    steps: tuple[PlaceStep, ...]
    photos: tuple[MattedPhoto, ...]
    adhesive: Adhesives
    cautions: tuple[str, ...]


def place(reading: Reading[Recipe], bench: Bench) -> Placing:
    """The placement of a recipe, worded for one bench.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    cut = pieces(cut_sheets(recipe))
    placed = placed_pieces(recipe, cut)
    photos = matted_photos(recipe, cut)
    held = adhesives(glued(recipe, placed), [Stick(photo.on, photo.size) for photo in photos], bench)
    return Placing(
        recipe=recipe,
        bench=bench,
        placed=placed,
        steps=place_steps(recipe, placed, bench),
        photos=photos,
        adhesive=replace(held, words=adhesive_words(held, bench)),
        cautions=cautions(),
    )
