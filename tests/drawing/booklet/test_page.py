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


def mark_of(**changes):
    values = {"page": PAGE, "down": (), "piece": Rect(100, 100, 1000, 1000), "mark": "B", "distances": ()} | changes
    canvas = place_picture(PlacePicture(**values))
    return next(each for each in canvas.lettering if each.words == "B"), canvas


def test_mark_stands_on_what_is_seen_of_a_piece_that_carries_others():
    plain, _ = mark_of()
    carrying, _ = mark_of(carried=(Rect(150, 500, 900, 500),))
    assert carrying.at[1] < plain.at[1]


def test_mark_of_a_piece_that_is_hidden_by_what_it_carries_stands_below_the_page_with_a_line():
    piece = Rect(20, 20, 1160, 1160)
    shown, canvas = mark_of(piece=piece, carried=(Rect(60, 60, 1080, 1080),))
    _, plain = mark_of(piece=piece)
    assert canvas.size.height > plain.size.height and shown.at[1] > plain.size.height
    assert any(line.startswith("circle") for line in canvas.outline())
