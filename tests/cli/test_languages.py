import json

import pytest
from click.testing import CliRunner, Result

from builder import sound, spoilt
from spreadwright.cli import main


def run(*arguments: str, data: bytes | None = None) -> Result:
    return CliRunner().invoke(main, arguments, input=data)


@pytest.mark.parametrize(("language", "word"), [("en", "Lay sheet"), ("de", "Bogen"), ("fr", "Placez")])
def test_cuts_are_told_in_the_language_that_is_named(language, word):
    result = run("cut", "-", "--language", language, data=sound())
    assert result.exit_code == 0 and word in result.stdout


def test_a_recipe_speaks_its_own_language():
    german = spoilt(lambda document: document.update(language="de-AT"))
    assert "Bogen 3" in run("cut", "-", data=german).stdout
    answer = json.loads(run("cut", "-", "--json", data=german).stdout)
    assert answer["language"] == "de" and "Vierteldrehung" in str(answer["steps"])


def test_a_language_that_is_not_spoken_here_is_english():
    assert "Lay sheet" in run("cut", "-", data=spoilt(lambda document: document.update(language="fi"))).stdout


def test_placement_is_told_in_the_language_that_is_named():
    german, english = (run("place", "-", "--language", each, data=sound()).stdout for each in ("de", "en"))
    assert german and german != english


def test_findings_stay_english():
    broken = spoilt(lambda document: document["sheets"][1].update(role="nobody"))
    assert "which the recipe does not have" in run("cut", "-", "--language", "de", data=broken).stderr


def test_an_unknown_language_is_refused_with_those_that_are_known():
    result = run("cut", "-", "--language", "xx", data=sound())
    assert result.exit_code == 2 and "'en', 'de', 'fr'" in result.stderr


def test_titles_of_the_bench_and_of_roles_are_told_in_the_language_that_is_named():
    told = run("cut", "rain-until-four", "--language", "de").stdout
    assert "für: Hebelschneider mit 12 in Schnittlänge und Zollskala" in told
    assert "Bogen 1 (Hintergrund, 12 × 12 in)" in told and "Mats" not in told


def test_rounding_is_announced_above_cuts_and_placement():
    metric = ("rain-until-four", "--bench", "bench-metric", "--language", "fr")
    assert "jusqu’à 0,4 mm plus grandes" in run("cut", *metric).stdout
    assert "à plus de 0,3 mm de sa place prévue" in run("place", *metric).stdout
