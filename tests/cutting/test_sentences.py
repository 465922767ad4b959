from dataclasses import replace

from builder import sound, spoilt
from spreadwright.cutting import cut_sheets, cut_steps
from spreadwright.cutting.sentences import sentences
from spreadwright.cutting.steps import Arrival, Fate
from spreadwright.document import read_recipe
from spreadwright.model import INCH_BENCH, Axis, Branch, Hand, Leaf, Split, Use
from spreadwright.store import Collection
from spreadwright.tasks import cut
from strategies import INCH, recipe_of


def words(data: bytes, bench=INCH_BENCH):
    return cut(read_recipe(data), bench).words


def test_first_cut_lays_the_sheet_and_tells_what_falls():
    first = words(sound())[0]
    assert first.board == "Lay sheet 3 (plain, 12 × 12 in) on the board, its top edge at the fence."
    assert first.setting == "Set the scale to 7 in for the part that stays, and cut."
    assert first.falls == "What falls is a part of 5 × 12 in. Set it aside until cut 3."
    assert first.stays == "What stays is a part of 7 × 12 in. It is cut further."


def test_turns_are_told_where_they_are_made():
    boards = [each.board for each in words(sound())]
    assert boards[1].endswith("Turn it a quarter to the left. Its top edge now lies to the left.")
    assert boards[3].endswith("Turn it a quarter to the right. Its top edge now lies at the fence again.")
    assert boards[4].endswith("on the board, its top edge to the right.")
    assert boards[5] == "Leave the part of 12 × 9 in on the board."


def test_part_picked_up_is_named_by_the_cut_at_which_it_fell():
    boards = [each.board for each in words(sound())]
    assert boards[2].startswith("Take up the part of 5 × 12 in that fell at cut 1.")


def test_scale_that_shows_the_reading_already_is_left():
    assert words(sound())[1].setting == "Leave the scale at 7 in for the part that stays, and cut."


def test_piece_is_named_to_its_pile():
    falls = words(sound())[3].falls
    assert falls == "What falls is “mat-2” (C2), 3 1/2 × 5 in. Put it on the pile of the left page."


def test_sheets_on_one_another_are_told_with_the_pieces_of_both():
    def strips(document):
        document["sheets"][2] = {
            "role": "print",
            "size": ["12", "12"],
            "times": 2,
            "columns": [{"width": "rest", "piece": "strip", "times": 2}],
        }
        kept = [p for p in document["placements"] if not p["piece"].startswith(("strip", "block"))]
        pages = ("left", "left", "right", "left")
        new = [{"piece": f"strip-{i}", "page": p, "left": "0", "top": "0"} for i, p in enumerate(pages, 1)]
        document["placements"] = kept + new

    stacking = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, stack=2))
    only = words(spoilt(strips), stacking)[-1]
    assert only.board.startswith(
        "Lay sheets 4 and 5 (print, 12 × 12 in) on one another on the board, top edges at the fence."
    )
    assert only.together == "both sheets together"
    assert only.falls == (
        "What falls are “strip-2” (E2) and “strip-4” (E4), each 6 × 12 in. Put them on the pile of the left page."
    )
    assert only.stays.endswith("each 6 × 12 in. Put one on the pile of each page.")


def test_left_hand_turns_the_other_way():
    left = replace(INCH_BENCH, trimmer=replace(INCH_BENCH.trimmer, hand=Hand.LEFT))
    assert any(
        "Turn it a quarter to the right. Its top edge now lies to the right." in w.board for w in words(sound(), left)
    )


def test_trimmer_that_measures_what_falls_is_told_so():
    first = words(sound(), Collection().bench("bench-inch-falling"))[0]
    assert first.setting == "Set the scale to 7 in for the part that falls, and cut."


def test_caution_stands_with_narrow_strips_only():
    def spoil(document):
        document["sheets"][2]["rows"][0] = {"height": "1/4", "columns": [{"width": "6", "piece": "strip", "times": 2}]}
        document["placements"][6]["top"] = document["placements"][7]["bottom"] = "0"

    for step, each in zip(cut(read_recipe(spoilt(spoil)), INCH_BENCH).steps, words(spoilt(spoil)), strict=True):
        sides = [step.on_board, step.falling.rect, step.kept.rect]
        narrow = min(min(rect.width, rect.height) for rect in sides)
        assert bool(each.caution) == (narrow < INCH_BENCH.trimmer.shortest)
        assert not each.caution or "1/4 in" in each.caution
        falls = step.falling.rect
        assert ("falls" in each.caution) <= (min(falls.width, falls.height) < INCH_BENCH.trimmer.shortest)


def test_part_that_is_taken_up_is_told_how_it_lies():
    cutting = cut(read_recipe(sound()), INCH_BENCH)
    told = {step.number: words.board for step, words in zip(cutting.steps, cutting.words, strict=True)}
    taken = [step.number for step in cutting.steps if step.arrival is Arrival.PICKED_UP]
    assert taken and all("top edge now lies" in told[number] for number in taken)


def test_part_that_is_taken_up_without_a_turn_is_told_how_it_lies():
    step = next(s for s in cut(read_recipe(sound()), INCH_BENCH).steps if s.number == 3)
    spare = replace(step.kept, fate=Fate.SPARE)
    lying = replace(step, turned=0, quarter_turns_left=0, falling=spare, kept=spare)
    board = sentences(lying, "plain", INCH_BENCH, {}, {}).board
    assert board.endswith("that fell at cut 1. Lay it with its top edge at the fence.")


def test_equal_parts_set_aside_at_one_cut_are_told_apart():
    halves = Split(Axis.COLUMNS, (Branch(INCH, Leaf(Use.SPARE)), Branch(None, Leaf(Use.SPARE), is_rest=True)))
    quarters = Split(Axis.ROWS, (Branch(6 * INCH, halves, times=2),))
    steps = cut_steps(cut_sheets(recipe_of(Split(Axis.COLUMNS, (Branch(6 * INCH, quarters, times=2),)))), INCH_BENCH)
    boards = [sentences(step, "plain", INCH_BENCH, {}, {}).board for step in steps]
    assert any("6 × 6 in that stayed at cut 2." in board for board in boards)
    assert any("6 × 6 in that fell at cut 2." in board for board in boards)
