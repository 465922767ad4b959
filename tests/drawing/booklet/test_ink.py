from collections.abc import Sequence
from io import BytesIO
from xml.etree.ElementTree import Element

import numpy
import pypdfium2
import pytest
from PIL import Image

from spreadwright.drawing import svg
from spreadwright.drawing.booklet.album import Album, Picture
from spreadwright.drawing.booklet.ink import Matrix, ink, is_plain
from spreadwright.drawing.booklet.press import printed
from spreadwright.drawing.canvas import Canvas, Paint, Stop, filled, stroked
from spreadwright.drawing.fonts import Font, Glyph, Typeface
from spreadwright.drawing.path import Path
from spreadwright.drawing.raster import png
from spreadwright.drawing.theme import MM
from spreadwright.drawing.type import Style, write
from spreadwright.geometry import Rect, Size

SIZE = Size(60 * MM, 40 * MM)


class Recorded:
    """A pen that keeps what it is told."""

    def __init__(self) -> None:
        self.said: list[str] = []

    def say(self, words: str) -> None:
        self.said.append(words)

    def begin(self) -> None:
        self.said.append("q")

    def move(self, matrix: Matrix) -> None:
        self.said.append(f"{matrix} cm")

    def end(self) -> None:
        self.said.append("Q")

    def fade(self, opacity: float) -> None:
        self.said.append(f"fade {opacity}")

    def shade(self, shape: Element, gradient: Element) -> None:
        self.said.append(f"shade {shape.tag} {gradient.tag}")

    def name(self, font: Font, glyphs: Sequence[Glyph]) -> str:
        return font.name


def recorded(canvas: Canvas) -> list[str]:
    pen = Recorded()
    ink(canvas, pen)
    return pen.said


