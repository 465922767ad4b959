from io import BytesIO

import numpy as np
import pypdfium2
import pytest
from PIL import Image

from builder import PAPERS, sound, spoilt
from spreadwright.colour.legible import Sight
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.contact_answers import strip_answer
from spreadwright.tasks.draw import as_png
from spreadwright.tasks.strip import sentences, sight_name, strip, strip_pdf, strip_svg
from spreadwright.words import LANGUAGES, speaking

READING = read_recipe(sound(), "window-seat")
SET = read_paper_set(spoilt(lambda _: None, PAPERS), "two").model
COLLECTION = Collection()


def shown(recipe_id, set_id, colourway_id=None):
    reading, papers = COLLECTION.recipe(recipe_id), COLLECTION.paper_set(set_id)
    return strip(reading, papers, chosen_colourway(reading.model, papers, colourway_id))


@pytest.fixture(scope="module")
def moss():
    return shown("rain-until-four", "windfall", "windfall.moss.pear~back.bramble~back")


def test_moss_and_bramble_are_lost_on_each_other_in_grey(moss):
    lost = {exposed.sight: [pair.ids for pair in exposed.lost] for exposed in moss.exposed}
    assert lost[Sight.GREY] == [("bramble~back", "moss")]
    assert all(not pairs for sight, pairs in lost.items() if sight is not Sight.GREY)
    (told,) = sentences(moss.exposed[1])
    assert told.startswith("“Bramble” (back) and “Moss” are lost on each other: contrast 1.1")


def test_where_nothing_is_lost_the_closest_are_named(moss):
    (told,) = sentences(moss.exposed[0])
    assert told.startswith("All papers that meet are told apart. Closest are “Bramble” (back) and “Moss”")


def test_papers_that_look_alike_in_colour_are_told_there():
    def twin(document):
        document["papers"][1]["front"] = {"pattern": "linen", "colours": ["#dde1e1"]}

    papers = read_paper_set(spoilt(twin, PAPERS), "two").model
    found = strip(READING, papers, chosen_colourway(READING.model, papers, "two.fog.slate.reed"))
    assert any("look alike" in told for told in sentences(found.exposed[0]))


def test_a_paper_alone_cannot_be_lost():
    def alone(document):
        document["papers"] = [document["papers"][3]]

    papers = read_paper_set(spoilt(alone, PAPERS), "two").model

    def any_kind(recipe):
        for role in recipe["roles"].values():
            role.update(kind="any", directional=True)

    reading = read_recipe(spoilt(any_kind), "window-seat")
    found = strip(reading, papers, chosen_colourway(reading.model, papers, "two.reed.reed.reed"))
    assert sentences(found.exposed[0]) == ("Only one paper is in sight, so nothing can be lost.",)


def test_the_grey_picture_is_grey_and_the_first_is_not(moss):
    drawn = np.asarray(Image.open(BytesIO(as_png(strip_svg(moss), 630))).convert("RGB")).astype(int)
    colourful = np.ptp(drawn[:, 36:300], axis=2)
    rows = [colourful[top : top + 120].mean() for top in (90, 232)]
    assert rows[0] > 20 and rows[1] < 2


@pytest.mark.parametrize("paper", Format)
def test_a_printed_strip_is_one_page_of_words(moss, paper):
    pages = pypdfium2.PdfDocument(strip_pdf(moss, paper))
    assert len(pages) == 1
    told = " ".join(pages[0].get_textpage().get_text_bounded().split())
    assert all(sight_name(sight) in told for sight in Sight) and moss.colourway.id in told.replace(". ", ".")


def test_strips_of_one_colourway_are_the_same_bytes(moss):
    assert strip_svg(moss) == strip_svg(shown("rain-until-four", "windfall", moss.colourway.id))


@pytest.mark.parametrize("language", LANGUAGES)
def test_strips_speak_every_language(moss, language):
    with speaking(language):
        told = [sight_name(sight) for sight in Sight] + [word for each in moss.exposed for word in sentences(each)]
        answer = strip_answer(moss)
    assert answer["language"] == language and len(set(told)) > 5
    assert ("As a grey print" in told) == (language == "en")
