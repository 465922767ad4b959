from itertools import combinations

import pytest

from spreadwright.drawing.booklet.gluing import _picture
from spreadwright.drawing.booklet.page import (
    WIDTH,
    Distance,
    Laid,
    PlacePicture,
    _Frame,
    _lines,
    _mark_place,
    _neighbours,
    place_picture,
)
from spreadwright.geometry import Rect, Size
from spreadwright.store import Collection
from spreadwright.tasks import place

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


@pytest.mark.parametrize("bench_id", sorted(Collection().benches))
@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_labels_of_the_collection_meet_neither_lines_nor_what_is_glued_nor_each_other(recipe_id, bench_id):
    for step in place(Collection().recipe(recipe_id), Collection().bench(bench_id)).steps:
        picture = _picture(step, "", WIDTH)
        frame = _Frame(picture.page, picture.width)
        mark = _mark_place(picture, frame, frame.rect(Rect.at(0, 0, picture.page)))
        neighbours = list(_neighbours(picture, frame, mark))
        boxes = [mark, *(box for _name, box, _is_clear in neighbours)]
        assert not any(one.overlaps(two) for one, two in combinations(boxes, 2))
        assert not any(frame.rect(rect).overlaps(mark) for rect in picture.carried)
        lines = _lines(frame, picture)
        assert not any(is_clear and any(map(box.overlaps, lines)) for _name, box, is_clear in neighbours)


def neighbour(**changes):
    values = {"page": PAGE, "down": (Laid(Rect(0, 0, 500, 1200), "C"),), "mark": "B"} | changes
    picture = PlacePicture(**values)
    frame = _Frame(picture.page, picture.width)
    mark = _mark_place(picture, frame, frame.rect(Rect.at(0, 0, picture.page)))
    return next(_neighbours(picture, frame, mark)), _lines(frame, picture)


def test_name_of_a_neighbour_makes_way_for_the_lines_of_a_distance():
    piece, down = Rect(800, 600, 300, 300), Distance(False, 500, 600, "1 in")
    (_, plain, _), _ = neighbour(piece=piece, distances=())
    (_, moved, is_clear), lines = neighbour(piece=piece, distances=(down,))
    assert any(map(plain.overlaps, lines))
    assert is_clear and not any(map(moved.overlaps, lines))


def test_name_without_another_place_breaks_the_line():
    low = Laid(Rect(0, 540, 500, 120), "C")
    changes = {"piece": Rect(800, 600, 300, 300), "down": (low,), "distances": (Distance(False, 400, 600, "1 in"),)}
    (_, box, is_clear), lines = neighbour(**changes)
    assert not is_clear and any(map(box.overlaps, lines))
    canvas = place_picture(PlacePicture(PAGE, title="", mark="B", **changes))
    outline = [line.strip() for line in canvas.outline()]
    name = next(index for index, line in enumerate(outline) if "aria-label=C" in line)
    assert outline[name - 1].startswith("rect") and outline[name - 1].endswith("fill=#ffffff")


def test_mark_beside_its_piece_hides_none_of_its_neighbours():
    strip, near = Rect(500, 100, 80, 700), Laid(Rect(640, 100, 400, 700), "C")
    picture = PlacePicture(PAGE, (near,), strip, "H12", ())
    frame = _Frame(PAGE, WIDTH)
    mark = _mark_place(picture, frame, frame.rect(Rect.at(0, 0, PAGE)))
    assert mark.right <= frame.rect(strip).left
    assert not mark.overlaps(frame.rect(near.rect))