def every_verb() -> Canvas:
    canvas = Canvas(SIZE, title="", origin=(-2 * MM, 3 * MM))
    with canvas.group(clip=Rect(0, 5 * MM, 50 * MM, 30 * MM)):
        canvas.rect(Rect(-MM, 6 * MM, 20 * MM, 12 * MM), filled("#3377cc"), radius=3 * MM)
        canvas.rect(Rect(25 * MM, 20 * MM, 40 * MM, 30 * MM), Paint(fill="#eecc66", stroke="#224422", width=MM))
    with canvas.group(at=(30 * MM, 30 * MM), turned_deg=-90, scale=1.25):
        write(canvas, "Größe 3 1/2 in", (0, 0), Style(face=Typeface.SANS_BOLD, size=4 * MM, colour="#b4472e"))
    canvas.circle((40 * MM, 14 * MM), 5 * MM, stroked("#b4472e", MM // 2, opacity=0.5))
    canvas.circle((52 * MM, 14 * MM), 4 * MM, filled("#b4472e", opacity=0.5))
    canvas.line((2 * MM, 36 * MM), (56 * MM, 36 * MM), stroked("#000000", MM, dash=(3 * MM, 2 * MM), is_round=True))
    path = (
        Path()
        .move(2 * MM, 22 * MM)
        .quad(8 * MM, 40 * MM, 14 * MM, 22 * MM)
        .curve(16 * MM, 20 * MM, 18 * MM, 24 * MM, 20 * MM, 30 * MM)
    )
    light = canvas.gradient((22 * MM, 0), (50 * MM, 0), [Stop(0, "#b4472e"), Stop(1, "#b4472e", 0)])
    with canvas.group(at=(2 * MM, -MM)):
        canvas.rect(Rect(22 * MM, 7 * MM, 28 * MM, 5 * MM), filled(light))
    with canvas.motif("square"):
        canvas.rect(Rect(0, 0, 3 * MM, 3 * MM), filled("#404040"))
    canvas.use("square", (44 * MM, 24 * MM))
    canvas.use("square", (50 * MM, 24 * MM), turned_deg=45)
    canvas.path(path.line(20 * MM, 34 * MM).line(3 * MM, 34 * MM).close(), filled("#557755"))
    return canvas


def in_a_page(canvas: Canvas) -> bytes:
    album = Album()
    html = f"<html lang='en'><title>x</title><body>{album.shown(Picture(canvas, 'a picture'))}</body></html>"
    return printed(
        html, "@page { size: 60mm 40mm; margin: 0 } body { margin: 0 } img { display: block }", album.pictures
    )


def test_picture_in_a_page_looks_as_the_picture_itself():
    canvas = every_verb()
    page = pypdfium2.PdfDocument(in_a_page(canvas))[0].render(scale=480 / 170.0787).to_pil().convert("RGB")
    alone = Image.open(BytesIO(png(svg.markup(canvas).encode(), 480))).convert("RGBA")
    ground = Image.new("RGBA", alone.size, "white")
    ground.alpha_composite(alone)
    shown = numpy.asarray(page.resize(ground.size), dtype=int)
    unlike = abs(shown - numpy.asarray(ground.convert("RGB"), dtype=int)).max(axis=2)
    assert (unlike > 100).mean() < 0.01 and unlike.mean() < 4


def test_words_of_a_page_are_read_as_they_are_written():
    words = pypdfium2.PdfDocument(in_a_page(every_verb()))[0].get_textpage().get_text_bounded()
    assert " ".join(words.split()) == "Größe 3 1/2 in"


def test_words_stand_as_wide_as_they_are_set():
    canvas = Canvas(SIZE, title="")
    write(canvas, "AVAV 11 1/2 in", (0, 20 * MM), Style(size=4 * MM))
    [shown] = [words for words in recorded(canvas) if words.endswith("TJ")]
    glyphs = canvas.lettering[0].glyphs
    less = sum(int(part) for part in shown.replace(">", "<").split("<")[2::2] if part and part != "] TJ")
    told = sum(glyph.font.advance(glyph.number) for glyph in glyphs if glyph.font)
    assert told - less == sum(glyph.advance for glyph in glyphs)


def test_words_that_stand_close_to_one_another_stay_apart():
    canvas = Canvas(SIZE, title="")
    write(canvas, "C2", (20 * MM, 20 * MM), Style(size=4 * MM))
    write(canvas, "F2", (22 * MM, 24 * MM), Style(size=4 * MM), turned_deg=-90)
    words = pypdfium2.PdfDocument(in_a_page(canvas))[0].get_textpage().get_text_bounded()
    assert words.split() == ["C2", "F2"]


def test_characters_without_a_font_are_drawn_as_their_box():
    canvas = Canvas(SIZE, title="")
    write(canvas, "\u4e2d", (0, 20 * MM), Style(size=4 * MM))
    said = recorded(canvas)
    assert not any("TJ" in words for words in said) and any(words.endswith(" f Q") for words in said)


def test_each_shape_that_fades_says_so_though_the_one_before_faded_alike():
    assert recorded(every_verb()).count("fade 0.5") == 2
    document = pypdfium2.PdfDocument(in_a_page(every_verb()))
    drawn = document[0].render(scale=2).to_pil().convert("RGB")
    assert drawn.getpixel((306, 62)) == pytest.approx((218, 163, 151), abs=3)


def test_groups_close_as_they_open():
    said = " ".join(recorded(every_verb())).split()
    assert said.count("q") == said.count("Q") and said.count("BT") == said.count("ET")


@pytest.mark.parametrize("group", [{"opacity": 0.5}, {"paint": filled("#102030")}])
def test_groups_that_fade_or_paint_are_left_to_the_library(group):
    canvas = every_verb()
    assert is_plain(canvas)
    with canvas.group(**group):
        canvas.circle((0, 0), MM, filled("#000000"))
    assert not is_plain(canvas)
    assert pypdfium2.PdfDocument(in_a_page(canvas))[0].get_textpage().count_chars() > 5


def test_gradients_are_drawn_where_they_stand():
    said = recorded(every_verb())
    assert said.count("shade rect linearGradient") == 1 and said.index("shade rect linearGradient") > 3
