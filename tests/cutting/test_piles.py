from collections import Counter
from dataclasses import replace

from hypothesis import given, settings

from spreadwright.cutting import cut_sheets, cut_steps, fall_order, pieces, piles
from spreadwright.model import INCH_BENCH, Edge, Leaf, Offset, Placement, Recipe, Spread, Use
from strategies import cut_trees, recipe_of


def placed_by_turns(recipe: Recipe) -> Recipe:
    """Its pieces placed on the left and the right page by turns."""
    found = pieces(cut_sheets(recipe))
    left, top = Offset(Edge.LEFT, 0), Offset(Edge.TOP, 0)
    placements = tuple(Placement(p.id, ("left", "right")[i % 2], left, top) for i, p in enumerate(found))
    return replace(recipe, placements=placements, spread=Spread(("left", "right"), recipe.spread.size))


@settings(deadline=None)
@given(cut_trees(), cut_trees())
def test_every_placed_piece_is_in_one_pile(first, second):
    recipe = placed_by_turns(recipe_of(first, second))
    sheets = cut_sheets(recipe)
    found = piles(recipe, sheets, cut_steps(sheets, INCH_BENCH))
    assert Counter(piece.id for pile in found for piece in pile.pieces) == Counter(p.id for p in pieces(sheets))
    pages = {p.piece: p.page for p in recipe.placements}
    assert all(pages[piece.id] == pile.page for pile in found for piece in pile.pieces)


@settings(deadline=None)
@given(cut_trees())
def test_parts_are_ready_once_each(tree):
    sheets = cut_sheets(recipe_of(tree))
    order = fall_order(sheets, cut_steps(sheets, INCH_BENCH))
    assert sorted(order) == sorted(part.id for part in sheets[0].parts)


def test_sheet_that_is_not_cut_joins_its_pile_at_its_turn():
    sheets = cut_sheets(recipe_of(Leaf(Use.PIECE, "base"), Leaf(Use.PIECE, "cover")))
    assert fall_order(sheets, ()) == ("base", "cover")
