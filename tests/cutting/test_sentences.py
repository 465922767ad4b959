from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import cut


def words(data: bytes, bench=INCH_BENCH):
    return cut(read_recipe(data), bench).words


def test_first_cut_lays_the_sheet_and_tells_what_falls():
    first = words(sound())[0]
    assert first.board == "Lay sheet 3 (plain, 12 × 12 in) against the fence, top edge up."
    assert first.setting == "Set the scale to 7 in for the part that stays, and cut."
    assert first.falls == "What falls is a part of 5 × 12 in: set it aside until its turn."
    assert first.stays == "What stays is a part of 7 × 12 in: it is cut further."


def test_turns_are_told_where_they_are_made():
    boards = [each.board for each in words(sound())]
    assert boards[1].endswith(", and turn it a quarter to the left, its top edge to the left.")
    assert boards[2].endswith(", and turn it a quarter to the right, upright again.")
    assert boards[4].endswith("turned a quarter to the left so that its top edge lies left.")
    assert boards[5] == "Leave the part of 12 × 6 in on the board."


def test_piece_is_named_to_its_pile():
    assert words(sound())[2].falls == "What falls is “mat-2” (C2), 3 1/2 × 5 in: put it on the pile of the left page."


def test_trimmer_that_measures_what_falls_is_told_so():
    first = words(sound(), Collection().bench("bench-inch-falling"))[0]
    assert first.setting == "Set the scale to 5 in for the part that falls, and cut."


def test_caution_stands_with_narrow_strips_only():
    def spoil(document):
        document["sheets"][2]["rows"][0] = {"height": "1/4", "columns": [{"width": "6", "piece": "strip", "times": 2}]}
        document["placements"][6]["top"] = document["placements"][7]["bottom"] = "0"

    for step, each in zip(cut(read_recipe(spoilt(spoil)), INCH_BENCH).steps, words(spoilt(spoil)), strict=True):
        sides = [step.on_board, step.falling.rect, step.kept.rect]
        narrow = min(min(rect.width, rect.height) for rect in sides)
        assert bool(each.caution) == (narrow < INCH_BENCH.trimmer.shortest)
        assert not each.caution or "1/4 in" in each.caution
