from hypothesis import given
from hypothesis import strategies as st

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.geometry import Rect
from spreadwright.model import MOST_PARTS, Axis, Branch, Leaf, Split, Use, leaf_count, mirrored
from strategies import SQUARE, cut_trees, recipe_of
from tiling import is_tiled

WHOLE = Rect.at(0, 0, SQUARE)


@given(cut_trees())
def test_parts_tile_the_sheet(tree):
    (sheet,) = cut_sheets(recipe_of(tree))
    assert is_tiled(WHOLE, [part.rect for part in sheet.parts])
    assert len(sheet.parts) == leaf_count(tree)


@given(cut_trees())
def test_columns_and_rows_swapped_swap_the_answer(tree):
    (sheet,), (swapped,) = cut_sheets(recipe_of(tree)), cut_sheets(recipe_of(mirrored(tree)))
    turned = [Rect(p.rect.top, p.rect.left, p.rect.height, p.rect.width) for p in sheet.parts]
    assert [part.rect for part in swapped.parts] == turned


@given(st.lists(cut_trees(), min_size=1, max_size=3))
def test_every_piece_has_an_id_and_a_mark_of_its_own(trees):
    found = pieces(cut_sheets(recipe_of(*trees)))
    assert len({piece.id for piece in found}) == len({piece.mark for piece in found}) == len(found)
    assert all(piece.id.startswith(piece.name) for piece in found)


def test_several_pieces_of_one_name_are_numbered_in_document_order():
    split = Split(Axis.COLUMNS, (Branch(None, Leaf(Use.PIECE, "mat"), is_rest=True, times=3),))
    found = pieces(cut_sheets(recipe_of(split, Leaf(Use.PIECE, "base"), Leaf(Use.PIECE, "mat"))))
    assert [(piece.id, piece.mark) for piece in found] == [
        ("mat-1", "A1"),
        ("mat-2", "A2"),
        ("mat-3", "A3"),
        ("base", "B"),
        ("mat-4", "A4"),
    ]


def test_repeated_rest_is_shared_equally():
    split = Split(Axis.ROWS, (Branch(None, Leaf(Use.PIECE, "strip"), is_rest=True, times=4),))
    (sheet,) = cut_sheets(recipe_of(split))
    assert {part.rect.height for part in sheet.parts} == {SQUARE.height // 4}


def test_unknown_extent_leaves_only_what_follows_unknown():
    split = Split(
        Axis.COLUMNS,
        (
            Branch(1000, Leaf(Use.PIECE, "a")),
            Branch(None, Leaf(Use.PIECE, "b")),
            Branch(1000, Leaf(Use.PIECE, "c")),
        ),
    )
    (sheet,) = cut_sheets(recipe_of(split))
    assert [part.rect is None for part in sheet.parts] == [False, True, True]


def test_recipe_of_too_many_parts_is_not_laid_out():
    tree = Leaf(Use.PIECE, "mat")
    for _ in range(40):
        tree = Split(Axis.COLUMNS, (Branch(None, tree, is_rest=True, times=100),))
    assert leaf_count(tree) == 100**40
    assert cut_sheets(recipe_of(tree)) == ()
    assert MOST_PARTS < 100**40
