import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from builder import PAPERS, sound, spoilt
from spreadwright.cli import main


@pytest.fixture
def run(tmp_path: Path):
    (tmp_path / "paper-sets").mkdir()
    (tmp_path / "window-seat.json").write_bytes(sound())
    (tmp_path / "paper-sets" / "two.json").write_text(json.dumps(PAPERS))
    plain = spoilt(lambda d: d["papers"].__delitem__(slice(2, 4)), PAPERS)
    (tmp_path / "paper-sets" / "plain.json").write_bytes(plain)
    return lambda *words: CliRunner().invoke(main, ["--collection", str(tmp_path), "colourways", *words])


def test_the_best_come_with_points_and_reasons(run):
    told = run("window-seat", "--set", "two", "-n", "2").stdout
    assert "Window seat: 2 of 75 colourways" in told and "The best of" in told and "points behind the best" in told
    assert "separation" in told and "captions" in told


def test_without_a_set_all_compete_and_the_unfit_are_told_about(run):
    result = run("window-seat", "-n", "1")
    assert result.exit_code == 0
    assert "two." in result.stdout and "no-paper-for-role" in result.stdout and "no patterned face" in result.stdout


def test_a_set_that_fills_no_role_is_refused_with_role_and_reason(run):
    result = run("window-seat", "--set", "plain")
    assert result.exit_code == 1 and not result.stdout
    assert "/roles/print" in result.stderr and "no patterned face" in result.stderr
    findings = json.loads(run("window-seat", "--set", "plain", "--json").stdout)["findings"]
    assert [(each["code"], each["where"]) for each in findings] == [("no-paper-for-role", "/roles/print")]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("-n", "0"), "1<=x"),
        (("-n", "101"), "1<=x<=100"),
        (("-n", "1.5"), "not a valid integer"),
        (("--start", "3"), "--all only"),
        (("--set", "tow"), "Did you mean “two”?"),
    ],
)
def test_unusable_wishes_are_refused(run, words, told):
    result = run("window-seat", *words)
    assert result.exit_code == 2 and told in result.stderr


def test_json_is_what_the_api_gives(run):
    answer = json.loads(run("window-seat", "--set", "two", "-n", "3", "--json").stdout)
    assert answer["sets"] == ["two"] and len(answer["colourways"]) == 3 and answer["proved"]


@pytest.mark.parametrize(("language", "word"), [("de", "Punkte"), ("fr", "points")])
def test_reasons_are_told_in_other_languages(run, language, word):
    told = run("window-seat", "--set", "two", "-n", "2", "--language", language).stdout
    assert word in told and "The best of" not in told


def test_the_whole_list_is_counted_in_the_language_that_is_named(run):
    assert run("window-seat", "--set", "two", "--all", "--language", "de").stdout.startswith("75 Farbstellungen\n")
