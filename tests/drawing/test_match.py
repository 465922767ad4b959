"""The picture of photographs, their colours and papers: laid out so that nothing runs out of it."""

import re

import numpy as np
import pytest

from spreadwright.drawing.match import Print, Proposal, Slip, Swatch, match_picture
from spreadwright.drawing.svg import markup
from spreadwright.drawing.theme import MM
from spreadwright.images import encode_jpeg
from spreadwright.model import Core, Face, Pattern

JPEG = encode_jpeg(np.full((20, 30, 3), 120, dtype=np.uint8))
SLIPS = [
    Slip("#2d6f95", 0.7, "blue", "70 %"),
    Slip("#e2ca9d", 0.29, "beige", "29 %"),
    Slip("#cd2c28", 0.01, "red", "1 %"),
]
PAPERS = tuple(
    Swatch(Face(Pattern.PLAIN, (colour,), 0), Core.WHITE, "A paper with a name of some length", "#2d6f95")
    for colour in ("#496373", "#e4ddd1")
)
FOUND = [Proposal(f"Set {number}", "70 of 100", "Close to the photos: " + "words " * 30, PAPERS) for number in range(3)]


def drawn(prints, slips=SLIPS, found=FOUND):
    return match_picture("Photos and papers", "Paper sets that suit them", prints, slips, found)


def boxes(canvas):
    for line in canvas.outline():
        read = re.search(r"(?:rect|image) x=(\S+) y=(\S+) width=(\S+) height=(\S+)", line)
        if read and line.startswith(("rect", "image")):
            yield tuple(float(each) for each in read.groups())


@pytest.mark.parametrize("count", [1, 2, 5, 12, 24])
@pytest.mark.parametrize(("width", "height"), [(3000, 2000), (2000, 3000), (9000, 300), (300, 9000)])
def test_nothing_runs_out_of_the_picture(count, width, height):
    canvas = drawn([Print(JPEG, width, height)] * count)
    for left, top, wide, high in boxes(canvas):
        assert left >= -1 and left + wide <= canvas.size.width / MM + 1
        assert top >= -1 and top + high <= canvas.size.height / MM + 1


def test_every_photograph_colour_and_set_is_there():
    svg = markup(drawn([Print(JPEG, 3000, 2000)] * 3))
    assert svg.count("data:image/jpeg") == 3
    assert all(slip.colour in svg and f'aria-label="{slip.label}"' in svg for slip in SLIPS)
    assert all(f'aria-label="{each.title}"' in svg for each in FOUND)


def test_more_of_a_colour_makes_a_longer_slip():
    canvas = drawn([Print(JPEG, 3000, 2000)] * 4)
    rects = [line for line in canvas.outline() if line.startswith("rect") and "opacity" not in line]
    drawn_slips = [next(line for line in rects if f"fill={slip.colour}" in line) for slip in SLIPS]
    lengths = [float(line.split("height=")[1].split()[0]) for line in drawn_slips]
    assert lengths[0] > lengths[1] > lengths[2]


def test_a_single_colour_and_no_set_are_drawn():
    assert "svg" in markup(drawn([Print(JPEG, 30, 20)], SLIPS[:1], []))
