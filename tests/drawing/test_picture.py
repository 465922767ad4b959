from xml.etree.ElementTree import fromstring

import numpy as np
import pytest

from letters import letters
from spreadwright.drawing import face_pixels, markup, png, svg_bytes
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.geometry import Rect, Size
from spreadwright.images import encode_png, read
from spreadwright.model import Face, Pattern, Swatch

MM = 320
SHEET = Rect(0, 0, 97536, 97536)
NAMED = {"r": "#ff0000", "b": "#0000ff", "w": "#ffffff"}


def swatch(width: int = 64, height: int = 32, overlap: int = 4) -> Swatch:
    """Red on the left half, blue on the right, white in the lowest quarter."""
    pixels = np.zeros((height, width, 3), dtype=np.uint8)
    pixels[:, : width // 2, 0] = pixels[:, width // 2 :, 2] = 255
    pixels[3 * height // 4 :] = 255
    wide = np.pad(pixels, ((0, overlap), (0, overlap), (0, 0)), mode="wrap")
    return Swatch("halves.png", encode_png(wide), "image/png", width, height, overlap)


def face(repeat_mm: int, picture: Swatch | None = None) -> Face:
    return Face(Pattern.PICTURE, ("#808080",), repeat_mm * MM, picture=picture or swatch())


def drawn(face: Face, area: Rect = SHEET) -> Canvas:
    canvas = Canvas(Size(area.width, area.height), title="Paper", origin=(area.left, area.top))
    draw_face(canvas, face, area)
    return canvas


def test_a_picture_is_as_wide_on_paper_as_its_repeat():
    rows = letters(drawn(face(20), Rect(0, 0, 40 * MM, 20 * MM)), 40, NAMED, pixels=10)
    assert rows[0] == rows[10] == "r" * 10 + "b" * 10 + "r" * 10 + "b" * 10
    assert rows[8] == rows[9] == rows[18] == "w" * 40


def test_pieces_of_one_sheet_show_one_print():
    part = Rect(25 * MM, 13 * MM, 30 * MM, 20 * MM)
    piece = letters(drawn(face(20), part), 30, NAMED, pixels=10)
    sheet = letters(drawn(face(20), Rect(0, 0, 80 * MM, 40 * MM)), 80, NAMED, pixels=10)
    assert piece == tuple(row[25:55] for row in sheet[13:33])


@pytest.mark.parametrize("width_px", [97, 333, 611, 1000])
def test_no_joint_shines_through(width_px: int):
    level = Swatch("flat.png", encode_png(np.full((528, 528, 3), 200, dtype=np.uint8)), "image/png", 512, 512, 16)
    canvas = drawn(Face(Pattern.PICTURE, ("#ff0000",), 37 * MM, picture=level), Rect(0, 0, 300 * MM, 300 * MM))
    assert np.ptp(read(png(svg_bytes(canvas), width_px)).pixels) <= 4


def test_a_picture_is_embedded_once_however_often_it_is_shown():
    shown = fromstring(markup(drawn(face(20))))
    tags = [element.tag.split("}")[1] for element in shown.iter()]
    assert tags.count("image") == 1 and tags.count("use") == 16 * 31


@pytest.mark.parametrize("repeat_mm", [0, 1, 3, 8, 305, 3048])
@pytest.mark.parametrize(("width", "height"), [(64, 32), (1, 1024), (1024, 1)])
def test_no_picture_makes_an_endless_one(repeat_mm: int, width: int, height: int):
    largest = Rect(0, 0, 120 * 8128, 120 * 8128)
    assert len(markup(drawn(face(repeat_mm, swatch(width, height, 1)), largest))) < 300_000


def test_a_picture_that_did_not_come_along_is_its_ground():
    bare = Face(Pattern.PICTURE, ("#ff0000",), 20 * MM)
    assert set(letters(drawn(bare, Rect(0, 0, 20 * MM, 20 * MM)), 4, NAMED)) == {"rrrr"}


def test_pixels_of_a_picture_are_those_of_the_paper():
    pixels = face_pixels(face(30))
    assert pixels.shape == (120, 120, 3)
    assert tuple(pixels[5, 10]) == (255, 0, 0) and tuple(pixels[5, 50]) == (0, 0, 255)
    assert tuple(pixels[28, 40]) == (255, 255, 255)
