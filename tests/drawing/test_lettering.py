from xml.etree import ElementTree

import pytest

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.lettering import as_text, with_letters_once
from spreadwright.drawing.raster import png
from spreadwright.drawing.svg import markup, svg_bytes
from spreadwright.drawing.theme import HAIRLINE, MM, TITLE
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size
from spreadwright.images import read

NS = {"svg": "http://www.w3.org/2000/svg"}
WORDS = "level 7 1/2 in"


LARGE = Style(size=TITLE)


def drawn(words=WORDS, style=LARGE, **how):
    canvas = Canvas(Size(80 * MM, 20 * MM), title="Words", prefix="w-")
    write(canvas, words, (40 * MM, 12 * MM), style, align=Align.MIDDLE, **how)
    return canvas


def texts(canvas):
    return ElementTree.fromstring(markup(canvas)).findall(".//svg:text", NS)


def test_words_become_text_with_the_same_words():
    (text,) = texts(as_text(drawn()))
    assert "".join(text.itertext()).replace("\u2009", " ") == WORDS
    assert [part.text for part in text.findall("svg:tspan[@class='fraction']", NS)] == ["1/2"]


def test_text_starts_and_ends_where_the_outlines_did():
    style = Style(size=TITLE)
    (text,) = texts(as_text(drawn(style=style)))
    run = width(WORDS, style) / MM
    assert float(text.attrib["x"]) == pytest.approx(40 - run / 2, abs=0.01)
    assert float(text.attrib["textLength"]) == pytest.approx(run, abs=0.01)


@pytest.mark.parametrize(("face", "weight"), [(Typeface.SANS, None), (Typeface.SANS_BOLD, "700")])
def test_text_keeps_weight_and_colour(face, weight):
    (text,) = texts(as_text(drawn(style=Style(face=face, colour="#b4472e"))))
    assert text.get("font-weight") == weight and text.get("fill") == "#b4472e"


def test_no_words_are_lost_and_none_is_markup():
    canvas = as_text(drawn("<b> & “Ö”"))
    assert "".join(texts(canvas)[0].itertext()) == "<b> & “Ö”"


def test_letters_are_kept_once_and_shown_as_often_as_they_come():
    root = ElementTree.fromstring(markup(with_letters_once(drawn("noon"))))
    assert len(root.findall("svg:defs/svg:g", NS)) == 2
    assert len(root.findall(".//svg:use", NS)) == 4


@pytest.mark.parametrize("turned_deg", [0, -90])
def test_letters_kept_once_look_as_before(turned_deg):
    before, after = drawn(turned_deg=turned_deg), with_letters_once(drawn(turned_deg=turned_deg))
    one, other = (read(png(svg_bytes(canvas), 400)).pixels for canvas in (before, after))
    assert abs(one.astype(int) - other.astype(int)).mean() < 0.5


@pytest.mark.parametrize("is_tabular", [True, False])
def test_figures_that_are_equally_wide_stay_so(is_tabular):
    (text,) = texts(as_text(drawn("11 1/4", Style(is_tabular=is_tabular))))
    assert (text.get("class") == "tabular") is is_tabular


def test_what_is_said_once_for_all_looks_as_before():
    """Browsers set the words; everything else can be compared here."""

    def shapes():
        canvas = Canvas(Size(40 * MM, 20 * MM), title="Shapes")
        canvas.rect(Rect(MM, MM, 10 * MM, 10 * MM), stroked("#b4472e", HAIRLINE))
        with canvas.group(paint=filled("#40505c")):
            canvas.rect(Rect(15 * MM, MM, 10 * MM, 10 * MM), stroked("#000000", 2 * MM))
            canvas.circle((30 * MM, 10 * MM), 4 * MM, filled("#dfe3e3"))
        return canvas

    before, after = svg_bytes(shapes()), svg_bytes(as_text(shapes()))
    one, other = (read(png(svg, 400)).pixels for svg in (before, after))
    assert len(after) < len(before) + 60 and (one == other).all()
