"""Which pieces need a pencil mark when they are cut, because later nobody could see which way up they lay.

Plain paper has no up-side. A piece of a one-way print must keep its up-side; a square one of any print could lie on its
side and look right. Whatever is not square shows by its shape which way it lies, and a sheet that is not cut was never
turned. What is turned over and on its side besides has no way up that a recipe tells.
"""

from collections.abc import Iterable, Mapping

from spreadwright.model import Kind, Recipe, Side
from spreadwright.placing.layers import PlacedPiece


def marked(recipe: Recipe, placed: Iterable[PlacedPiece], cut: Mapping[str, bool]) -> Mapping[str, Side]:
    """The pieces that need a mark, by id, each with the face that it goes on: the one that is glued down.

    Args:
        recipe: One without errors.
        placed: Its pieces.
        cut: Whether a piece is cut from its sheet at all, by id.
    """
    return {
        each.piece.id: Side.BACK if each.side is Side.FRONT else Side.FRONT
        for each in placed
        if cut.get(each.piece.id) and _hides_its_top(recipe, each)
    }


def _hides_its_top(recipe: Recipe, each: PlacedPiece) -> bool:
    role = recipe.role(each.piece.role)
    if role is None or role.kind is Kind.PLAIN:
        return False
    is_square = each.rect.width == each.rect.height
    return role.is_directional or (is_square and not (each.is_turned and each.side is Side.BACK))
