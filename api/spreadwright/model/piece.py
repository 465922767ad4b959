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
        width: As cut, before any turn, ticks; None when the recipe does not say.
        height: Likewise.
    """

    id: str
    name: str
    mark: str
    role: str
    width: int | None
    height: int | None
    where: str = field(default="", compare=False)

    @property
    def size(self) -> Size | None:
        """Width and height, when both are known."""
        return None if self.width is None or self.height is None else Size(self.width, self.height)


def piece_hint(name: str, pieces: Iterable[Piece]) -> str:
    """What may have been meant by the name of no piece: the numbered ones of that name, or the nearest id."""
    known = list(pieces)
    numbered = [piece.id for piece in known if piece.name == name]
    if numbered:
        return f"There are {len(numbered)} of that name: “{numbered[0]}” to “{numbered[-1]}”."
    ids = [piece.id for piece in known]
    return nearest_hint(name, ids) if len(ids) <= _MOST_COMPARED else f"Known: {', '.join(ids[:10])} …"


_MOST_COMPARED = 80
"""Comparing every unknown name with more pieces than this would take longer than a check may."""
