import numpy as np
import pytest

from spreadwright.drawing import face_pixels, markup, png, svg_bytes
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.geometry import Rect, Size
from spreadwright.images import read
from spreadwright.model import Face, Pattern, Texture

MM = 320
RAISED = [texture for texture in Texture if texture is not Texture.SMOOTH]
COLOURS = ("#f1e8d6", "#8aa3a0", "#2f3a52")


def drawn(texture: Texture, colour: str, area: Rect) -> Canvas:
    canvas = Canvas(Size(area.width, area.height), title="Paper", origin=(area.left, area.top))
    draw_face(canvas, Face(Pattern.PLAIN, (colour,), 0, texture=texture), area)
    return canvas


@pytest.mark.parametrize("colour", COLOURS)
@pytest.mark.parametrize("texture", RAISED)
def test_a_texture_is_felt_before_it_is_seen(texture: Texture, colour: str):
    smooth = face_pixels(Face(Pattern.PLAIN, (colour,), 0)).astype(float)
    raised = face_pixels(Face(Pattern.PLAIN, (colour,), 0, texture=texture)).astype(float)
    assert np.ptp(raised.reshape(-1, 3), axis=0).max() >= 3
    assert np.abs(raised.mean((0, 1)) - smooth.mean((0, 1))).max() <= 14
    assert raised.std(axis=(0, 1)).max() <= 8


@pytest.mark.parametrize("texture", RAISED)
def test_a_texture_runs_on_from_piece_to_piece(texture: Texture):
    half = 64 * MM
    whole = read(png(svg_bytes(drawn(texture, COLOURS[1], Rect(0, 0, 2 * half, half))), 512)).pixels.astype(int)
    right = read(png(svg_bytes(drawn(texture, COLOURS[1], Rect(half, 0, half, half))), 256)).pixels.astype(int)
    assert np.abs(whole[:, 260:508] - right[:, 4:252]).mean() < 0.6


@pytest.mark.parametrize("texture", Texture)
def test_largest_sheet_is_no_endless_picture(texture: Texture):
    assert len(markup(drawn(texture, COLOURS[0], Rect(0, 0, 120 * 8128, 120 * 8128)))) < 400_000


def test_linen_is_woven_once():
    area = Rect(0, 0, 40 * MM, 40 * MM)
    plain = drawn(Texture.LINEN, "#dfe3e3", area).outline()
    canvas = Canvas(area.size, title="Paper")
    draw_face(canvas, Face(Pattern.LINEN, ("#dfe3e3",), 0, texture=Texture.LINEN), area)
    assert canvas.outline() == plain


def test_a_print_shows_its_paper():
    area = Rect(0, 0, 40 * MM, 40 * MM)
    canvas = Canvas(area.size, title="Paper")
    draw_face(canvas, Face(Pattern.STRIPE, ("#ffffff", "#2f4858"), 20 * MM, texture=Texture.LAID), area)
    assert canvas.outline()[-4:] == drawn(Texture.LAID, "#ffffff", area).outline()[-4:]
    assert any("#2f4858" in verb for verb in canvas.outline()[:-4])
