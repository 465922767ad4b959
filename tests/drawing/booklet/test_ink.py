from collections.abc import Sequence
from io import BytesIO

import numpy
import pypdfium2
import pytest
from PIL import Image

from spreadwright.drawing import svg
from spreadwright.drawing.booklet.album import Album, Picture
from spreadwright.drawing.booklet.ink import ink, is_plain
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

    def fade(self, opacity: float) -> None:
        self.said.append(f"fade {opacity}")

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
    canvas.line((2 * MM, 36 * MM), (56 * MM, 36 * MM), stroked("#000000", MM, dash=(3 * MM, 2 * MM), is_round=True))
    path = (
        Path()
        .move(2 * MM, 22 * MM)
        .quad(8 * MM, 40 * MM, 14 * MM, 22 * MM)
        .curve(16 * MM, 20 * MM, 18 * MM, 24 * MM, 20 * MM, 30 * MM)
    )
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
    assert (unlike > 100).mean() < 0.01 and unlike.mean() < 3


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
    assert not any("TJ" in words for words in said) and any(words.endswith(" f") for words in said)


def test_groups_close_as_they_open():
    said = " ".join(recorded(every_verb())).split()
    assert said.count("q") == said.count("Q") and said.count("BT") == said.count("ET")


@pytest.mark.parametrize("verb", ["gradient", "motif", "opacity"])
def test_what_cannot_be_drawn_plainly_is_left_to_the_library(verb):
    canvas = every_verb()
    assert is_plain(canvas)
    if verb == "gradient":
        canvas.rect(
            Rect(0, 0, MM, MM), filled(canvas.gradient((0, 0), (MM, MM), [Stop(0, "#fff000"), Stop(1, "#000fff")]))
        )
    elif verb == "motif":
        with canvas.motif("dot"):
            canvas.circle((0, 0), MM, filled("#000000"))
        canvas.use("dot", (MM, MM))
    else:
        with canvas.group(opacity=0.5):
            canvas.circle((0, 0), MM, filled("#000000"))
    assert not is_plain(canvas)
    assert pypdfium2.PdfDocument(in_a_page(canvas))[0].get_textpage().count_chars() > 5
