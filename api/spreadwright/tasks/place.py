"""The verb *place*: where every piece and photograph lies, the steps with the ruler, and the adhesive."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from spreadwright.cutting import cut_sheets, is_cut, pieces, told_sizes
from spreadwright.document import Reading
from spreadwright.errors import Finding
from spreadwright.geometry import Size
from spreadwright.model import Bench, Recipe
from spreadwright.photos import MattedPhoto, matted_photos
from spreadwright.placing import (
    Adhesives,
    PlacedPiece,
    PlaceStep,
    Stick,
    adhesive_findings,
    adhesive_words,
    adhesives,
    cautions,
    glued,
    marked,
    place_steps,
    placed_pieces,
    rounding,
)
from spreadwright.tasks.check import proven


@dataclass(frozen=True, slots=True)
class Placing:
    """How a recipe is put together on one bench, in the language spoken when it was worked out.

    Attributes:
        placed: From the page upward.
        steps: In gluing order.
        sizes: Of every piece by id, unturned, as they are told: to the marks of the trimmer's scale, ticks.
        rounding: What the marks of the ruler do to the places, in words; empty where they show every distance.
        adhesive: What holds pieces and photographs, and how much of it.
        findings: What the bench lacks to hold a piece.
        cautions: What is said before anything is glued.
    """

    recipe: Recipe
    bench: Bench
    placed: tuple[PlacedPiece, ...]
    steps: tuple[PlaceStep, ...]
    photos: tuple[MattedPhoto, ...]
    sizes: Mapping[str, Size]
    rounding: str
    adhesive: Adhesives
    findings: tuple[Finding, ...]
    cautions: tuple[str, ...]


def place(reading: Reading[Recipe], bench: Bench) -> Placing:
    """The placement of a recipe, worded for one bench.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    sheets = cut_sheets(recipe)
    cut, sizes = pieces(sheets), told_sizes(sheets, bench)
    placed = placed_pieces(recipe, cut)
    photos = matted_photos(recipe, cut)
    sticks = glued(recipe, placed)
    held = adhesives(sticks, [Stick(photo.on, photo.size) for photo in photos], bench)
    steps = place_steps(recipe, placed, bench, sizes, marked(recipe, placed, is_cut(sheets)))
    return Placing(
        recipe=recipe,
        bench=bench,
        placed=placed,
        steps=steps,
        photos=photos,
        sizes=sizes,
        rounding=rounding(max((abs(off) for step in steps for off in step.off), default=0), bench),
        adhesive=replace(held, words=adhesive_words(held, bench)),
        findings=tuple(adhesive_findings(sticks, bench)),
        cautions=cautions(),
    )
