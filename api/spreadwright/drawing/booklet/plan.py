"""What a booklet is made from: finished results, and the paper that it is printed on."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from spreadwright.cutting import CutStep, CutWords, Pile
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.placement import PlacementPlan
from spreadwright.drawing.sheet import SheetPlan
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Adhesive, Bench, Colourway, Piece, Recipe
from spreadwright.placing import PlaceStep


class Format(StrEnum):
    """The paper that a booklet is printed on, upright."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def size(self) -> Size:
        """Width and height, ticks."""
        return {
            Format.A4: Size(210 * MM, 297 * MM),
            Format.LETTER: Size(17 * TICKS[Unit.INCH] // 2, 11 * TICKS[Unit.INCH]),
        }[self]


@dataclass(frozen=True, slots=True)
class Exactness:
    """How far a piece may come out from its size, to either side, ticks; as it was cut."""

    piece: Piece
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class PhotoLine:
    """One photograph in the table.

    Attributes:
        size: What it is trimmed to, as it lies on the page, ticks.
        border: What the mat shows on every side, ticks.
        prints: What it can be trimmed from, and what share of that falls, in words; the least loss first.
        pixels: The fewest at 300 and at 150 per inch.
    """

    mark: str
    piece: str
    page: str
    size: Size
    border: int
    prints: tuple[str, ...]
    pixels: tuple[str, str]


@dataclass(frozen=True, slots=True)
class BookletPlan:
    """All that a booklet shows, worked out for one bench.

    Attributes:
        colourway: The papers in which it is shown, if there are any.
        papers: What their set is called.
        preview: The spread as it will lie on the table; without papers in tints that stand for any.
        sheets: One entry for each sheet, in order.
        words: One entry for each step at the trimmer.
        sizes: Of every piece by id, unturned, as they are told, ticks.
        cut_cautions: What is said before the first cut.
        glue_cautions: What is said before anything is glued.
        cut_rounding: What the marks of the scale do to sizes, in words; empty where they show all of them.
        glue_rounding: What the marks of the ruler do to places, likewise.
        cut_doubts: What is doubtful about this recipe before the first cut, in sentences.
        glue_doubts: Likewise before anything is glued.
        adhesive: What sticks which piece, and how much of it is needed, in sentences.
        adhesives: Those that anything is held by.
        exactness: One entry for each piece that is cut.
        watched: What is worth watching because of it, in sentences.
        address: Where the recipe is found; empty when it is nowhere.
    """

    recipe: Recipe
    bench: Bench
    colourway: Colourway | None
    papers: str
    preview: Canvas
    sheets: Sequence[SheetPlan]
    steps: Sequence[CutStep]
    words: Sequence[CutWords]
    piles: Sequence[Pile]
    sizes: Mapping[str, Size]
    cut_cautions: Sequence[str]
    placement: PlacementPlan
    places: Sequence[PlaceStep]
    photos: Sequence[PhotoLine]
    glue_cautions: Sequence[str]
    cut_rounding: str = ""
    glue_rounding: str = ""
    cut_doubts: Sequence[str] = ()
    glue_doubts: Sequence[str] = ()
    adhesive: Sequence[str] = ()
    adhesives: Sequence[Adhesive] = ()
    exactness: Sequence[Exactness] = ()
    watched: Sequence[str] = ()
    address: str = ""
