from spreadwright.drawing.booklet.page import WIDTH, Distance, Laid, PlacePicture, place_picture
from spreadwright.geometry import Rect, Size

PAGE = Size(1200, 1200)


def shown(**changes) -> list[str]:
    values = {"page": PAGE, "down": (), "piece": Rect(100, 200, 300, 400), "mark": "B", "distances": ()} | changes
    return list(place_picture(PlacePicture(**values)).outline())


def test_every_distance_has_its_line_and_figure():
    distances = (Distance(True, 0, 100, "1 in"), Distance(False, 0, 200, "2 in"))
    lines = "\n".join(shown(distances=distances))
    assert "aria-label=1 in" in lines and "aria-label=2 in" in lines


def test_figures_stand_outside_the_page():
    canvas = place_picture(PlacePicture(PAGE, (), Rect(100, 200, 300, 400), "B", (Distance(True, 0, 100, "1 in"),)))
    figure = next(each for each in canvas.lettering if each.words == "1 in")
    assert figure.at[1] < 9 * 320 and 0 <= figure.at[0] < WIDTH


def test_what_lies_hidden_is_not_drawn():
    hidden, over = Laid(Rect(0, 0, 100, 100)), Laid(Rect(0, 0, 200, 200))
    assert len(shown(down=(hidden, over))) == len(shown(down=(over,)))
    assert len(shown(down=(over, hidden))) == len(shown(down=(over,))) + 1


def test_neighbours_are_named_where_they_are_seen():
    seen, covered = Laid(Rect(600, 600, 500, 500), "C"), Laid(Rect(150, 250, 200, 300), "D")
    lines = "\n".join(shown(down=(seen, covered)))
    assert "aria-label=C" in lines and "aria-label=D" not in lines
