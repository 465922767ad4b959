"""The verb *photos*: how large each photograph is trimmed, from which prints, and how many pixels it takes."""

from dataclasses import dataclass
from fractions import Fraction

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading
from spreadwright.errors import InvalidDocument, has_errors
from spreadwright.geometry import Size
from spreadwright.lengths import Unit, nearest, told_size
from spreadwright.model import Bench, Piece, Recipe
from spreadwright.photos import (
    COARSE,
    FINE,
    SHAPES,
    Border,
    MattedPhoto,
    Pixels,
    Trim,
    bordered,
    matted_photos,
    photo_findings,
    picture_loss,
    pixels,
    print_label,
    share_text,
    trims,
)
from spreadwright.placing import PlacedPiece, placed_pieces
from spreadwright.tasks.check import proven
from spreadwright.words import SOURCE, speaking
from spreadwright.words import gettext as _

__all__ = ["Border", "PhotoPlan", "Photographs", "photos"]


@dataclass(frozen=True, slots=True)
class PhotoPlan:
    """One photograph: what it is trimmed to, and from what.

    Attributes:
        mark: Of the mat.
        page: On which the mat lies.
        size: As it lies on the page, ticks.
        on_ruler: The same to the nearest marks of the bench's ruler.
        mat: As it lies on the page.
        trims: The prints that it can be trimmed from, the least loss first.
        shapes: What is cut off the pictures that cameras take, by their shape.
        fine: At 300 pixels per inch.
        coarse: At 150.
        words: Where to trim it from, in one sentence.
    """

    photo: MattedPhoto
    mark: str
    page: str
    size: Size
    on_ruler: Size
    mat: Size
    trims: tuple[Trim, ...]
    shapes: tuple[tuple[str, Fraction], ...]
    fine: Pixels
    coarse: Pixels
    words: str

    @property
    def border(self) -> int:
        """What the mat shows on every side, ticks."""
        return self.photo.border


@dataclass(frozen=True, slots=True)
class Photographs:
    """Every photograph of a recipe, in document order, in the language spoken when it was worked out.

    Attributes:
        wide: The same with the wide border; none of those whose mat is too small for it.
    """

    recipe: Recipe
    bench: Bench
    plans: tuple[PhotoPlan, ...]
    wide: tuple[PhotoPlan, ...]

    def of(self, piece_id: str) -> PhotoPlan:
        """The photograph on a mat.

        Raises:
            KeyError: None lies on it.
        """
        return {plan.photo.on: plan for plan in self.plans}[piece_id]

    def widened(self, plan: PhotoPlan) -> PhotoPlan | None:
        """The same photograph with the wide border; None when its mat is too small for it."""
        return next((each for each in self.wide if each.photo.on == plan.photo.on), None)


def photos(reading: Reading[Recipe], bench: Bench, border: Border = Border.RECIPE) -> Photographs:
    """The photographs of a recipe, with the borders that it names or with one border for all of them.

    Raises:
        InvalidDocument: The recipe carries an error, or a mat is too small for the border.
    """
    recipe = bordered(proven(reading), border)
    cut = pieces(cut_sheets(recipe))
    with speaking(SOURCE):
        found = photo_findings(recipe, cut)
    if has_errors(found):
        raise InvalidDocument(recipe.title, found)
    plans, wide = (_plans(each, cut, bench) for each in (recipe, bordered(recipe, Border.WIDE)))
    return Photographs(recipe, bench, plans, wide)


def _plans(recipe: Recipe, cut: tuple[Piece, ...], bench: Bench) -> tuple[PhotoPlan, ...]:
    placed = {each.piece.id: each for each in placed_pieces(recipe, cut)}
    return tuple(_plan(photo, placed[photo.on], bench) for photo in matted_photos(recipe, cut))


def _plan(photo: MattedPhoto, mat: PlacedPiece, bench: Bench) -> PhotoPlan:
    size, step = photo.rect_on(mat.rect).size, bench.ruler.graduation
    found = trims(size)
    return PhotoPlan(
        photo=photo,
        mark=mat.piece.mark,
        page=mat.page,
        size=size,
        on_ruler=Size(nearest(size.width, step), nearest(size.height, step)),
        mat=mat.rect.size,
        trims=found,
        shapes=tuple((name, picture_loss(shape, size)) for name, shape in SHAPES.items()),
        fine=pixels(size, FINE),
        coarse=pixels(size, COARSE),
        words=_words(size, found, bench.unit),
    )


def _words(size: Size, found: tuple[Trim, ...], unit: Unit) -> str:
    if not found:
        told = _("No usual print covers it: have it printed at {size}.")
        return told.format(size=told_size(size.width, size.height, unit))
    named = print_label(found[0].print, unit)
    if not found[0].lost:
        return _("A print of {print} fits as it is.").format(print=named)
    told = _("Trim it from a print of {print}; {share} of the print is cut off.")
    return told.format(print=named, share=share_text(found[0].lost))
