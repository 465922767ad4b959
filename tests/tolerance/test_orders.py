from hypothesis import given
from hypothesis import strategies as st

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.model import INCH_BENCH, Axis, Branch, Leaf, Split, Use
from spreadwright.tolerance import partings, traced
from spreadwright.tolerance.deviation import EXACT, total
from spreadwright.tolerance.orders import orders, reorderings, runs
from strategies import INCH, cut_trees, recipe_of


def cut(tree):
    sheets = cut_sheets(recipe_of(tree))
    return sheets, partings(cut_steps(sheets, INCH_BENCH), INCH_BENCH.trimmer)


def columns(*widths):
    return Split(Axis.COLUMNS, tuple(Branch(w * INCH, Leaf(Use.PIECE, f"p{i}")) for i, w in enumerate(widths)))


def test_every_order_of_few_parts_is_tried_once():
    assert [len(list(orders(count))) for count in range(1, 5)] == [1, 2, 8, 40]
    assert len(set(orders(4))) == 40


@given(cut_trees())
def test_runs_hold_every_cut_once_and_cut_one_part_along_one_axis(tree):
    _, cuts = cut(tree)
    found = runs(cuts)
    assert sorted(c.source for run in found for c in run.cuts) == [c.source for c in cuts]
    for run in found:
        assert {c.axis for c in run.cuts} == {run.axis}
        assert all(run.whole.contains(c.on_board) for c in run.cuts)
        assert len(run.edges) == len(run.cuts) + 2


@given(cut_trees(depth=2))
def test_errors_cancel_across_the_sheet_in_any_order(tree):
    sheets, cuts = cut(tree)
    found = traced(sheets, cuts)
    for other in reorderings(sheets, cuts, found, INCH_BENCH.trimmer):
        assert other.found.keys() == found.keys()
        top = [part.id for part in sheets[0].parts if part.rect.top == 0]
        assert total(other.found[name].width.deviation for name in top) == EXACT


def test_each_of_two_strips_can_be_measured_by_itself():
    sheets, cuts = cut(columns(5, 5, 2))
    found = traced(sheets, cuts)

    def apart(sides):
        return (sides["p0"].width.deviation - sides["p1"].width.deviation).worst

    assert apart(found) == 3 * INCH // 64
    assert min(apart(other.found) for other in reorderings(sheets, cuts, found, INCH_BENCH.trimmer)) == 2 * INCH // 64


@given(st.integers(2, 5))
def test_no_order_keeps_a_strip_that_cannot_be_held(count):
    sheets, cuts = cut(columns(*[1] * count, 12 - count))
    narrow = INCH_BENCH.trimmer.__class__(12 * INCH, INCH // 16, INCH_BENCH.trimmer.measures, 2 * INCH)
    for other in reorderings(sheets, cuts, traced(sheets, cuts), narrow):
        assert all(c.measured.width >= 2 * INCH for c in other.cuts)
