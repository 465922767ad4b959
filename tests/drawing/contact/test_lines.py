from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.contact.lines import height_of, lines_of, write_lines
from spreadwright.drawing.theme import BODY, MM, SMALL
from spreadwright.drawing.type import Style, width
from spreadwright.geometry import Size

words = st.lists(st.sampled_from(["Moss", "and", "Bramble", "1/2 in"]), max_size=30).map(" ".join)


@given(words, st.integers(30, 90), st.sampled_from([BODY, SMALL]))
def test_lines_are_as_high_as_what_is_written_takes(said, room, size):
    lines = lines_of(said, Style(size=size), room * MM)
    canvas = Canvas(Size(200 * MM, 200 * MM), title="")
    assert write_lines(canvas, lines, (0, 7 * MM)) - 7 * MM == height_of(lines)
    assert all(width(line.words, line.style) <= room * MM for line in lines)
    assert " ".join(line.words for line in lines) == said
