import json

import pytest
from click.testing import CliRunner

from builder import sound, spoilt
from spreadwright.cli import main


@pytest.fixture
def run(tmp_path):
    (tmp_path / "seat.json").write_bytes(sound())
    (tmp_path / "broken.json").write_bytes(spoilt(lambda recipe: recipe["placements"].pop()))
    return lambda name, *words: CliRunner().invoke(main, ["tolerance", str(tmp_path / name), *words])


def test_every_piece_has_a_row_for_each_direction(run):
    result = run("seat.json")
    assert result.exit_code == 0
    assert result.stdout.count("  Width   ") == result.stdout.count("  Height  ") == 11
    assert "± 1/64 in" in result.stdout and "no findings" in result.stdout


def test_metric_bench_speaks_millimetres(run):
    assert "up to 0.5 mm from its reading" in run("seat.json", "--bench", "bench-metric").stdout


def test_json_holds_the_numbers_behind_the_words(run):
    answer = json.loads(run("seat.json", "--json").stdout)
    panel = next(piece for piece in answer["pieces"] if piece["id"] == "panel")
    assert answer["accuracy"] == {"ticks": 127, "text": "1/64 in"}
    assert panel["width"]["worst"]["ticks"] == sum(abs(c["times"]) for c in panel["width"]["cuts"]) * 127


def test_recipe_with_errors_is_refused(run):
    result = run("broken.json")
    assert result.exit_code == 1 and "[piece-not-placed]" in result.stderr


@pytest.mark.parametrize(
    ("language", "heading", "severity"),
    [
        ("de", "Was schiefgehen könnte: 1 Hinweis", "Hinweis "),
        ("fr", "Ce qui pourrait mal tourner\u00a0: 1 remarque", "remarque "),
    ],
)
def test_findings_are_counted_and_named_in_the_language_that_is_spoken(language, heading, severity):
    words = ["tolerance", "rain-until-four", "--bench", "bench-metric", "--language", language]
    told = CliRunner().invoke(main, words).stdout
    assert heading in told and f"  {severity:8}" in told


def test_nothing_to_find_is_said_in_the_language_that_is_spoken(run):
    assert "Was schiefgehen könnte: nichts zu beanstanden" in run("seat.json", "--language", "de").stdout
