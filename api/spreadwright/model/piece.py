"""The piece: one part of a sheet that is placed on a page."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from spreadwright.errors import nearest_hint
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


def piece_hint(name: str, pieces: Iterable[Piece]) -> str:
    """What may have been meant by the name of no piece: the numbered ones of that name, or the nearest id."""
    known = list(pieces)
    numbered = [piece.id for piece in known if piece.name == name]
    if numbered:
        return f"There are {len(numbered)} of that name: “{numbered[0]}” to “{numbered[-1]}”."
    return nearest_hint(name, [piece.id for piece in known])
