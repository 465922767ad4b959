from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.cutting import Arrival, Fate, cut_sheets, cut_steps
from spreadwright.model import INCH_BENCH, Axis, Branch, Leaf, Measures, Split, Use
from strategies import EIGHTH, INCH, SQUARE, cut_trees, recipe_of
from trimmer import SimulatedTrimmer

FALLING_BENCH = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, measures=Measures.FALLING))
benches = st.sampled_from([INCH_BENCH, FALLING_BENCH])


def piece(extent: int | None, name: str, times: int = 1) -> Branch:
    return Branch(extent, Leaf(Use.PIECE, name), is_rest=extent is None, times=times)


@given(st.lists(cut_trees(), min_size=1, max_size=3), benches)
def test_simulated_trimmer_gets_the_pieces_that_were_promised(trees, bench):
    sheets = cut_sheets(recipe_of(*trees))
    trimmer = SimulatedTrimmer(sheets, bench.trimmer.length)
    for step in cut_steps(sheets, bench):
        trimmer.follow(step)
    promised = {part.id: part.rect.size for sheet in sheets if len(sheet.parts) > 1 for part in sheet.parts}
    assert trimmer.done == promised
    assert trimmer.board is None and trimmer.aside == []


@given(st.lists(cut_trees(), min_size=1, max_size=3), benches)
def test_each_sheet_takes_one_cut_less_than_it_has_parts(trees, bench):
    sheets = cut_sheets(recipe_of(*trees))
    steps = cut_steps(sheets, bench)
    for sheet in sheets:
        assert len([step for step in steps if step.sheet == sheet.number]) == len(sheet.parts) - 1
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))


@given(cut_trees(), benches)
def test_both_parts_of_a_cut_make_up_what_was_on_the_board(tree, bench):
    for step in cut_steps(cut_sheets(recipe_of(tree)), bench):
        assert step.kept.rect.area + step.falling.rect.area == step.on_board.area
        assert step.on_board.contains(step.kept.rect) and step.on_board.contains(step.falling.rect)
        assert not step.kept.rect.overlaps(step.falling.rect)


def test_parallel_cuts_are_made_without_moving_the_sheet():
    split = Split(Axis.COLUMNS, (piece(2 * INCH, "strip", times=6),))
    steps = cut_steps(cut_sheets(recipe_of(split)), INCH_BENCH)
    assert [step.exact // INCH for step in steps] == [10, 8, 6, 4, 2]
    assert [step.arrival for step in steps] == [Arrival.NEW_SHEET] + [Arrival.STAYS] * 4
    assert not any(step.is_turned_now for step in steps)


def test_scale_of_the_falling_part_stays_set_for_equal_strips():
    split = Split(Axis.COLUMNS, (piece(2 * INCH, "strip", times=6),))
    steps = cut_steps(cut_sheets(recipe_of(split)), FALLING_BENCH)
    assert {step.exact for step in steps} == {2 * INCH}


def test_rows_are_cut_with_the_sheet_turned_to_the_left():
    split = Split(Axis.ROWS, (piece(3 * INCH, "head"), piece(None, "foot")))
    (step,) = cut_steps(cut_sheets(recipe_of(split)), INCH_BENCH)
    assert step.is_turned_now and step.quarter_turns_left == 1
    assert (step.exact, step.kept.id, step.falling.id) == (3 * INCH, "head", "foot")


def test_what_stays_is_cut_on_before_anything_is_picked_up():
    halves = Split(Axis.ROWS, (piece(6 * INCH, "half", times=2),))
    split = Split(Axis.COLUMNS, (Branch(4 * INCH, halves, times=3),))
    steps = cut_steps(cut_sheets(recipe_of(split)), INCH_BENCH)
    arrivals = [step.arrival for step in steps]
    picked = Arrival.PICKED_UP
    assert arrivals == [Arrival.NEW_SHEET, Arrival.STAYS, Arrival.STAYS, picked, picked]
    assert [step.falling.fate for step in steps[:2]] == [Fate.SET_ASIDE] * 2
    assert {step.exact for step in steps[2:]} == {6 * INCH}


def test_reading_between_marks_is_the_nearest_mark():
    split = Split(Axis.COLUMNS, (piece(3 * INCH + INCH // 64, "a"), piece(None, "b")))
    (step,) = cut_steps(cut_sheets(recipe_of(split)), INCH_BENCH)
    assert (step.exact, step.reading) == (3 * INCH + INCH // 64, 3 * INCH)


def test_finished_piece_inside_a_split_of_one_is_put_on_its_pile():
    single = Split(Axis.ROWS, (piece(12 * INCH, "tall"),))
    split = Split(Axis.COLUMNS, (Branch(4 * INCH, single), Branch(4 * INCH, single), piece(None, "rest-of-it")))
    first, second = cut_steps(cut_sheets(recipe_of(split)), INCH_BENCH)
    assert [first.falling.id, second.falling.id, second.kept.id] == ["rest-of-it", "tall-2", "tall-1"]
    assert (first.kept.fate, second.kept.fate) == (Fate.ON_BOARD, Fate.PIECE)


def test_kept_part_is_everything_before_the_cut():
    split = Split(Axis.COLUMNS, (piece(INCH, "a"), piece(2 * INCH, "b"), piece(3 * INCH, "c"), piece(None, "d")))
    kept = [step.kept for step in cut_steps(cut_sheets(recipe_of(split)), INCH_BENCH)]
    assert [share.rect.width // INCH for share in kept] == [6, 3, 1]
    assert [share.id for share in kept] == ["", "", "a"]


def test_split_with_one_part_takes_no_cut():
    inner = Split(Axis.ROWS, (piece(None, "top"), piece(6 * INCH, "bottom")))
    tree = Split(Axis.COLUMNS, (Branch(SQUARE.width, inner),))
    steps = cut_steps(cut_sheets(recipe_of(tree)), INCH_BENCH)
    assert [step.arrival for step in steps] == [Arrival.NEW_SHEET]
    assert steps[0].length == 12 * INCH and SQUARE.width == EIGHTH * 96
