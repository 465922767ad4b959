import re
from xml.etree.ElementTree import tostring

from builder import sound
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import read_recipe
from spreadwright.drawing.canvas import Canvas, Stop, filled
from spreadwright.drawing.spread import spread_picture
from spreadwright.drawing.svg import markup
from spreadwright.geometry import Rect, Size
from spreadwright.photos import matted_photos
from spreadwright.placing import placed_pieces
from spreadwright.store import Collection
from spreadwright.tasks.colourways import best_colourway

RECIPE = read_recipe(sound(), "window-seat").model
SQUARE = Rect(0, 0, 3200, 3200)


def drawn(prefix="one-"):
    canvas = Canvas(SQUARE.size, title="A < B", description="“&”", prefix=prefix)
    with canvas.group(clip=SQUARE):
        fill = canvas.gradient((0, 0), (3200, 0), [Stop(0, "#ffffff"), Stop(1, "#000000")])
        canvas.rect(SQUARE, filled(fill))
    return canvas.fragment()


def picture(prefix=""):
    canvas = Canvas(Size(9600, 3200), title='Say "<&>"\n', prefix=prefix)
    canvas.rect(SQUARE, filled("#c96f56"))
    canvas.show(drawn())
    canvas.show(drawn("two-"))
    return canvas


def spread(recipe=RECIPE, prefix=""):
    cut = pieces(cut_sheets(recipe))
    colourway = best_colourway(recipe, Collection().paper_set("windfall"))
    return spread_picture(recipe, placed_pieces(recipe, cut), matted_photos(recipe, cut), colourway, prefix=prefix)


def test_what_was_written_before_is_written_alike():
    for canvas in (picture(), spread()):
        assert canvas.ready and markup(canvas) == tostring(canvas.root, encoding="unicode")


def test_everything_that_is_referred_to_is_there_once():
    for text in (markup(picture("x-")), markup(spread(prefix="x-"))):
        ids = re.findall(r' id="([^"]+)"', text)
        assert len(ids) == len(set(ids))
        assert set(re.findall(r"url\(#([^)]+)\)", text)) <= set(ids)
        assert set(re.findall(r' href="#([^"]+)"', text)) <= set(ids)


def test_showing_changes_nothing_of_what_is_shown():
    fragment = drawn()
    before = tostring(fragment.group)
    for _ in range(2):
        canvas = Canvas(SQUARE.size, title="Again")
        canvas.show(fragment)
        canvas.rect(SQUARE, filled("#000000"))
    assert tostring(fragment.group) == before and len(canvas.root) == 4


def test_a_spread_is_the_same_the_second_time():
    assert markup(spread()) == markup(spread())
    assert markup(spread(prefix="a-")) != markup(spread())
