"""The verb *booklet*: everything that a class needs, as one PDF to print."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from urllib.parse import quote, urlsplit

from spreadwright.colour import count
from spreadwright.document import Reading
from spreadwright.drawing.booklet import BookletPlan, Exactness, Format, PhotoLine, booklet_pdf
from spreadwright.drawing.spread import spread_picture
from spreadwright.errors import Severity
from spreadwright.model import Adhesive, Bench, Colourway, PaperSet, Recipe
from spreadwright.photos import print_label, share_text
from spreadwright.placing import Adhesives
from spreadwright.tasks.check import recipe_findings
from spreadwright.tasks.colourways import chosen_colourway
from spreadwright.tasks.cut import cut
from spreadwright.tasks.draw import placement_plan, sheet_plans
from spreadwright.tasks.photos import Photographs, photos
from spreadwright.tasks.place import place
from spreadwright.tasks.stand_in import stand_in
from spreadwright.tasks.tolerance import Tolerance, tolerance
from spreadwright.words import speaking, spoken

__all__ = ["Dress", "Format", "booklet", "dress", "recipe_address"]

LONGEST_ADDRESS = 300
"""A longer one makes a code too fine for a telephone to read from paper."""

_OF_CUTS = frozenset({"strip-too-narrow"})
_OF_GLUING = frozenset(
    {"photo-meets-piece", "mat-too-small", "no-print-large-enough", "caption-under-photo", "adhesive-too-wide"}
)
"""The warnings of a check that concern whoever holds the paper."""


@dataclass(frozen=True, slots=True)
class Dress:
    """The papers that a booklet shows: one colourway of a set."""

    papers: PaperSet
    colourway: Colourway


def dress(recipe: Recipe, named: PaperSet | None, known: Iterable[PaperSet], colourway_id: str | None) -> Dress | None:
    """One colourway of the set that is named or, when none is, of the first that fits; None when none fits.

    Raises:
        UnknownName: The id names no colourway of this recipe and set.
        InvalidDocument: A face does not suit its role.
        NoColourway: No paper of the named set fits one of the roles.
    """
    papers = named or next((papers for papers in known if count(recipe, papers)), None)
    return Dress(papers, chosen_colourway(recipe, papers, colourway_id)) if papers else None


def recipe_address(base: str, recipe_id: str) -> str:
    """Where a recipe is found in a collection published at `base`; empty when either is.

    >>> recipe_address("https://albums.example/", "rain until four")
    'https://albums.example/recipes/rain%20until%20four'

    Raises:
        ValueError: The base is no address of the web, or too long for a code.
    """
    if not base or not recipe_id:
        return ""
    parts = urlsplit(base)
    if parts.scheme not in ("http", "https") or not parts.netloc:
        raise ValueError(f"“{base[:60]}” is no address of the web; write it like https://albums.example/.")
    address = f"{base.rstrip('/')}/recipes/{quote(recipe_id, safe='')}"
    if len(address) > LONGEST_ADDRESS:
        raise ValueError(f"The address has {len(address)} characters; a code holds at most {LONGEST_ADDRESS}.")
    return address


def booklet(
    reading: Reading[Recipe],
    bench: Bench,
    dress: Dress | None,
    *,
    paper: Format = Format.A4,
    language: str = "en",
    address: str = "",
    told: Callable[[str], None] = lambda _: None,
    most_pages: int | None = None,
) -> bytes:
    """The booklet of a recipe, for one bench and in one colourway, or in none.

    Args:
        reading: The recipe.
        bench: Whose tools it is written for.
        dress: The papers that it shows and names; without any the cover shows quiet tints.
        paper: What it is printed on.
        language: In which it speaks.
        address: Where the recipe is found, for the square code on the cover; empty for none.
        told: Is told what is done next.
        most_pages: Are printed; any number when None.

    Raises:
        PrintTooLong: There are more.
        InvalidDocument: The recipe carries an error, on this bench or on any.
        CannotDraw: A library refused.
    """
    with speaking(language):
        return booklet_pdf(_plan(reading, bench, dress, address), paper, told=told, most_pages=most_pages)


def _plan(reading: Reading[Recipe], bench: Bench, dress: Dress | None, address: str) -> BookletPlan:
    """What the booklet shows, in the language that is spoken."""
    cutting, placing = cut(reading, bench), place(reading, bench)
    shown = dress.colourway if dress else stand_in(cutting.recipe)
    found = tolerance(reading, bench)
    return BookletPlan(
        recipe=cutting.recipe,
        bench=bench,
        colourway=dress.colourway if dress else None,
        papers=dress.papers.title if dress else "",
        preview=spread_picture(cutting.recipe, placing.placed, placing.photos, shown, prefix="v-"),
        sheets=sheet_plans(cutting),
        steps=cutting.steps,
        words=cutting.words,
        piles=cutting.piles,
        sizes=cutting.sizes,
        cut_cautions=cutting.cautions,
        cut_rounding=cutting.rounding,
        placement=placement_plan(placing),
        places=placing.steps,
        photos=_photo_lines(photos(reading, bench), bench),
        glue_cautions=placing.cautions,
        glue_rounding=placing.rounding,
        cut_doubts=_doubts(reading, bench, _OF_CUTS),
        glue_doubts=_doubts(reading, bench, _OF_GLUING),
        adhesive=placing.adhesive.words,
        adhesives=_used(placing.adhesive, bench),
        exactness=_exactness(found),
        watched=_watched(found),
        address=address,
    )


def _doubts(reading: Reading[Recipe], bench: Bench, codes: frozenset[str]) -> tuple[str, ...]:
    """The warnings of a check with these codes, in the language that is spoken."""
    found = (each for each in recipe_findings(reading, bench, language=spoken()) if each.code in codes)
    return tuple(dict.fromkeys(f"{each.message} {each.remedy}" for each in found if each.severity is Severity.WARNING))


def _used(held: Adhesives, bench: Bench) -> tuple[Adhesive, ...]:
    """The adhesives of a bench that hold anything, in its order."""
    used = {each.adhesive for each in (*held.pieces, *held.photos)}
    return tuple(each for each in bench.adhesives if each in used)


def _exactness(found: Tolerance) -> tuple[Exactness, ...]:
    """The pieces of which any side is cut at all."""
    every = (Exactness(each.piece, each.width.worst, each.height.worst) for each in found.pieces)
    return tuple(each for each in every if each.width or each.height)


def _watched(found: Tolerance) -> tuple[str, ...]:
    """What is worth a warning."""
    warned = (each for each in found.findings if each.severity is not Severity.NOTE)
    return tuple(f"{each.message} {each.remedy}" for each in warned)


def _photo_lines(found: Photographs, bench: Bench) -> tuple[PhotoLine, ...]:
    return tuple(
        PhotoLine(
            each.mark,
            each.photo.on,
            each.page,
            each.size,
            each.border,
            tuple(f"{print_label(trim.print, bench.unit)}: {share_text(trim.lost)}" for trim in each.trims),
            (str(each.fine), str(each.coarse)),
        )
        for each in found.plans
    )
