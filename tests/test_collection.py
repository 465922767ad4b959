"""Every document of the shipped collection, from end to end."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from itertools import cycle

import pytest

from spreadwright.colour import choices, colourway_findings, count, first
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading, canonical, read_any, read_paper_set, read_recipe
from spreadwright.drawing.sheet import cut_sheet_picture
from spreadwright.errors import Severity
from spreadwright.geometry import Rect, Size, area, uncovered
from spreadwright.lengths import Unit
from spreadwright.model import INCH_BENCH, Bench, Colourway, Recipe, Use
from spreadwright.store import Collection
from spreadwright.store.licences import may_follow, terms
from spreadwright.tasks import Cutting, check, cut, place, recipe_findings
from spreadwright.tasks.draw import sheet_plans
from spreadwright.words import LANGUAGES, speaking
from tiling import is_tiled
from trimmer import SimulatedTrimmer

COLLECTION = Collection()
RECIPES = tuple(COLLECTION.recipes)
PAPER_SETS = tuple(COLLECTION.paper_sets)
BENCHES = tuple(COLLECTION.benches)
FREE = {"CC-BY-4.0", "CC-BY-SA-4.0", "CC0-1.0"}

each_recipe = pytest.mark.parametrize("recipe_id", RECIPES)
each_set = pytest.mark.parametrize("set_id", PAPER_SETS)
each_bench = pytest.mark.parametrize("bench_id", BENCHES)


def sizes_of(recipe: Recipe) -> set[Size | None]:
    """The sizes of sheets that it takes."""
    return {sheet.size for sheet in recipe.sheets}


def fitting_pairs() -> list[tuple[str, str]]:
    """Recipes with the sets that have sheets of their size: none of 12 in lies on a page of millimetres."""
    return [
        (recipe_id, set_id)
        for recipe_id in RECIPES
        for set_id in PAPER_SETS
        if sizes_of(reading_of(recipe_id).model) <= {paper.size for paper in COLLECTION.paper_set(set_id).papers}
    ]


def reading_of(recipe_id: str) -> Reading[Recipe]:
    return COLLECTION.recipe(recipe_id)


def own_bench(recipe_id: str) -> Bench:
    """The bench in the unit of the recipe, as wherever none is named."""
    return COLLECTION.bench(unit=reading_of(recipe_id).model.unit)


@cache
def cut_on(recipe_id: str, bench_id: str) -> Cutting:
    """The recipe cut on one bench: the order of many cuts takes its time, so every law looks at the same one."""
    return cut(reading_of(recipe_id), COLLECTION.bench(bench_id))


each_fitting_set = pytest.mark.parametrize(("recipe_id", "set_id"), fitting_pairs())


def sheet_count(recipe: Recipe) -> int:
    return sum(sheet.times for sheet in recipe.sheets)


def values(of: Callable[[Recipe], object]) -> Counter[object]:
    return Counter(of(reading.model) for reading in COLLECTION.recipes.values())


def test_there_is_something_to_choose_from() -> None:
    assert len(RECIPES) >= 14 and len(PAPER_SETS) >= 7
    assert min(values(lambda recipe: len(recipe.spread.pages)).values()) >= 3
    assert min(values(lambda recipe: recipe.unit).values()) >= 3
    assert len(values(lambda recipe: recipe.spread.size)) >= 5
    assert values(lambda recipe: recipe.language).keys() == set(LANGUAGES)
    assert len(values(lambda recipe: recipe.authors)) >= 3
    assert len(values(lambda recipe: len(recipe.roles))) >= 4


def test_shapes_reach_from_simple_to_intricate() -> None:
    sheets, photos = values(sheet_count), values(lambda recipe: len(recipe.photos))
    cuts = values(lambda recipe: sum(len(sheet.parts) - 1 for sheet in cut_sheets(recipe)))
    assert {2, 3, 4, 5, 6} <= sheets.keys()
    assert min(photos) == 1 and max(photos) >= 12
    assert min(cuts) <= 5 and max(cuts) >= 30


def test_most_tags_lead_to_several_recipes() -> None:
    tags = Counter(tag for reading in COLLECTION.recipes.values() for tag in reading.model.tags)
    english = Counter(
        tag for each in COLLECTION.recipes.values() if each.model.language == "en" for tag in each.model.tags
    )
    assert sum(count > 1 for count in english.values()) >= len(english) * 2 / 3
    assert max(tags.values()) < len(RECIPES)


def test_what_is_derived_has_its_parents_here_and_their_leave() -> None:
    derived = {name: each.document.get("derived_from", []) for name, each in COLLECTION.recipes.items()}
    assert any(derived.values())
    for name, parents in derived.items():
        for parent in parents:
            given = terms(COLLECTION.recipe(parent).model.licence)
            assert not given.forbids_changes
            assert not given.binds or may_follow(
                reading_of(name).model.licence, COLLECTION.recipe(parent).model.licence
            )


def test_shipped_bench_is_the_default() -> None:
    assert COLLECTION.bench() == INCH_BENCH


@each_recipe
def test_default_bench_finds_nothing_wrong(recipe_id: str) -> None:
    findings = recipe_findings(reading_of(recipe_id), own_bench(recipe_id))
    assert [finding for finding in findings if finding.severity is not Severity.NOTE] == []


@each_bench
@each_recipe
def test_every_bench_cuts_it(recipe_id: str, bench_id: str) -> None:
    data = (COLLECTION.folder / f"{recipe_id}.json").read_bytes()
    assert check(read_any(data), COLLECTION.bench(bench_id)).is_fine


@each_set
def test_paper_set_reads_without_findings(set_id: str) -> None:
    assert COLLECTION.paper_sets[set_id].findings == ()


@each_recipe
def test_parts_tile_every_sheet(recipe_id: str) -> None:
    for sheet in cut_sheets(reading_of(recipe_id).model):
        rects = [part.rect for part in sheet.parts if part.rect is not None]
        assert sheet.size is not None
        assert len(rects) == len(sheet.parts)
        assert is_tiled(Rect.at(0, 0, sheet.size), rects)


@each_recipe
def test_nothing_is_left_over_but_a_little_to_keep(recipe_id: str) -> None:
    parts = [part for sheet in cut_sheets(reading_of(recipe_id).model) for part in sheet.parts]
    kept = sum(part.rect.area for part in parts if part.use is Use.SPARE and part.rect)
    assert {part.use for part in parts} <= {Use.PIECE, Use.SPARE}
    assert 3 * kept <= sum(part.rect.area for part in parts if part.rect)


def test_most_recipes_use_every_scrap() -> None:
    spare = [
        name
        for name in RECIPES
        if any(part.use is Use.SPARE for sheet in cut_sheets(reading_of(name).model) for part in sheet.parts)
    ]
    assert len(spare) * 5 <= len(RECIPES)


@each_recipe
def test_every_part_is_placed_once(recipe_id: str) -> None:
    reading = reading_of(recipe_id)
    cut_ids = [piece.id for piece in pieces(cut_sheets(reading.model))]
    placed_ids = [step.placed.piece.id for step in place(reading, own_bench(recipe_id)).steps]
    assert sorted(placed_ids) == sorted(cut_ids)
    assert len(set(placed_ids)) == len(placed_ids)


@each_bench
@each_recipe
def test_n_parts_take_n_less_one_cuts(recipe_id: str, bench_id: str) -> None:
    cutting = cut_on(recipe_id, bench_id)
    for sheet in cutting.sheets:
        assert len(cutting.steps_of(sheet)) == len(sheet.parts) - 1


@each_bench
@each_recipe
def test_somebody_who_knows_only_readings_and_turns_gets_every_piece(recipe_id: str, bench_id: str) -> None:
    cutting = cut_on(recipe_id, bench_id)
    maker = SimulatedTrimmer(cutting.sheets, cutting.bench)
    for step in cutting.steps:
        maker.follow(step)
    parts = {part.id: part.rect for sheet in cutting.sheets if cutting.steps_of(sheet) for part in sheet.parts}
    assert maker.done.keys() == parts.keys() and maker.board is None and not maker.aside
    mark = cutting.bench.trimmer.graduation
    for name, rect in parts.items():
        assert rect is not None
        for edge in ("left", "top", "right", "bottom"):
            assert 2 * abs(getattr(maker.done[name], edge) - getattr(rect, edge)) <= mark
            assert maker.done[name] == rect or cutting.bench.unit is not cutting.recipe.unit


@each_bench
@each_recipe
def test_pieces_are_piled_in_the_order_in_which_they_fall(recipe_id: str, bench_id: str) -> None:
    cutting = cut_on(recipe_id, bench_id)
    fallen = [each for step in cutting.steps for share in (step.falling, step.kept) for each in share.ids]
    whole = [part.id for sheet in cutting.sheets if not cutting.steps_of(sheet) for part in sheet.parts]
    for pile in cutting.piles:
        piled = [piece.id for piece in pile.pieces]
        assert [each for each in piled if each not in whole] == [
            each for each in fallen if cutting.page_of.get(each) == pile.page
        ]


@pytest.mark.parametrize(("recipe_id", "language"), tuple(zip(RECIPES, cycle(LANGUAGES), strict=False)))
def test_no_table_of_a_cut_sheet_loses_a_word(recipe_id: str, language: str) -> None:
    """A third of the recipes in each language: the widest words come again in all of them."""
    trimmers = [replace(COLLECTION.bench(bench_id).trimmer, stack=2) for bench_id in BENCHES]
    with speaking(language):
        for bench_id, trimmer in zip(BENCHES, trimmers, strict=True):
            cutting = cut(reading_of(recipe_id), replace(COLLECTION.bench(bench_id), title="Short", trimmer=trimmer))
            assert [
                plan.numbers for plan in sheet_plans(cutting) if "…" in str(cut_sheet_picture(plan).outline())
            ] == []


@each_recipe
def test_piles_hold_every_piece(recipe_id: str) -> None:
    cutting = cut_on(recipe_id, "bench-inch")
    piled = [piece.id for pile in cutting.piles for piece in pile.pieces]
    assert sorted(piled) == sorted(piece.id for piece in cutting.pieces)
    assert [pile.page for pile in cutting.piles] == list(cutting.recipe.spread.pages)


@each_recipe
def test_cuts_lie_on_marks_of_the_default_scale(recipe_id: str) -> None:
    steps = cut(reading_of(recipe_id), own_bench(recipe_id)).steps
    assert [step.number for step in steps if step.reading != step.exact] == []


@each_recipe
def test_captions_stay_in_sight(recipe_id: str) -> None:
    reading = reading_of(recipe_id)
    placed = place(reading, own_bench(recipe_id)).placed
    mats = {photo.on for photo in reading.model.photos}
    for caption in reading.model.captions:
        index, written = next((i, each) for i, each in enumerate(placed) if each.piece.id == caption.on)
        above = [each.rect for each in placed[index + 1 :] if each.page == written.page]
        assert caption.on not in mats
        assert 10 * area(uncovered(written.rect, above)) >= 9 * written.rect.area


@each_recipe
def test_every_recipe_has_sets_of_its_size(recipe_id: str) -> None:
    fitting = [set_id for each, set_id in fitting_pairs() if each == recipe_id]
    assert len(fitting) >= (6 if reading_of(recipe_id).model.unit is Unit.INCH else 1)


@each_fitting_set
def test_sets_fill_every_recipe_of_their_size(recipe_id: str, set_id: str) -> None:
    recipe, papers = reading_of(recipe_id).model, COLLECTION.paper_set(set_id)
    chosen = first(recipe, papers)
    assert count(recipe, papers) > 1
    assert len({choice.paper.id for _, choice in chosen.choices}) == len(recipe.roles)
    assert colourway_findings(recipe, chosen, pieces(cut_sheets(recipe))) == ()


@each_fitting_set
def test_every_choice_suits_its_role(recipe_id: str, set_id: str) -> None:
    recipe, papers = reading_of(recipe_id).model, COLLECTION.paper_set(set_id)
    cut_pieces = pieces(cut_sheets(recipe))
    others = dict(first(recipe, papers).choices)
    for role in recipe.roles:
        for choice in choices(recipe, role, papers):
            colourway = Colourway(set_id, tuple({**others, role.id: choice}.items()))
            assert colourway_findings(recipe, colourway, cut_pieces) == ()


@each_recipe
def test_canonical_form_is_the_same_recipe(recipe_id: str) -> None:
    reading = reading_of(recipe_id)
    written = canonical(reading.document)
    again = read_recipe(written, recipe_id)
    assert again.model == reading.model
    assert canonical(again.document) == written


@each_set
def test_canonical_form_is_the_same_paper_set(set_id: str) -> None:
    reading = COLLECTION.paper_sets[set_id]
    written = canonical(reading.document)
    assert read_paper_set(written, set_id, COLLECTION.pictures(set_id)).model == reading.model


def test_sets_show_every_print() -> None:
    papers = [paper for set_id in PAPER_SETS for paper in COLLECTION.paper_set(set_id).papers]
    shown = {face.pattern.value for paper in papers for face in (paper.front, paper.back)}
    assert shown >= {"plain", "linen", "stripe", "gingham", "dots", "chevron", "leaf", "contour", "picture"}


@each_recipe
def test_recipe_is_credited_and_licensed(recipe_id: str) -> None:
    recipe = reading_of(recipe_id).model
    assert recipe.summary and recipe.authors and recipe.licence in FREE


@each_set
def test_paper_set_is_credited_and_licensed(set_id: str) -> None:
    papers = COLLECTION.paper_set(set_id)
    assert papers.summary and papers.authors and papers.licence in FREE
