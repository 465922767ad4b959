from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.model import INCH_BENCH, Axis, Branch, Leaf, Measures, Split, Use, mirrored
from spreadwright.tolerance import FACTORY, partings, traced
from spreadwright.tolerance.deviation import EXACT, total
from strategies import INCH, cut_trees, recipe_of

FALLING_BENCH = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, measures=Measures.FALLING))
A = INCH // 64
benches = st.sampled_from([INCH_BENCH, FALLING_BENCH])


def sides_of(tree, bench):
    sheets = cut_sheets(recipe_of(tree))
    return traced(sheets, partings(cut_steps(sheets, bench), bench.trimmer))


def columns(*widths):
    names = "abcdefgh"
    parts = tuple(Branch(w * INCH, Leaf(Use.PIECE, n)) for w, n in zip(widths, names, strict=False))
    return Split(Axis.COLUMNS, parts)


@given(cut_trees(), benches)
def test_without_error_every_part_is_exact(tree, bench):
    exact = replace(bench, trimmer=replace(bench.trimmer, accuracy=0))
    for sides in sides_of(tree, exact).values():
        assert sides.width.deviation.worst == sides.height.deviation.worst == 0


@given(cut_trees(), benches)
def test_errors_of_the_parts_of_a_cut_add_up_to_that_of_the_whole(tree, bench):
    """So along every line across a sheet the errors cancel: what one part has too much, the others lack."""
    sheets = cut_sheets(recipe_of(tree))
    found = traced(sheets, partings(cut_steps(sheets, bench), bench.trimmer))
    for line in {part.rect.top for part in sheets[0].parts}:
        on_line = [part.id for part in sheets[0].parts if part.rect.top <= line < part.rect.bottom]
        assert total(found[name].width.deviation for name in on_line) == EXACT


@given(cut_trees(), benches)
def test_columns_and_rows_exchanged_exchange_widths_and_heights(tree, bench):
    def errors(sides):
        return sorted((side.deviation.worst, len(side.deviation.terms)) for side in sides)

    found, other = sides_of(tree, bench), sides_of(mirrored(tree), bench)
    assert found.keys() == other.keys()
    assert errors(s.width for s in found.values()) == errors(s.height for s in other.values())
    assert errors(s.height for s in found.values()) == errors(s.width for s in other.values())


@given(cut_trees(), benches)
def test_edges_of_the_sheet_are_the_factory_s(tree, bench):
    sheets = cut_sheets(recipe_of(tree))
    found = traced(sheets, partings(cut_steps(sheets, bench), bench.trimmer))
    for part in sheets[0].parts:
        left, right = found[part.id].width.edges
        assert (left == FACTORY, right == FACTORY) == (part.rect.left == 0, part.rect.right == 12 * INCH)


def test_part_kept_is_measured_and_what_falls_takes_up_the_error():
    found = sides_of(columns(7, 5), INCH_BENCH)
    assert [times for _, times in found["a"].width.deviation.terms] == [1]
    assert [times for _, times in found["b"].width.deviation.terms] == [-1]
    assert found["a"].width.edges == (FACTORY, 1) and found["b"].width.edges == (1, FACTORY)


def test_strips_that_fall_have_one_error_and_what_stays_collects_them():
    found = sides_of(columns(3, 3, 3, 3), FALLING_BENCH)
    assert sorted(sides.width.deviation.worst for sides in found.values()) == [A, A, A, 3 * A]


def test_positions_kept_from_one_edge_never_add_up():
    thick = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, accuracy=2 * A))
    found = sides_of(columns(2, 3, 3, 4), thick)
    assert max(sides.width.deviation.worst for sides in found.values()) <= 4 * A


def told(found):
    return {name: (side.worst, side.typical) for name, side in ((n, s.width.deviation) for n, s in found.items())}


def test_example_of_the_page_about_exactness():
    one, two = (A, A), (2 * A, 180)  # 180 ticks are 0.023 in, rounded up
    assert told(sides_of(columns(5, 5, 2), INCH_BENCH)) == {"a": one, "b": two, "c": one}
    assert told(sides_of(columns(5, 5, 2), FALLING_BENCH)) == {"a": two, "b": one, "c": one}


def test_sheets_cut_together_share_their_errors():
    trimmer = replace(INCH_BENCH.trimmer, stack=2)
    sheets = cut_sheets(recipe_of(columns(7, 5), times=2))
    found = traced(sheets, partings(cut_steps(sheets, replace(INCH_BENCH, trimmer=trimmer)), trimmer))
    assert (found["a-1"].width.deviation - found["a-2"].width.deviation).worst == 0
    apart = traced(sheets, partings(cut_steps(sheets, INCH_BENCH), INCH_BENCH.trimmer))
    assert (apart["a-1"].width.deviation - apart["a-2"].width.deviation).worst == 2 * A
