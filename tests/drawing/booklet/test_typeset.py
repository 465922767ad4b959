from spreadwright.drawing.booklet.typeset import picture, typeset
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.type import Style, write
from spreadwright.geometry import Size


def test_words_are_escaped_before_they_are_set():
    assert "<b>" not in typeset("<b>1/2 in</b>") and '<span class="fraction">1/2</span>' in typeset("<b>1/2 in</b>")


def test_what_is_no_length_stays_as_it_is():
    for words in ("sheet 3", "11/25/2026", "step 12.", "a1/2b"):
        assert typeset(words) == words


def test_decimal_commas_stay_with_their_unit():
    assert typeset("17,8 cm") == '<span class="length">17,8 cm</span>'


def test_title_of_a_picture_is_escaped():
    shown = picture(Canvas(Size(320, 320), title=""), '"><script>')
    assert "<script>" not in shown and "&#34;&gt;&lt;script&gt;" in shown


def test_words_of_a_picture_are_repeated_where_they_stand():
    canvas = Canvas(Size(3200, 3200), title="")
    write(canvas, "A1", (320, 640), Style(size=1280))
    [lettering] = canvas.lettering
    assert (lettering.words, lettering.at, lettering.size) == ("A1", (320, 640), 1280)
    assert lettering.outlines.get("aria-label") == "A1"
