from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from spreadwright.cutting.search.kinds import kind
from spreadwright.cutting.search.unlimited import most_value

ITEMS = st.lists(st.tuples(st.integers(1, 6), st.integers(1, 6), st.integers(1, 40)), min_size=1, max_size=4)


def by_every_cut(items, width, height, may_turn):
    """The most value when a cut may be made anywhere."""

    @cache
    def worth(w, h):
        fits = [v for x, y, v in items if (x <= w and y <= h) or (may_turn and y <= w and x <= h)]
        columns = [worth(x, h) + worth(w - x, h) for x in range(1, w // 2 + 1)]
        rows = [worth(w, y) + worth(w, h - y) for y in range(1, h // 2 + 1)]
        return max([0, *fits, *columns, *rows])

    return worth(width, height)


@settings(deadline=None)
@given(ITEMS, st.integers(1, 12), st.integers(1, 12), st.booleans())
def test_reachable_cuts_lose_nothing(items, width, height, may_turn):
    kinds = [(kind(w, h, may_turn), value) for w, h, value in items]
    assert most_value(kinds, width, height) == by_every_cut(tuple(items), width, height, may_turn)
