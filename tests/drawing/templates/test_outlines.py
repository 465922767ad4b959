from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.templates.outlines import edges
from strategies import rects


def length(segments):
    return sum(abs(x2 - x1) + abs(y2 - y1) for (x1, y1), (x2, y2) in segments)


@given(rects(), st.lists(rects(), max_size=4))
def test_seen_and_hidden_parts_make_the_whole_outline(rect, covers):
    seen, hidden = edges(rect, covers)
    assert length(seen) + length(hidden) == 2 * (rect.width + rect.height)


@given(rects(), st.lists(rects(), max_size=4))
def test_hidden_is_what_lies_strictly_inside_a_cover(rect, covers):
    for (x1, y1), (x2, y2) in edges(rect, covers)[1]:
        for place in range(max(x2 - x1, y2 - y1)):
            x, y = (x1 + place + 0.5, y1) if y1 == y2 else (x1, y1 + place + 0.5)
            assert any(c.left < x < c.right and c.top < y < c.bottom for c in covers)


@given(rects())
def test_an_uncovered_outline_has_four_edges(rect):
    assert len(edges(rect, [])[0]) == 4 and edges(rect, [])[1] == []
