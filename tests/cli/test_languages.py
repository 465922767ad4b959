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
