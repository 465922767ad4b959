from io import BytesIO

import numpy as np
import pypdfium2
import pytest
from PIL import Image

from letters import letters
from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.raster import HIGHEST_PX, MOST_PIXELS, NARROWEST_PX, WIDEST_PX, pdf, png, see_through_pixels
from spreadwright.drawing.svg import svg_bytes
from spreadwright.errors import CannotDraw
from spreadwright.geometry import Rect, Size

COLOURS = {"r": "#ff0000", "w": "#ffffff", "b": "#0000ff"}


@pytest.fixture
def canvas() -> Canvas:
    canvas = Canvas(Size(8128 * 4, 8128 * 2), title="Flag")
    canvas.rect(Rect(0, 0, 8128 * 4, 8128 * 2), filled("#ffffff"))
    canvas.rect(Rect(0, 0, 8128 * 2, 8128), filled("#ff0000"))
    canvas.rect(Rect(8128 * 3, 8128, 8128, 8128), filled("#0000ff"))
    return canvas


def test_a_picture_comes_out_as_drawn(canvas: Canvas):
    assert letters(canvas, 4, COLOURS) == ("rrww", "wwwb")


@pytest.mark.parametrize("size", [(80, 38400), (38400, 38400), (100, 1000)])
def test_large_picture_is_drawn_within_bounds(size: tuple[int, int]):
    canvas = Canvas(Size(*size), title="Tall")
    width, height = Image.open(BytesIO(png(svg_bytes(canvas), WIDEST_PX))).size
    assert width <= WIDEST_PX and height <= HIGHEST_PX and width * height <= MOST_PIXELS
    assert width == WIDEST_PX or height > 0.95 * HIGHEST_PX or width * height > 0.95 * MOST_PIXELS


@pytest.mark.parametrize(("asked", "given"), [(200, 200), (0, NARROWEST_PX), (10**9, WIDEST_PX)])
def test_width_is_kept_within_bounds(canvas: Canvas, asked: int, given: int):
    image = Image.open(BytesIO(png(svg_bytes(canvas), asked)))
    assert image.width == given and image.height == given // 2


def test_pdf_pages_have_the_size_of_the_drawing(canvas: Canvas):
    document = pypdfium2.PdfDocument(pdf([svg_bytes(canvas)] * 2))
    assert [document.get_page_size(page) for page in range(len(document))] == [pytest.approx((288, 144), abs=0.01)] * 2


def test_the_same_pictures_give_the_same_pdf(canvas: Canvas):
    assert pdf([svg_bytes(canvas)]) == pdf([svg_bytes(canvas)])


def test_a_pdf_says_nothing_of_its_making(canvas: Canvas):
    assert not pypdfium2.PdfDocument(pdf([svg_bytes(canvas)])).get_metadata_dict(skip_empty=True)


@pytest.mark.parametrize("bad", [b"", b"<svg", b"<svg xmlns='http://www.w3.org/2000/svg'/>"])
def test_what_cannot_be_drawn_keeps_its_cause(bad: bytes):
    with pytest.raises(CannotDraw) as caught:
        png(bad, 100)
    assert caught.value.__cause__ is not None


def test_a_pdf_without_pages_is_refused():
    with pytest.raises(CannotDraw):
        pdf([])


def test_what_shows_through_is_told_apart_from_its_colour():
    canvas = Canvas(Size(8128 * 4, 8128 * 2), title="Pane")
    canvas.rect(Rect(0, 0, 8128 * 2, 8128 * 2), filled("#ff8000", 0.5))
    canvas.rect(Rect(8128 * 3, 0, 8128, 8128 * 2), filled("#0000ff"))
    drawn = see_through_pixels(svg_bytes(canvas), 40)
    assert drawn.shape == (20, 40, 4)
    assert np.abs(drawn[10, 10].astype(int) - [255, 128, 0, 128]).max() <= 2
    assert tuple(drawn[10, 25]) == (0, 0, 0, 0) and tuple(drawn[10, 35]) == (0, 0, 255, 255)
