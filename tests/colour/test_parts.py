import re
from pathlib import Path

import numpy as np
import pytest

from looks import looks_like
from spreadwright.colour.measure import BUSIEST
from spreadwright.colour.parts import FORMULAS, WEIGHTS, balance, calm, captions, grey, separation
from spreadwright.colour.parts.balance import DARK, LOUD, MIDDLE, QUIET, TOO_LOUD, strengths, wanted
from spreadwright.colour.parts.calm import PHOTO_BUSYNESS
from spreadwright.colour.parts.captions import PENCIL
from spreadwright.colour.parts.part import shares
from spreadwright.colour.parts.separation import ALIKE, APART, PRINT_ADDS
from spreadwright.colour.ranking import MARGIN, POOL
from spreadwright.colour.scene import PHOTO, Scene, Surface

MAT, PRINT, BASE = Surface("mat"), Surface("print"), Surface("base")
SCENE = Scene(
    areas={BASE: 60, MAT: 30, PRINT: 10, PHOTO: 50},
    edges={(BASE, MAT): 60, (BASE, PRINT): 20, (MAT, MAT): 7, (PHOTO, MAT): 30},
    facing={(MAT, PRINT): 40},
    captions={MAT: 2, PRINT: 1},
)
WHITE, BLACK, RED, GREEN = (looks_like(colour) for colour in ("#ffffff", "#000000", "#c8202a", "#2a6b34"))


def test_weights_are_hundredths_of_known_parts():
    assert sum(WEIGHTS.values()) == 100 and WEIGHTS.keys() == FORMULAS.keys()


@pytest.mark.parametrize("name", FORMULAS)
def test_every_value_is_between_nothing_and_all(name):
    looks = [
        looks_like(colour, busy) for colour in ("#ffffff", "#000000", "#c8202a", "#ffd233") for busy in (0, 0.4, 1)
    ]
    part = FORMULAS[name](SCENE, looks)
    values = [*(values for _, values in part.alone.values()), part.matrix]
    assert all(((each >= 0) & (each <= 1)).all() for each in values)
    shares = [*(share for share, _ in part.alone.values()), *part.meetings.values()]
    assert sum(shares) == pytest.approx(1)


def test_meetings_count_by_length_and_facing_half():
    assert shares(SCENE) == {(BASE, MAT): 0.6, (BASE, PRINT): 0.2, (MAT, PRINT): 0.2}


def test_borders_count_half_by_length_and_half_by_the_smaller_area():
    lost = {(BASE, MAT): 30 / 50, (BASE, PRINT): 10 / 50, (MAT, PRINT): 10 / 50}
    expected = {meeting: (share + lost[meeting]) / 2 for meeting, share in shares(SCENE).items()}
    assert separation(SCENE, [WHITE]).meetings == grey(SCENE, [WHITE]).meetings == pytest.approx(expected)


def test_large_papers_that_hardly_meet_count_more_than_small_ones():
    scene = Scene({BASE: 50, MAT: 48, PRINT: 2}, {(BASE, MAT): 1, (BASE, PRINT): 20}, {}, {})
    counted = separation(scene, [WHITE]).meetings
    assert counted[BASE, MAT] > 0.45 > 1 / 21


def test_alike_papers_are_not_apart_and_others_are():
    nearly = looks_like("#fdfdfd")
    matrix = separation(SCENE, [WHITE, nearly, BLACK]).matrix
    assert matrix[0, 0] == matrix[0, 1] == 0 and matrix[0, 2] == 1
    assert (matrix == matrix.T).all()


def test_a_print_stands_apart_from_plain_paper_of_its_average():
    busy = looks_like("#ffffff", 0.9)
    assert separation(SCENE, [WHITE, busy]).matrix[0, 1] > 0.2


def test_red_on_green_reads_in_colour_but_not_in_grey():
    red, green = looks_like("#c03030"), looks_like("#4a7a3a")
    assert separation(SCENE, [red, green]).matrix[0, 1] == 1
    assert grey(SCENE, [red, green]).matrix[0, 1] < 0.25
    assert grey(SCENE, [BLACK, WHITE]).matrix[0, 1] == 1


def test_busy_beside_busy_is_not_calm_and_busy_beside_plain_is():
    matrix = calm(SCENE, [looks_like("#888888", busy) for busy in (0, 0.25, 0.6)]).matrix
    assert matrix[0].tolist() == [1, 1, 1]
    assert matrix[1, 2] == pytest.approx(0.5) and matrix[2, 2] == 0


def test_a_busy_print_round_photographs_is_not_calm():
    (share, values) = calm(SCENE, [WHITE, looks_like("#888888", 0.9)]).alone[MAT]
    assert share == pytest.approx(30 / 130) and values[0] == 1 and values[1] == pytest.approx(0.2)


def test_the_larger_a_paper_the_quieter_it_should_be():
    assert [wanted(share) for share in (0.05, 0.1, 0.3, 0.6, 0.9)] == pytest.approx([0.8, 0.8, 0.5, 0.2, 0.2])
    alone = balance(SCENE, [looks_like("#f0ece0"), looks_like("#e0202a")]).alone
    assert alone[BASE][1][0] > alone[BASE][1][1] and alone[PRINT][1][0] < alone[PRINT][1][1]


def test_being_dull_is_a_lesser_fault_than_being_loud():
    dull, loud = strengths([WHITE, looks_like("#e0202a")])
    assert 0.5 - dull > 0.3 and loud - 0.5 > 0.3
    values = balance(SCENE, [WHITE, looks_like("#e0202a")]).alone[MAT][1]
    assert values.tolist() == pytest.approx([1 - (0.5 - dull) / 1.0, 1 - (loud - 0.5) / 0.7])


def test_the_page_about_the_formula_has_the_weights():
    page = (Path(__file__).parents[2] / "site" / "docs" / "colourways.md").read_text()
    rows = dict(re.findall(r"^\| `(\w+)` \| (\d+) \|", page, re.MULTILINE))
    assert {name: int(weight) for name, weight in rows.items()} == WEIGHTS
    for figure in (f"from {ALIKE:.0f} to {APART:.0f}", f"plus {PRINT_ADDS:.0f} times", f"divided by {BUSIEST:.0f}"):
        assert figure in page
    assert all(f"{each}" in page for each in (PENCIL, PHOTO_BUSYNESS, QUIET, MIDDLE, LOUD, TOO_LOUD, DARK))
    assert f"at most {MARGIN:.0f} points behind" in page and f"{POOL:,}" in page


def test_what_there_is_nothing_to_judge_by_is_no_part():
    alone = Scene({BASE: 60, PHOTO: 9}, {}, {}, {})
    assert all(part(alone, [WHITE]).is_empty for part in (captions, separation, grey, calm))
    assert not balance(alone, [WHITE]).is_empty and balance(Scene({PHOTO: 9}, {}, {}, {}), [WHITE]).is_empty


def test_captions_want_light_calm_papers():
    looks = [WHITE, looks_like("#e0dccf"), RED, BLACK, looks_like("#ffffff", 0.3), looks_like("#ffffff", 0.8)]
    share, values = captions(SCENE, looks).alone[MAT]
    assert share == pytest.approx(2 / 3)
    assert values.tolist() == pytest.approx([1, 1, 0, 0, 0.4, 0], abs=1e-6)
    assert np.isfinite(values).all()
