import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench.dissections import dissection, without_some
from cutting.brute import fewest
from cutting.cutter import cut
from spreadwright.cutting.plan import Standing
from spreadwright.cutting.planner import Effort, plan, plans
from spreadwright.cutting.problem import Limits, Problem, Stock, Wanted
from spreadwright.errors import NoPlan, PlanTooLong
from spreadwright.geometry import Size

EIGHTH = 1016
LITTLE = Effort(rounds=1, changes=150, sets=10)
PINWHEEL = [(70, 30), (26, 60), (60, 36), (36, 66), (34, 30)]


def size(w, h):
    return Size(w * EIGHTH, h * EIGHTH)


def problem(pieces, stock=((96, 96),), counts=(None,), **more):
    wanted = tuple(Wanted(f"piece {i}", size(*p), **more) for i, p in enumerate(pieces))
    return Problem(wanted, tuple(Stock(size(*s), n) for s, n in zip(stock, counts, strict=True)))


def replayed(made):
    """What falls from all sheets: names with sizes in eighths, and spares."""
    parts = [
        (name, w // EIGHTH, h // EIGHTH)
        for s in made.sheets
        for name, w, h in cut(s.content, s.size.width, s.size.height)
    ]
    return {p[0]: p[1:] for p in parts if p[0]}, [p[1:] for p in parts if not p[0]]


def assert_cuts(made, pieces):
    names, spares = replayed(made)
    assert {n: tuple(sorted(s)) for n, s in names.items()} == {
        f"piece {i}": tuple(sorted(p)) for i, p in enumerate(pieces)
    }
    assert sorted(spares) == sorted((s.width // EIGHTH, s.height // EIGHTH) for s in made.spares)


@pytest.mark.parametrize("sheets", [1, 2])
def test_dissection_is_cut_without_spares(sheets):
    pieces = dissection(sheets, 14, 3)
    made = plan(problem(pieces))
    assert_cuts(made, pieces)
    assert (len(made.sheets), made.spares, made.is_optimal) == (sheets, (), True)


@pytest.mark.parametrize("seed", range(3))
def test_what_is_left_over_stands_in_the_trees(seed):
    pieces = without_some(dissection(2, 14, seed), 0.1, seed)
    made = plan(problem(pieces), effort=LITTLE)
    assert_cuts(made, pieces)


@settings(deadline=None, max_examples=40)
@given(st.lists(st.tuples(st.integers(1, 6), st.integers(1, 6)), min_size=1, max_size=5), st.booleans())
def test_bound_and_cost_enclose_the_truth(pieces, may_turn):
    made = plan(problem(pieces, stock=((6, 6),), may_turn=may_turn), effort=LITTLE)
    truth = fewest(pieces, 6, 6, may_turn=may_turn)
    [(_, certificate)] = made.certificates
    assert certificate.lower_bound <= truth <= certificate.cost
    assert certificate.standing is not Standing.OPTIMAL or certificate.cost == truth


def test_pinwheel_is_impossible_on_one_sheet():
    with pytest.raises(NoPlan) as refused:
        plan(problem(PINWHEEL, counts=(1,)), effort=LITTLE)
    assert [cause.code for cause in refused.value.causes] == ["no-through-cuts"]


def test_pinwheel_on_two_sheets_is_proved_optimal():
    made = plan(problem(PINWHEEL), effort=LITTLE)
    assert (len(made.sheets), made.is_optimal) == (2, True)


def test_giving_up_is_not_impossible():
    with pytest.raises(PlanTooLong):
        plan(problem(dissection(1, 40, 2), counts=(1,)), effort=LITTLE, is_over=lambda: True)


def test_cause_is_told_before_any_search():
    with pytest.raises(NoPlan, match="fits on no sheet"):
        plan(problem([(97, 4)]))


def test_same_seed_gives_same_plan():
    pieces = without_some(dissection(2, 16, 1), 0.2, 1)
    assert plan(problem(pieces), seed=4, effort=LITTLE) == plan(problem(pieces), seed=4, effort=LITTLE)


def test_offcut_is_used_where_it_is_cheaper():
    asked = Problem((Wanted("mat", size(40, 40)),), (Stock(size(96, 96), 1, cost=10), Stock(size(48, 48), 1, cost=1)))
    made = plan(asked, effort=LITTLE)
    assert ([s.stock for s in made.sheets], made.is_optimal) == ([1], True)


def test_each_paper_has_its_own_sheets():
    pieces = (Wanted("panel", size(96, 96), paper="plain"), Wanted("strip", size(96, 8), paper="print"))
    stock = (Stock(size(96, 96), 1, "print"), Stock(size(96, 96), 1, "plain"))
    made = plan(Problem(pieces, stock), effort=LITTLE)
    assert [(s.paper, s.stock) for s in made.sheets] == [("plain", 1), ("print", 0)]
    assert [paper for paper, _ in made.certificates] == ["plain", "print"]


def test_pieces_of_one_group_come_from_one_sheet():
    pieces = tuple(Wanted(f"{t}{n}", size(96, 40), together=t) for n in (1, 2) for t in ("a", "b"))
    made = plan(Problem(pieces, (Stock(size(96, 96)),)), effort=LITTLE)
    homes = [sorted(name for name, _, _ in cut(s.content, s.size.width, s.size.height) if name) for s in made.sheets]
    assert sorted(homes) == [["a1", "a2"], ["b1", "b2"]]


def test_most_valuable_optional_piece_is_cut():
    pieces = (
        Wanted("must", size(96, 60)),
        Wanted("nice", size(96, 30), value=5),
        Wanted("nicer", size(96, 31), value=6),
    )
    made = plan(Problem(pieces, (Stock(size(96, 96)),)), effort=LITTLE)
    assert made.left_out == ("nice",)


def test_no_cut_is_longer_than_the_trimmer():
    limits = Limits(longest_cut=12 * EIGHTH)
    asked = Problem((Wanted("strip", size(10, 6)),), (Stock(size(30, 12), 1),), limits)
    [sheet] = plan(asked, effort=LITTLE).sheets
    assert sheet.content.axis == "columns"


def test_interrupted_search_keeps_the_best():
    class Interrupting:
        def bounded(self, paper, lower_bound): ...
        def searched(self, paper, sheets, rounds): ...
        def improved(self, paper, cost, largest_spare):
            raise KeyboardInterrupt

    made = plan(problem([(50, 50), (40, 90), (10, 10)]), reporter=Interrupting())
    assert_cuts(made, [(50, 50), (40, 90), (10, 10)])


def test_several_plans_differ_and_cost_the_same():
    made = plans(problem(dissection(1, 20, 5)), 2, effort=LITTLE)
    assert len(made) == 2 and made[0].sheets != made[1].sheets
    assert {len(m.sheets) for m in made} == {1}


@pytest.mark.parametrize("seed", range(4))
def test_groups_on_sheets_that_are_used_up_stay_together(seed):
    shares = [dissection(1, 9, seed), dissection(1, 9, seed + 50)]
    wanted = tuple(
        Wanted(f"{word}{n}", size(*piece), together=word if n < 3 else "")
        for word, share in zip("ab", shares, strict=True)
        for n, piece in enumerate(share)
    )
    made = plan(Problem(wanted, (Stock(size(96, 96)),)))
    homes = [{name for name, _, _ in cut(s.content, s.size.width, s.size.height)} for s in made.sheets]
    assert len(homes) == 2 and made.spares == ()
    for word in "ab":
        assert any({f"{word}{n}" for n in range(3)} <= home for home in homes)


def test_a_trimmer_shorter_than_a_sheet_both_ways_is_named():
    asked = Problem((Wanted("mat", size(40, 40)),), (Stock(size(96, 96)),), Limits(longest_cut=80 * EIGHTH))
    with pytest.raises(NoPlan) as refused:
        plan(asked)
    assert [cause.code for cause in refused.value.causes] == ["trimmer-too-short"]
    whole = Problem((Wanted("base", size(96, 96)),), (Stock(size(96, 96)),), Limits(longest_cut=80 * EIGHTH))
    assert len(plan(whole).sheets) == 1


def test_more_sets_than_are_looked_at_prove_nothing(monkeypatch):
    monkeypatch.setattr("spreadwright.cutting.sheet_sets.MOST_LOOKED_AT", 3)
    stock = tuple(Stock(size(n, 96), 1) for n in (10, 20, 30, 40))
    with pytest.raises(PlanTooLong):
        plan(Problem((Wanted("mat", size(9, 90)), Wanted("tag", size(39, 90))), stock), is_over=lambda: True)


def test_several_plans_stop_when_told():
    asked = problem(dissection(1, 20, 5))
    assert len(plans(asked, 5, is_over=lambda: False, effort=LITTLE)) > len(plans(asked, 5, is_over=Late(40)))


class Late:
    """Says yes after so many questions."""

    def __init__(self, questions):
        self.left = questions

    def __call__(self):
        self.left -= 1
        return self.left < 0
