from cutting.cutter import cut_block
from spreadwright.cutting.search.gather import gathered
from spreadwright.cutting.search.kinds import kind, stock

PIECES = [(48, 40), (48, 40), (24, 40), (72, 20), (72, 20)]


def rests(tree):
    return [leaf.size for leaf in tree.leaves() if leaf.is_rest]


def test_rest_becomes_one_rectangle():
    spare = 96 * 96 - sum(w * h for w, h in PIECES)
    [tree] = gathered(stock(kind(*p) for p in PIECES), [(96, 96)], more_than=0, seed=1, is_over=lambda: False)
    cut = cut_block(tree, 96, 96)
    assert sorted(map(sorted, cut)) == sorted(map(sorted, PIECES))
    assert sum(w * h for w, h in rests(tree)) == spare
    assert len(rests(tree)) <= 2


def test_nothing_is_given_where_nothing_is_better():
    whole = 96 * 96
    assert gathered(stock(kind(*p) for p in PIECES), [(96, 96)], more_than=whole, seed=1, is_over=lambda: False) == ()
