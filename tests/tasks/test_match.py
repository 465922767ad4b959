"""From photographs to their colours, the papers that suit them, and their places on the mats."""

import json

import pytest

import photographs
from builder import PAPERS, SOUND
from spreadwright.colour.names import colour_name
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.errors import CannotDraw, InvalidDocument, NoColourway, UnreadablePicture
from spreadwright.images import read
from spreadwright.model import PaperSet
from spreadwright.photos.focus import focus_points
from spreadwright.store import Collection
from spreadwright.tasks.match import Photograph, looked_at, match
from spreadwright.tasks.match_answers import match_answer
from spreadwright.tasks.match_pictures import cropped_jpeg, match_preview_svg, match_svg
from spreadwright.tasks.ranking import propose
from spreadwright.tasks.suiting import PHOTOS

RECIPE = read_recipe(json.dumps(SOUND).encode(), "window-seat")
TWO = read_paper_set(json.dumps(PAPERS).encode(), "two").model
SHIPPED = tuple(map(Collection().paper_set, ("last-tram", "potting-bench", "shingle-and-sail", "windfall")))


def photograph(name: str, **options: object) -> Photograph:
    return looked_at(f"{name}.jpg", photographs.as_jpeg(photographs.ALL[name](**options)))


BEACH, PORTRAIT, GROUP, FLOWER = (photograph(name) for name in ("beach", "portrait", "group", "flower"))


def best_set(*found: Photograph, sets: tuple[PaperSet, ...] = SHIPPED) -> str:
    return match(found, sets).suits[0].papers.id


def test_a_photograph_has_its_size_its_colours_and_what_draws_the_eye():
    assert (BEACH.size.width, BEACH.size.height) == (900, 600)
    assert {"blue", "beige", "red"} == {colour_name(tone.hex) for tone in BEACH.tones}
    assert BEACH.attention.sum() == pytest.approx(1)


def test_what_is_refused_bears_its_name():
    with pytest.raises(UnreadablePicture) as caught:
        looked_at("torn.jpg", b"torn")
    assert caught.value.name == "torn.jpg" and str(caught.value).startswith("torn.jpg: ")


def test_the_sea_wants_the_papers_of_the_sea():
    assert best_set(BEACH) == "shingle-and-sail"


def test_sets_come_with_the_best_first_and_no_more_than_are_wanted():
    scores = [suit.score for suit in match([FLOWER], SHIPPED, wanted=3).suits]
    assert len(scores) == 3 and scores == sorted(scores, reverse=True)


def test_each_photograph_counts_alike():
    one, two = match([BEACH, FLOWER], SHIPPED).tones, match([FLOWER, BEACH], SHIPPED).tones
    assert {tone.hex for tone in one} == {tone.hex for tone in two}


def test_of_a_recipe_the_best_colourway_of_every_set_is_given():
    found = match([BEACH], SHIPPED, reading=RECIPE, wanted=12).suits
    assert len({suit.papers.id for suit in found}) == len(found)
    assert all(suit.colourway and suit.colourway.set_id == suit.papers.id for suit in found)
    assert all(suit.fit == dict(suit.parts)[PHOTOS] for suit in found)
    assert all(suit.words and suit.reason.startswith("The best of") for suit in found)


def test_the_best_of_each_other_set_says_how_far_the_best_of_all_is_ahead():
    best, *others = match([BEACH], SHIPPED, reading=RECIPE, wanted=12).suits
    assert others and "ahead" not in best.reason
    for suit in others:
        assert suit.reason.endswith(f"The best of all sets is {best.score - suit.score:.1f} points ahead.")


def test_the_colourways_of_one_set_are_told_beside_its_best_alone():
    found = match([BEACH], SHIPPED[:1], reading=RECIPE, wanted=5).suits
    assert not any("of all sets" in suit.reason for suit in found)


def test_of_one_set_several_colourways_are_given():
    found = match([BEACH], SHIPPED[:1], reading=RECIPE, wanted=5).suits
    assert len({suit.colourway.id for suit in found if suit.colourway}) == 5


