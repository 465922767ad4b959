"""What a page says of any colourway is what the test strip says of it."""

from itertools import islice

import numpy as np
import pytest

from spreadwright.colour import colourways
from spreadwright.colour.legible import Sight, in_sight, sight_matrix
from spreadwright.colour.scene import PAGE
from spreadwright.store import Collection
from spreadwright.tasks.apart import faces_of, lost_pairs, meetings
from spreadwright.tasks.strip import strip

COLLECTION = Collection()


def told(recipe, papers, colourway):
    """As a page finds it: look up every two faces that meet."""
    numbers = {choice: number for number, choice in enumerate(faces_of(papers))}
    lost, found = lost_pairs(papers), {sight: set() for sight in Sight}

    def number(surface):
        return len(numbers) if surface == PAGE else numbers[colourway.choice(surface.role).lying(surface.side)]

    ids = {number: choice.id for choice, number in numbers.items()} | {len(numbers): ""}
    for one, other in meetings(recipe):
        pair = tuple(sorted((number(one), number(other))))
        for sight in lost.get(pair, ()):
            found[sight].add(frozenset(ids[each] for each in pair))
    return found


@pytest.mark.parametrize("recipe_id", ["rain-until-four", "the-long-way-home", "tent-by-the-lake"])
@pytest.mark.parametrize("set_id", ["windfall", "last-tram"])
def test_pairs_known_beforehand_are_those_of_the_test_strip(recipe_id, set_id):
    reading, papers = COLLECTION.recipe(recipe_id), COLLECTION.paper_set(set_id)
    for colourway in islice(colourways(reading.model, papers), 0, 300, 17):
        exposed = strip(reading, papers, colourway).exposed
        expected = {each.sight: {frozenset(pair.ids) for pair in each.lost} for each in exposed}
        assert told(reading.model, papers, colourway) == expected, colourway.id


@pytest.mark.parametrize("sight", list(Sight))
def test_the_matrix_of_a_sight_is_what_it_does_to_light(sight):
    light = np.random.default_rng(7).random((50, 3))
    assert np.allclose(np.clip(light @ sight_matrix(sight).T, 0, 1), in_sight(sight, light))
    assert np.allclose(sight_matrix(sight).sum(axis=1), 1, atol=1e-5)
