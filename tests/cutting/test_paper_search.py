from spreadwright.cutting.candidate import Candidate
from spreadwright.cutting.paper_search import Effort, PaperSearch, Stop
from spreadwright.cutting.problem import Problem, Stock, Wanted
from spreadwright.cutting.reporter import Silent
from spreadwright.cutting.search.trees import above, beside, piece, rest
from spreadwright.geometry import Size


def test_a_sheet_that_is_left_whole_is_nothing_left_over():
    wanted = (Wanted("wide", Size(2, 4), may_turn=False), Wanted("slim", Size(1, 4), may_turn=False))
    stock = (Stock(Size(3, 4), 1, cost=0), Stock(Size(2, 5), 1, cost=0))
    search = PaperSearch(Problem(wanted, stock), "paper", 1, Effort(), Stop(lambda: False), Silent())
    wide, slim = (piece(r.kind.wide, r.kind.high, r.kind) for r in search.requests)
    large, small = sorted(search.all_sheets, key=lambda sheet: -sheet.size[0])
    search.best = Candidate(((large, beside(wide, rest(1, 4))), (small, above(beside(slim, rest(1, 4)), rest(2, 1)))))
    search._gather(search.best)
    assert [sheet for sheet, _ in search.best.cut] == [large]
    assert not search.best.rest_areas
