import json
from dataclasses import replace
from itertools import product

import pytest

from builder import PAPERS, sound, spoilt
from spreadwright.colour import colourways, count
from spreadwright.colour.measure import look
from spreadwright.colour.parts import WEIGHTS
from spreadwright.colour.parts.separation import ALIKE, apart
from spreadwright.colour.ranking import MARGIN, ranking
from spreadwright.colour.worth import Wish, role_shares
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.drawing import PIXELS_PER_MM, face_pixels
from spreadwright.store import Collection
from spreadwright.tasks.ranking import face_look, seen, worth_in

RECIPE = read_recipe(sound()).model
SET = read_paper_set(json.dumps(PAPERS).encode(), "two").model
SHIPPED = Collection()
WINDFALL = SHIPPED.paper_set("windfall")
RAIN = SHIPPED.recipe("rain-until-four").model


def every(worth):
    return [worth.ranked(pick) for pick in product(*(range(len(options)) for options in worth.cast.options))]


@pytest.mark.parametrize(("recipe", "papers"), [(RECIPE, SET), (RAIN, WINDFALL)])
def test_the_first_is_the_best_of_all(recipe, papers):
    worth = worth_in(recipe, papers)
    everything = every(worth)
    assert len(everything) <= count(recipe, papers)
    top = max(each.score for each in everything)
    found = ranking([worth], 5)
    assert found.is_proved and found.colourways[0].score == top
    assert found.colourways[0].colourway == next(each.colourway for each in everything if each.score == top)


def test_the_score_is_the_weighted_sum_of_its_parts():
    for each in every(worth_in(RECIPE, SET)):
        assert each.parts.keys() == WEIGHTS.keys()
        assert each.score == pytest.approx(sum(each.parts[name] * WEIGHTS[name] for name in WEIGHTS) / 100, abs=1e-4)
        assert 0 <= each.score <= 100


def test_parts_are_what_the_formulas_say_of_the_whole_scene():
    worth = worth_in(RAIN, WINDFALL)
    ranked = worth.ranked([0, 1, 2])
    for name, part in worth.judged.items():
        looks = {
            surface: worth.cast.shown[surface][[0, 1, 2][worth.cast.role_of(surface)]] for surface in RAIN_SURFACES
        }
        value = sum(share * values[looks[surface]] for surface, (share, values) in part.alone.items())
        value += sum(share * part.matrix[looks[a], looks[b]] for (a, b), share in part.meetings.items())
        assert ranked.parts[name] == pytest.approx(100 * value, abs=1e-4)


def test_roles_in_one_paper_are_told_to_merge_and_others_are_not():
    worth = worth_in(RECIPE, SET)
    for each in every(worth):
        playing = dict(each.colourway.choices)
        looks = {role: face_look(choice.face) for role, choice in playing.items()}
        assert all(apart([looks[one], looks[other]])[0, 1] <= ALIKE for one, other in each.merged)
        met = {tuple(role for role in playing if role in (one.role, other.role)) for one, other in seen(RECIPE).edges}
        same = {pair for pair in met if len(pair) == 2 and looks[pair[0]] == looks[pair[1]]}
        assert same <= set(each.merged)
    assert any(each.merged for each in every(worth)) and not all(each.merged for each in every(worth))


RAIN_SURFACES = [surface for surface in seen(RAIN).areas if surface.role]


def test_scores_fall_and_ids_differ():
    found = ranking(
        [worth_in(RAIN, papers) for papers in SHIPPED.sound_paper_sets() if count(RAIN, papers)], 12
    ).colourways
    scores = [each.score for each in found]
    assert scores == sorted(scores, reverse=True)
    assert len({each.colourway.id for each in found}) == 12
    assert len({each.colourway.set_id for each in found}) > 1


def test_others_stay_near_the_best():
    found = ranking([worth_in(SHIPPED.recipe("the-long-way-home").model, WINDFALL)], 12)
    assert found.pool > 12 and all(found.colourways[0].score - each.score <= MARGIN for each in found.colourways)


def test_ranking_does_not_depend_on_what_was_asked_before():
    one = ranking([worth_in(RAIN, WINDFALL)], 6)
    face_look.cache_clear()
    again = ranking([worth_in(RAIN, WINDFALL)], 6)
    assert [each.colourway.id for each in one.colourways] == [each.colourway.id for each in again.colourways]
    assert [each.score for each in one.colourways] == [each.score for each in again.colourways]


def test_two_papers_of_one_look_give_no_two_colourways():
    twice = replace(SET, papers=(*SET.papers, *(replace(paper, id=f"{paper.id}-too") for paper in SET.papers)))
    one, both = (ranking([worth_in(RECIPE, papers)], 50).colourways for papers in (SET, twice))
    assert len(both) == len(one)
    assert [each.score for each in both] == [each.score for each in one]
    assert all("too" not in each.colourway.id for each in both)


def test_more_than_there_are_gives_all_that_look_different():
    found = ranking([worth_in(RECIPE, SET)], 100).colourways
    assert 1 < len(found) <= len(list(colourways(RECIPE, SET)))


def test_a_wish_counts_by_its_weight():
    def liking(role, choice):
        return float(choice.paper.id == "mustard")

    found = ranking([worth_in(RAIN, WINDFALL, Wish("warm", 10_000.0, liking))], 1).colourways[0]
    assert {choice.paper.id for role, choice in found.colourway.choices if role != "print"} == {"mustard"}
    assert found.merged == ()
    shares = role_shares(seen(RAIN))
    assert found.parts["warm"] == pytest.approx(100 * (shares["background"] + shares["mats"]), abs=1e-4)
    assert sum(found.shares.values()) == pytest.approx(1)


def test_what_cannot_be_told_from_a_larger_paper_beside_it_adds_nothing_to_a_wish():
    worth = worth_in(RAIN, WINDFALL, Wish("all", 1.0, lambda _role, _choice: 1.0))
    found = every(worth)
    assert all(0 <= each.parts["all"] <= 100 for each in found)
    assert all((each.parts["all"] < 100 - 1e-4) == bool(each.merged) for each in found)
    shares, pair = role_shares(seen(RAIN)), ("background", "mats")
    merged = next(each for each in found if each.merged == (pair,))
    larger = sum(shares["mats"] < share for share in shares.values())
    assert merged.parts["all"] == pytest.approx(100 * (1 - shares["mats"] / larger), abs=1e-4)


def test_recipe_of_one_role_can_be_ranked():
    def spoil(document):
        document["roles"] = {"background": {"kind": "any"}}
        document["sheets"], document["placements"] = document["sheets"][:1], document["placements"][:2]
        document["photos"], document["captions"] = [], []

    recipe = read_recipe(spoilt(spoil)).model
    found = ranking([worth_in(recipe, SET)], 3)
    assert found.colourways and all(each.parts.keys() == {"balance"} for each in found.colourways)
    assert found.colourways[0].score == found.colourways[0].parts["balance"] > 80


def test_looks_are_measured_on_pictures():
    face = WINDFALL.papers[0].front
    assert face_look(face) == look(face_pixels(face), PIXELS_PER_MM)
