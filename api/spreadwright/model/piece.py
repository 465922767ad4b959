"""The piece: one part of a sheet that is placed on a page."""

from dataclasses import dataclass, field

from spreadwright.geometry import Size


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece, as cutting finds it and placing uses it.

    Attributes:
        id: The name in the cut tree, numbered (`mat-1`, `mat-2`) when several carry it.
        mark: The short sign in instructions: a letter for the name, numbered in the same way.
        size: As cut, before any turn; None when the recipe does not say.
    """

    id: str
    name: str
    mark: str
    role: str
    size: Size | None
    where: str = field(default="", compare=False)
