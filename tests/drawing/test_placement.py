import re

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.drawing.placement import PlacementPlan, placement_picture
from spreadwright.model import INCH_BENCH
from spreadwright.tasks import place


def picture(data: bytes):
    done = place(read_recipe(data), INCH_BENCH)
    return done, placement_picture(PlacementPlan(done.recipe, done.steps, done.photos, done.bench.unit))


def words(data: bytes) -> list[str]:
    lines = picture(data)[1].outline()
    return [found[1] for line in lines if (found := re.search(r"aria-label=(.*) fill=", line))]


def test_every_piece_is_numbered_in_the_picture_and_in_the_table():
    done, canvas = picture(sound())
    shown = words(sound())
    for step in done.steps:
        assert shown.count(step.placed.piece.mark) == 2
        assert shown.count(str(step.number)) >= 2
    assert canvas.size.width > 0


def test_distances_name_their_edge():
    shown = words(sound())
    assert "1/2 in from left" in shown and "1/4 in from bottom" in shown and "flush left" in shown


def test_photos_are_dashed():
    dashed = [line for line in picture(sound())[1].outline() if "stroke-dasharray" in line]
    assert len(dashed) == 3


def test_single_page_stands_alone():
    def spoil(document):
        document["spread"]["pages"] = ["page"]
        for each in document["placements"]:
            each["page"] = "page"

    shown = words(spoilt(spoil))
    assert "left page" not in shown and shown.count("page") == 12
