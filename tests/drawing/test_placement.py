import re
from dataclasses import replace

import pytest

from builder import sound, spoilt
from spreadwright.document import read_recipe
from spreadwright.drawing.placement import PlacementPlan, placement_leaves, placement_picture
from spreadwright.drawing.theme import MM
from spreadwright.model import INCH_BENCH, Spread
from spreadwright.store import Collection
from spreadwright.tasks import Placing, place
from spreadwright.words import LANGUAGES, speaking


def plan_of(done: Placing) -> PlacementPlan:
    return PlacementPlan(done.recipe, done.steps, done.photos, done.bench, done.cautions)


def picture(data: bytes):
    done = place(read_recipe(data), INCH_BENCH)
    return done, placement_picture(plan_of(done))


def words(data: bytes) -> list[str]:
    lines = picture(data)[1].outline()
    return [found[1] for line in lines if (found := re.search(r"aria-label=(.*) fill=", line))]


def test_every_piece_is_numbered_in_the_picture_and_in_the_table():
    done, canvas = picture(sound())
    shown = words(sound())
    for step in done.steps:
        is_mat = step.placed.piece.id in {photo.on for photo in done.photos}
        assert shown.count(step.placed.piece.mark) == (3 if is_mat else 2)
        assert shown.count(str(step.number)) >= 2
    assert canvas.size.width > 0


def test_distances_name_their_edge():
    shown = words(sound())
    assert any("1/2 in" in each for each in shown) and "Left edge: flush" in shown


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("bench_id", ["bench-inch", "bench-metric"])
def test_no_table_of_the_collection_loses_a_word(language, bench_id):
    for recipe_id in sorted(Collection().recipes):
        with speaking(language):
            canvas = placement_picture(plan_of(place(Collection().recipe(recipe_id), Collection().bench(bench_id))))
        assert not [line for line in canvas.outline() if "…" in line]


def test_photos_are_dashed():
    dashed = [line for line in picture(sound())[1].outline() if "stroke-dasharray" in line]
    assert len(dashed) == 3


def test_single_page_stands_alone():
    def spoil(document):
        document["spread"]["pages"] = ["page"]
        for each in document["placements"]:
            each["page"] = "page"

    shown = words(spoilt(spoil))
    assert "left page" not in shown and shown.count("page") == 13


def test_cautions_stand_before_the_table():
    done, _ = picture(sound())
    told = " ".join(words(sound()))
    assert all(sentence in told for sentence in done.cautions)
    assert told.index(done.cautions[-1]) < told.index("Piece")


def test_every_photo_has_its_size_in_a_table():
    shown = words(sound())
    after = shown[shown.index("Photo size") :]
    assert after.count("6 1/2 × 6 1/2 in") == 1 and "1/4 in" in after
    assert {"panel", "mat-1", "mat-2"} <= set(after)


def test_photo_lies_over_a_later_piece():
    def spoil(document):
        document["placements"].append(document["placements"].pop(4))
        document["placements"].append(document["placements"].pop(4))

    lines = [line.strip() for line in picture(spoilt(spoil))[1].outline()]
    last_piece = max(i for i, line in enumerate(lines) if line.startswith("rect") and "stroke-width=0.25" in line)
    pages = [i for i, line in enumerate(lines) if line.startswith("g clip-path")]
    for start, end in zip(pages, [pages[1], last_piece + 99], strict=True):
        inside = lines[start:end]
        dashed = [i for i, line in enumerate(inside) if "stroke-dasharray" in line]
        solid = [i for i, line in enumerate(inside) if "stroke=#2b2a28 stroke-width=0.25" in line]
        assert dashed and solid and max(solid) < min(dashed)


def test_piece_in_the_middle_says_so():
    def spoil(document):
        document["placements"][4] = {"piece": "panel", "page": "left", "centre": "0", "middle": "1/2"}

    shown = words(spoilt(spoil))
    assert "in the middle" in shown and any("3 in" in each for each in shown)


def test_leaves_for_the_printer_are_no_higher_than_paper():
    done = place(read_recipe(sound()), INCH_BENCH)
    many = tuple(replace(done.steps[i % len(done.steps)], number=i + 1) for i in range(50))
    leaves = placement_leaves(replace(plan_of(done), steps=many))
    assert len(leaves) > 1
    assert all(leaf.size.height <= 265 * MM for leaf in leaves)
    assert "Placement, continued" in "\n".join(leaves[1].outline())


def test_a_tall_page_leaves_room_for_the_table():
    done = place(read_recipe(sound()), INCH_BENCH)
    size = done.recipe.spread.size
    tall = replace(done.recipe, spread=Spread(("page",), replace(size, height=4 * size.height)))
    assert all(leaf.size.height <= 265 * MM for leaf in placement_leaves(replace(plan_of(done), recipe=tall, steps=())))
