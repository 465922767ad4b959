import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import place
from spreadwright.words import LANGUAGES, speaking

INCH = TICKS[Unit.INCH]


def sentences(data: bytes, bench=INCH_BENCH) -> dict[str, str]:
    return {step.placed.piece.id: step.sentence for step in place(read_recipe(data), bench).steps}


def test_pieces_are_glued_page_by_page():
    steps = place(read_recipe(sound()), INCH_BENCH).steps
    pages = [step.placed.page for step in steps]
    assert pages == sorted(pages) and [step.number for step in steps] == list(range(1, 12))


@pytest.mark.parametrize(
    ("members", "words"),
    [
        ({"left": "1/2", "top": "0"}, "Left edge: 1/2 in from the edge of the page. Top edge: flush with the edge"),
        ({"left": "1", "bottom": "2 1/2"}, "Left edge: against the ruler, laid along the edge of the page as a spacer"),
        ({"centre": "0", "top": "2"}, "both side edges of the page are at 6 in; lay those of the piece at 3 1/2 in."),
        ({"left": "0", "top": "0", "face": "back"}, "Its other face is up."),
    ],
)
def test_sentence_names_the_edges_the_ruler_touches(members, words):
    data = spoilt(lambda d: d["placements"].__setitem__(4, {"piece": "panel", "page": "left"} | members))
    assert words in sentences(data)["panel"]


def test_metric_bench_speaks_millimetres():
    words = sentences(sound(), Collection().bench("bench-metric"))
    assert "89 × 127 mm" in words["mat-1"]
    assert "6 mm from the edge of the page" in words["mat-1"]


def test_joined_piece_names_its_base_and_the_base_what_it_carries():
    data = spoilt(
        lambda d: d["placements"].__setitem__(10, {"piece": "mat-2", "page": "left", "left": "1", "top": "1"})
    )
    words = sentences(data)
    assert words["mat-2"].startswith("Join “mat-2” (C2), 3 1/2 × 5 in, to “panel” (B) before that is glued down.")
    assert "It carries C2 already." in words["panel"]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_step_has_a_sentence_for_each_move(language):
    with speaking(language):
        for recipe_id in sorted(Collection().recipes):
            for step in place(Collection().recipe(recipe_id), INCH_BENCH).steps:
                told = step.sentences[-len(step.located.moves) :]
                assert all("{" not in sentence and sentence.endswith(".") for sentence in told)


def test_distances_of_the_picture_end_at_the_piece():
    for step in place(Collection().recipe("the-long-way-home"), INCH_BENCH).steps:
        rect = step.placed.rect
        ends = {"columns": {rect.left, rect.right}, "rows": {rect.top, rect.bottom}}
        own = [measure for measure in step.measures if not measure.is_repeated]
        assert all(measure.start in ends[measure.axis] or measure.end in ends[measure.axis] for measure in own)
        assert all(touch.width == 0 or touch.height == 0 for touch in step.touches)
