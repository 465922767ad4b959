"""Photographs on their mats: how large each is trimmed."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from enum import StrEnum

from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Photo, Piece, Recipe

NARROW, WIDE = TICKS[Unit.INCH] // 8, TICKS[Unit.INCH] // 4
"""The borders that are common practice of the trade: 1/8 in, and 1/4 in as the wide one; ticks."""


class Border(StrEnum):
    """Which border the photographs leave of their mats."""

    RECIPE = "recipe"
    NARROW = "narrow"
    WIDE = "wide"


@dataclass(frozen=True, slots=True)
class MattedPhoto:
    """One photograph, centred on its mat.

    Attributes:
        on: The piece that it lies on.
        size: As it will lie on the page when the mat is not turned, ticks.
        border: What the mat shows on every side, ticks.
    """

    on: str
    size: Size
    border: int
    where: str = field(default="", compare=False)

    def rect_on(self, mat: Rect) -> Rect:
        """The photograph's place, given the place of its mat."""
        return mat.inset(self.border)


def photo_size(mat: Size, border: int) -> Size:
    """Mat minus the border on both sides: with 1/8 in all round, a 4 × 6 in mat takes 3 3/4 × 5 3/4 in."""
    return Size(mat.width - 2 * border, mat.height - 2 * border)


def matted_photos(recipe: Recipe, pieces: Iterable[Piece]) -> tuple[MattedPhoto, ...]:
    """Every photograph whose mat and border are known and leave room for it, in document order."""
    sizes = {piece.id: piece.size for piece in pieces}
    return tuple(
        MattedPhoto(photo.on, photo_size(mat, photo.border), photo.border, photo.where)
        for photo in recipe.photos
        if (mat := sizes.get(photo.on)) is not None and photo.border is not None and has_room(mat, photo)
    )


def bordered(recipe: Recipe, border: Border) -> Recipe:
    """The recipe with the same border round every photograph, or as it is."""
    chosen = {Border.NARROW: NARROW, Border.WIDE: WIDE}.get(border)
    if chosen is None:
        return recipe
    return replace(recipe, photos=tuple(replace(photo, border=chosen) for photo in recipe.photos))


def has_room(mat: Size, photo: Photo) -> bool:
    """Whether the border leaves anything of the mat."""
    return photo.border is not None and 2 * photo.border < min(mat.width, mat.height)
