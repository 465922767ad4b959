import re

import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.lengths import Unit, ticks
from spreadwright.model import INCH_BENCH
from spreadwright.store import Collection
from spreadwright.tasks import place


def sentences(data: bytes, bench=INCH_BENCH) -> dict[str, str]:
    return {step.placed.piece.id: step.sentence for step in place(read_recipe(data), bench).steps}


def test_pieces_are_glued_page_by_page_from_below():
    steps = place(read_recipe(sound()), INCH_BENCH).steps
    pages = [step.placed.page for step in steps]
    assert pages == sorted(pages) and [step.number for step in steps] == list(range(1, 12))
    for page in ("left", "right"):
        on_page = [step.placed for step in steps if step.placed.page == page]
        for index, upper in enumerate(on_page):
            assert all(lower.layer < upper.layer for lower in on_page[:index] if lower.rect.overlaps(upper.rect))


@pytest.mark.parametrize(
    ("members", "words"),
    [
        ({"left": "1/2", "top": "0"}, "1/2 in from the left edge, flush with the top edge"),
        ({"right": "1/4", "bottom": "2 1/2"}, "1/4 in from the right edge, 2 1/2 in from the bottom edge"),
        ({"centre": "0", "middle": "0"}, "centred across, centred up and down"),
        (
            {"centre": "-1", "middle": "1"},
            "its middle 1 in left of the page’s middle, its middle 1 in below the page’s middle",
        ),
        ({"left": "0", "top": "0", "face": "back"}, "its other face up"),
    ],
)
def test_sentence_names_the_edges_the_ruler_touches(members, words):
    data = spoilt(lambda d: d["placements"].__setitem__(4, {"piece": "panel", "page": "left"} | members))
    assert words in sentences(data)["panel"]


def test_sentences_replayed_give_the_placement():
    """Reads the two distances out of each sentence and finds the piece's place from them alone."""
    for step in place(read_recipe(sound()), INCH_BENCH).steps:
        if "whole" in step.sentence:
            continue
        left, top = (_start(step, ("left", "right"), 0), _start(step, ("top", "bottom"), 1))
        assert (left, top) == (step.placed.rect.left, step.placed.rect.top)


def _start(step, edges, axis):
    page = ticks("12", Unit.INCH)
    side = (step.placed.rect.width, step.placed.rect.height)[axis]
    for edge in edges:
        found = re.search(rf"([\d /]+) in from the {edge} edge|flush with the {edge} edge", step.sentence)
        if found:
            distance = ticks(found[1], Unit.INCH) if found[1] else 0
            return distance if edge == edges[0] else page - distance - side
    raise AssertionError(step.sentence)


def test_metric_bench_speaks_millimetres():
    words = sentences(sound(), Collection().bench("bench-metric"))
    assert "88.9 × 127 mm" in words["mat-1"]
    assert "13 mm (the mark nearest to 12.7 mm) from the left edge" in words["mat-1"]