def test_photographs_change_which_colourway_is_the_best():
    usual = propose(RECIPE.model, [SHIPPED[0]], 1).colourways[0].colourway
    found = [match([each], SHIPPED[:1], reading=RECIPE).suits[0].colourway for each in (BEACH, PORTRAIT, GROUP, FLOWER)]
    assert any(each != usual for each in found)


def test_photographs_lie_on_the_mats_in_the_order_of_the_recipe():
    found = match([BEACH, PORTRAIT, GROUP], [TWO], reading=RECIPE)
    order = [photo.on for photo in RECIPE.model.photos]
    assert [each.on for each in found.in_mats] == order
    assert sorted(each.number for each in found.in_mats) == [0, 1, 2]
    assert found.left_over == () and found.empty == ()


def test_what_is_left_over_on_either_side_is_told():
    codes = [each.code for each in match([BEACH], [TWO], reading=RECIPE).findings]
    assert codes.count("mat-left-empty") == 1
    many = match([BEACH, PORTRAIT, GROUP, FLOWER, BEACH], [TWO], reading=RECIPE)
    assert [(each.code, each.where) for each in many.findings if each.code == "photo-left-over"] == [
        ("photo-left-over", f"/photographs/{number}") for number in many.left_over
    ]


def test_too_few_pixels_for_the_paper_are_told_with_the_size_that_would_do():
    small = photograph("beach", size=(300, 200))
    (finding,) = [each for each in match([small], [TWO], reading=RECIPE).findings if each.code == "photo-too-coarse"]
    (lying,) = match([small], [TWO], reading=RECIPE).in_mats
    assert f"{int(lying.laid.per_inch)} pixels to the inch" in finding.message and "150" in finding.remedy
    large = photograph("beach", size=(3000, 2000))
    assert not [each for each in match([large], [TWO], reading=RECIPE).findings if each.code == "photo-too-coarse"]


def test_a_focus_overrides_what_draws_the_eye():
    focus = focus_points(["0,0"], ["beach.jpg"])
    crop = match([BEACH], [TWO], reading=RECIPE, focus=focus).in_mats[0].crop
    assert (crop.left, crop.top) == (0, 0)


def test_what_is_cut_out_has_the_shape_of_its_mat():
    (lying,) = match([BEACH], [TWO], reading=RECIPE).in_mats
    cut_out = read(cropped_jpeg(lying, 400))
    assert cut_out.width / cut_out.height == pytest.approx(lying.size.width / lying.size.height, rel=0.02)
    assert max(cut_out.width, cut_out.height) <= 400


def test_a_recipe_with_errors_is_refused():
    broken = read_recipe(json.dumps({**SOUND, "placements": []}).encode(), "broken")
    with pytest.raises(InvalidDocument):
        match([BEACH], [TWO], reading=broken)


def test_sets_that_do_not_fill_the_roles_are_left_out_or_refused():
    short = read_paper_set(json.dumps({**PAPERS, "papers": PAPERS["papers"][:1]}).encode(), "short").model
    assert [suit.papers.id for suit in match([BEACH], [short, TWO], reading=RECIPE).suits] == ["two"]
    with pytest.raises(NoColourway):
        match([BEACH], [short], reading=RECIPE)


def test_the_same_photographs_give_the_same_answer_and_the_same_pictures():
    found = [match([BEACH, PORTRAIT], [TWO], reading=RECIPE) for _ in range(2)]
    assert match_answer(found[0]) == match_answer(found[1])
    assert match_svg(found[0]) == match_svg(found[1])
    assert match_preview_svg(found[0]) == match_preview_svg(found[1])


def test_a_preview_without_a_recipe_is_refused():
    with pytest.raises(CannotDraw):
        match_preview_svg(match([BEACH], [TWO]))


def test_the_picture_shows_photographs_colours_and_papers():
    found = match([BEACH, PORTRAIT], [TWO], reading=RECIPE)
    svg = match_svg(found).decode()
    assert all(tone.hex in svg for tone in found.tones)
    assert svg.count("data:image/jpeg") == 2 + 2 * len(found.suits)
    assert match_svg(match([BEACH], SHIPPED)).decode().count("data:image/jpeg") >= 1
