"""Which pieces are joined to another one before that goes down: those that lie wholly on it."""

from collections.abc import Sequence

from spreadwright.geometry import Size
from spreadwright.placing.layers import PlacedPiece

DEEPEST = 8
"""No more than so many pieces are joined one on the other; what lies higher is joined to the last of them."""

_MOST_TRIED = 24


def bases(placed: Sequence[PlacedPiece], page: Size) -> dict[str, str]:
    """The id of the piece that each piece is joined to; the others go onto the page.

    A piece is joined to the highest one beneath it that holds all of it, if nothing that lies between the two and
    under the piece belongs elsewhere. A piece as large as the page is the page itself, and nothing is joined to it.
    """
    found: dict[str, str] = {}
    for index, each in enumerate(placed):
        beneath = [other for other in placed[:index] if other.page == each.page and other.rect.overlaps(each.rect)]
        holding = [d for d, other in enumerate(beneath) if _may_hold(other, each, page, found)]
        for depth in holding[: -_MOST_TRIED - 1 : -1]:
            base = beneath[depth]
            if all(base.piece.id in chain(other.piece.id, found) for other in beneath[depth + 1 :]):
                found[each.piece.id] = base.piece.id
                break
    return found


def _may_hold(base: PlacedPiece, each: PlacedPiece, page: Size, found: dict[str, str]) -> bool:
    is_within = base.rect.size != page and base.rect.contains(each.rect)
    return is_within and len(chain(base.piece.id, found)) < DEEPEST


def chain(piece: str, base_of: dict[str, str]) -> list[str]:
    """The bases of a piece, from the one it is joined to downward."""
    bases_below: list[str] = []
    while piece in base_of:
        piece = base_of[piece]
        bases_below.append(piece)
    return bases_below
