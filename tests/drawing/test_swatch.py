from letters import letters
from spreadwright.drawing.swatch import swatch_picture
from spreadwright.geometry import Size
from spreadwright.model import Face, Paper, Pattern, Side

PAPER = Paper(
    "buoy",
    "Buoy & <rope>",
    Size(97536, 97536),
    Face(Pattern.PLAIN, ("#c4694f",), 0),
    Face(Pattern.PLAIN, ("#33506a",), 0),
)
COLOURS = {"f": "#c4694f", "b": "#33506a", " ": "#000000"}


def test_both_faces_are_seen():
    rows = letters(swatch_picture(PAPER), 25, COLOURS)
    assert rows[8][8] == "f" and rows[22][22] == rows[22][12] == "b" and rows[0][0] == " "


def test_the_other_side_can_be_up():
    assert letters(swatch_picture(PAPER, up=Side.BACK), 25, COLOURS)[8][8] == "b"


def test_a_swatch_says_what_it_shows():
    assert swatch_picture(PAPER).title == "Buoy & <rope>, front: plain, with plain on the other side"
