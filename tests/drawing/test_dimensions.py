from spreadwright.drawing.dimensions import Span, fits, gathered
from spreadwright.drawing.theme import MM


def chain(*widths: int) -> list[Span]:
    ends = [sum(widths[:index]) * MM for index in range(len(widths) + 1)]
    return [Span(start, end, str(wide)) for start, end, wide in zip(ends, ends[1:], widths, strict=False)]


def test_equal_neighbours_without_room_are_told_as_one():
    assert [span.figure for span in gathered(chain(2, 2, 2, 2, 40))] == ["4 × 2", "40"]
    assert gathered(chain(2, 2, 2, 2, 40))[0] == Span(0, 8 * MM, "4 × 2")


def test_equal_neighbours_with_room_keep_a_figure_each():
    assert gathered(chain(20, 20, 30)) == chain(20, 20, 30)


def test_figures_keep_clear_of_the_strokes_at_their_ends():
    assert fits(chain(8)) and not fits(chain(2))
