import pytest

from builder import sound, spoilt
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import read_recipe
from spreadwright.geometry import Rect
from spreadwright.lengths import Unit, ticks
from spreadwright.placing import placed_pieces


def placed(data: bytes):
    recipe = read_recipe(data).model
    return {each.piece.id: each for each in placed_pieces(recipe, pieces(cut_sheets(recipe)))}


def inches(*lengths: str) -> Rect:
    return Rect(*(ticks(length, Unit.INCH) for length in lengths))


@pytest.mark.parametrize(
    ("members", "expected"),
    [
        ({"left": "1", "top": "2"}, ("1", "2", "7", "7")),
        ({"right": "1", "bottom": "2"}, ("4", "3", "7", "7")),
        ({"centre": "0", "middle": "0"}, ("2 1/2", "2 1/2", "7", "7")),
        ({"centre": "-1", "middle": "1 1/2"}, ("1 1/2", "4", "7", "7")),
        ({"left": "-1", "top": "6"}, ("-1", "6", "7", "7")),
    ],
)
def test_place_follows_from_the_edges_that_are_named(members, expected):
    data = spoilt(lambda d: d["placements"].__setitem__(4, {"piece": "panel", "page": "left"} | members))
    assert placed(data)["panel"].rect == inches(*expected)


def test_turned_piece_swaps_its_sides():
    data = spoilt(lambda d: d["placements"][9].update(turned=True))
    assert placed(data)["mat-1"].rect == inches("1/2", "8 1/4", "5", "3 1/2")


def test_layers_count_what_lies_beneath():
    layers = {name: each.layer for name, each in placed(sound()).items()}
    assert layers == {
        "base-1": 1, "strip-1": 2, "panel": 2, "tile-1": 3, "mat-2": 3,
        "base-2": 1, "strip-2": 2, "block-1": 2, "block-2": 3, "tile-2": 4, "mat-1": 3,
    }  # fmt: skip


def test_placement_that_cannot_be_known_is_left_out():
    def spoil(document):
        document["placements"][4]["left"] = "1/3"
        document["placements"][5]["piece"] = "nothing"
        document["placements"][6]["page"] = "middle"

    assert set(placed(sound())) - set(placed(spoilt(spoil))) == {"panel", "tile-1", "block-1"}
