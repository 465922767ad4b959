from io import BytesIO

import numpy as np
import pikepdf
import pytest

from letters import letters
from spreadwright.drawing import pdf, png, svg_bytes
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.embedded import once
from spreadwright.errors import CannotDraw
from spreadwright.geometry import Rect, Size
from spreadwright.images import encode_jpeg, encode_png, read

MM = 320
NAMED = {"r": "#ff0000", "b": "#0000ff", " ": "#000000"}
HALVES = np.zeros((16, 16, 3), dtype=np.uint8)
HALVES[:, :8, 0] = HALVES[:, 8:, 2] = 255


def shown(data: bytes, media_type: str, times: int = 1) -> Canvas:
    canvas = Canvas(Size(10 * MM * times, 10 * MM), title="Halves")
    with canvas.motif("halves"):
        canvas.image(Rect(0, 0, 10 * MM, 10 * MM), data, media_type)
    for number in range(times):
        canvas.use("halves", (number * 10 * MM, 0))
    return canvas


@pytest.mark.parametrize(("encode", "media_type"), [(encode_png, "image/png"), (encode_jpeg, "image/jpeg")])
def test_a_picture_within_a_picture_is_drawn(encode, media_type):
    assert letters(shown(encode(HALVES), media_type), 10, NAMED, pixels=200)[4] == "rrrrrbbbbb"


def test_a_picture_shown_often_stands_once_in_a_pdf():
    one, many = (pdf([svg_bytes(shown(encode_jpeg(HALVES), "image/jpeg", times))]) for times in (1, 60))
    assert len(many) < len(one) + 2000
    with pikepdf.open(BytesIO(many)) as opened:
        (picture,) = opened.pages[0].Resources.XObject.values()
        assert picture.Filter == "/DCTDecode"  # the JPEG itself


def test_names_that_come_again_leave_every_place_as_it_was():
    listed = b"/XObject << /x6 6 0 R /x7 7 0 R /x6 6 0 R >> /x6 6 0 R"
    assert once(listed) == b"/XObject << /x6 6 0 R /x7 7 0 R           >> /x6 6 0 R"


@pytest.mark.parametrize("href", ["file:///etc/hostname", "https://example.org/a.png", "data:text/plain;base64,aGk="])
def test_nothing_is_fetched(href):
    canvas = shown(encode_png(HALVES), "image/png")
    next(element for element in canvas.root.iter() if element.tag == "image").set("href", href)
    with pytest.raises(CannotDraw):
        png(svg_bytes(canvas), 100)


def test_bytes_that_are_no_picture_cannot_be_drawn():
    with pytest.raises(CannotDraw):
        png(svg_bytes(shown(b"no picture", "image/png")), 100)


def test_a_drawn_picture_is_read_back():
    pixels = read(png(svg_bytes(shown(encode_png(HALVES), "image/png")), 100)).pixels
    assert pixels.shape == (100, 100, 3) and tuple(pixels[50, 20]) == (255, 0, 0)
