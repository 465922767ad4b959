from dataclasses import replace

import pytest

from spreadwright.colour.reasons import reason
from spreadwright.colour.weakness import Weakness
from spreadwright.colour.worth import Ranked, Wish
from spreadwright.geometry import Size
from spreadwright.model import Choice, Colourway, Face, Paper, Pattern, Side, quoted_face_title
from spreadwright.words import LANGUAGES, speaking

PLAIN = Face(Pattern.PLAIN, ("#888888",), 0)
MOSS, FOG = (Choice(Paper(name.lower(), name, Size(1, 1), PLAIN)) for name in ("Moss", "Fog"))
BOTH = (MOSS, FOG.lying(Side.BACK))
SHARES = {"separation": 0.28, "grey": 0.18, "calm": 0.12, "balance": 0.27, "captions": 0.15}
WEAK = {
    "separation": Weakness(BOTH, 0.2, 7.6),
    "grey": Weakness(BOTH, 0.3, 1.49),
    "calm": Weakness(BOTH[:1], 0.2, 0.5),
    "balance": Weakness(BOTH[:1], 0.1, 0.3, 0.6),
    "captions": Weakness(BOTH[1:], 0.5, 4.49),
}


def ranked(papers=(MOSS, FOG), **parts):
    points = {**dict.fromkeys(SHARES, 90.0), **parts}
    score = sum(points[name] * share for name, share in SHARES.items())
    return Ranked(Colourway("s", tuple(zip("ab", papers, strict=False))), score, points, SHARES, WEAK)


def test_the_best_is_praised():
    best = ranked(separation=99.0)
    assert reason(best, best, 12_345) == (
        "The best of 12,345: the papers stand well apart where they meet and strong papers lie in small areas and "
        "quiet ones in large ones."
    )


def test_a_stopped_search_claims_no_best():
    for best in (
        ranked(),
        ranked(grey=40.0),
        ranked(**dict.fromkeys(SHARES, 75.0)),
        ranked(**dict.fromkeys(SHARES, 50.0)),
    ):
        told = reason(best, best, 12_345, is_proved=False)
        assert told.startswith("The best that was found among 12,345")
        assert told.replace("that was found among", "of") == reason(best, best, 12_345)


def test_the_best_owns_up_to_its_weak_side():
    best = ranked(grey=40.0)
    assert "Its weak side: in grey" in reason(best, best, 5)
    assert "“Moss” and “Fog” (back) come close (contrast 1.4 : 1)" in reason(best, best, 5)


@pytest.mark.parametrize(
    ("part", "told"),
    [
        ("separation", "“Moss” and “Fog” (back) differ by no more than 8 (CIEDE2000)"),
        ("calm", "“Moss” is a busy print beside photographs"),
        ("balance", "“Moss” is too strong for 60 % of the paper in sight"),
        ("captions", "“Fog” (back) is dark or busy for writing (contrast with a pencil 4.4 : 1)"),
    ],
)
def test_others_are_told_by_what_costs_them_most(part, told):
    other = ranked(**{part: 50.0})
    behind = 40 * SHARES[part]
    assert reason(other, ranked(), 5) == f"{behind:.1f} points behind the best: {told}."


def test_a_gain_speaks_for_the_others():
    told = reason(ranked(separation=50.0, captions=100.0), ranked(captions=60.0), 5)
    assert told.endswith("In its favour: captions are easy to read.")


def test_equal_ones_are_as_good():
    assert reason(ranked(), ranked(), 5) == "As good as the best, in other papers."


def test_roles_that_cannot_be_told_apart_are_named():
    merged = replace(ranked((MOSS, MOSS)), merged=(("a", "b"),))
    told = reason(merged, ranked(), 5, roles={"a": "Ground"})
    assert told.endswith("“Moss” is used for “Ground” and “b”. Nothing tells “Ground” and “b” apart where they meet.")


def test_a_paper_that_plays_two_roles_is_named():
    assert reason(ranked((MOSS, MOSS)), ranked(), 5).endswith("“Moss” is used for “a” and “b”.")


def test_a_paper_that_meets_itself_is_not_two():
    same = Weakness((BOTH[0], BOTH[0]), 0.2, 0.0)
    other = replace(ranked(separation=10.0), weak={"separation": same})
    assert "“Moss” meets itself" in reason(other, ranked(), 5)


def test_too_quiet_is_not_too_strong():
    quiet = replace(ranked(balance=10.0), weak={"balance": Weakness(BOTH[:1], 0.2, -0.4, 0.08)})
    assert "too quiet for 8 % of the paper in sight" in reason(quiet, ranked(), 5)


def test_a_wish_brings_its_own_words():
    wish = Wish("photos", 40.0, lambda *_: 1.0, praise="it suits the photographs", blame="it does not suit them")
    parts, shares = {"photos": 100.0, "grey": 10.0}, {"photos": 0.5, "grey": 0.5}
    best = replace(ranked(), parts=parts, shares=shares)
    assert "The best of 5: it suits the photographs." in reason(best, best, 5, wish)
    other = replace(best, parts={"photos": 0.0, "grey": 12.0}, score=best.score - 9)
    assert "it does not suit them" in reason(other, best, 5, wish)


@pytest.mark.parametrize("language", LANGUAGES)
def test_reasons_speak_every_language(language):
    with speaking(language):
        told = [reason(ranked(**{part: 50.0}), ranked(), 5000) for part in SHARES] + [reason(ranked(), ranked(), 5)]
    with speaking("en"):
        english = [reason(ranked(**{part: 50.0}), ranked(), 5000) for part in SHARES] + [reason(ranked(), ranked(), 5)]
    assert (told == english) is (language == "en")
    assert all("{" not in each and each.endswith(".") for each in told)


def test_a_face_is_the_same_whichever_way_it_came_to_be_up():
    back = Choice(MOSS.paper, Side.BACK)
    assert back.lying(Side.FRONT) == MOSS.lying(Side.BACK) and back.lying(Side.BACK) == MOSS
    assert quoted_face_title(MOSS.lying(Side.BACK)) == "“Moss” (back)"
