from itertools import islice, product

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.colour.picks import distinct_picks, repeating_picks
from spreadwright.geometry import Size
from spreadwright.model import BLANK, Choice, Paper, Side

PAPERS = [Paper(name, name, Size(1, 1), BLANK) for name in "abcdefghijklm"]
choices = st.builds(Choice, st.sampled_from(PAPERS[:4]), st.sampled_from(Side))
options = st.lists(st.lists(choices, max_size=4, unique=True).map(tuple), min_size=1, max_size=4)


def is_distinct(picked):
    return len({choice.paper.id for choice in picked}) == len(picked)


@given(options)
def test_both_halves_are_the_whole_product_in_order(lists):
    whole = list(product(*lists))
    assert list(distinct_picks(lists)) == [picked for picked in whole if is_distinct(picked)]
    assert list(repeating_picks(lists)) == [picked for picked in whole if not is_distinct(picked)]


def test_more_roles_than_papers_end_at_once():
    few = [tuple(Choice(paper) for paper in PAPERS[:11])] * 12
    assert list(distinct_picks(few)) == []
    assert len(list(islice(repeating_picks(few), 1000))) == 1000


def test_corner_without_distinct_picks_is_not_walked():
    wide = [tuple(Choice(paper) for paper in PAPERS)] * 10
    narrow = [tuple(Choice(paper) for paper in PAPERS[:2])] * 3
    assert list(distinct_picks(wide + narrow)) == []


def test_corner_without_repeating_picks_is_not_walked():
    apart = [(Choice(paper, Side.FRONT), Choice(paper, Side.BACK)) for paper in PAPERS]
    twice = [*apart, (Choice(PAPERS[-1]),)]
    assert list(repeating_picks(apart)) == []
    assert next(repeating_picks(twice))[-2:] == (Choice(PAPERS[-1]), Choice(PAPERS[-1]))
