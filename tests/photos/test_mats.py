from hypothesis import given
from hypothesis import strategies as st

from builder import sound, spoilt
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import read_recipe
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import Unit, ticks
from spreadwright.photos import matted_photos, photo_size


def photos(data: bytes):
    recipe = read_recipe(data).model
    return {photo.on: photo for photo in matted_photos(recipe, pieces(cut_sheets(recipe)))}


def test_photo_is_smaller_than_its_mat_by_the_border_all_round():
    found = photos(sound())
    assert found["panel"].size == Size(*(ticks("6 1/2", Unit.INCH),) * 2)
    assert found["mat-1"].size == Size(ticks("3 1/4", Unit.INCH), ticks("4 3/4", Unit.INCH))


def test_border_as_wide_as_the_mat_leaves_no_photo():
    assert "mat-1" not in photos(spoilt(lambda d: d["photos"][1].update(border="1 3/4")))


@given(st.integers(3, 100), st.integers(3, 100), st.integers(0, 1))
def test_photo_lies_centred_on_its_mat(width, height, border):
    mat, size = Rect(5, 7, width, height), photo_size(Size(width, height), border)
    inside = mat.inset(border)
    assert inside.size == size
    assert inside.left - mat.left == mat.right - inside.right == inside.top - mat.top == mat.bottom - inside.bottom
