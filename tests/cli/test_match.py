"""The command `match`."""

import json
import re

import pytest
from click.testing import CliRunner

import photographs
from spreadwright.cli import main


@pytest.fixture
def photos(tmp_path):
    for name, make in photographs.ALL.items():
        (tmp_path / f"{name}.jpg").write_bytes(photographs.as_jpeg(make()))
    return tmp_path


def run(*words):
    return CliRunner().invoke(main, ["match", *map(str, words)])


def test_colours_and_sets_are_listed(photos):
    result = run(photos / "beach.jpg")
    assert result.exit_code == 0
    assert re.search(r"#\w+ +red +1 %", result.stdout)
    assert "Paper sets that suit them" in result.stdout and "(shingle-and-sail)" in result.stdout


def test_a_recipe_says_which_photo_lies_where(photos):
    result = run(photos / "beach.jpg", photos / "portrait.jpg", "--recipe", "rain-until-four", "-n", "2")
    assert result.exit_code == 0
    assert "Photos in their mats" in result.stdout and "portrait.jpg" in result.stdout
    assert "[mat-left-empty]" in result.stdout


def test_json_is_what_the_api_answers(photos):
    answer = json.loads(run(photos / "beach.jpg", "--recipe", "rain-until-four", "--set", "windfall", "--json").stdout)
    assert answer["recipe"] == "rain-until-four"
    assert {suit["set"] for suit in answer["suits"]} == {"windfall"}
    assert answer["in_mats"][0]["name"] == "beach.jpg"


def test_pictures_are_written(photos, tmp_path):
    preview, sheet = tmp_path / "spread.png", tmp_path / "colours.svg"
    result = run(photos / "beach.jpg", "--recipe", "rain-until-four", "--preview", preview, "-o", sheet, "--width", 400)
    assert result.exit_code == 0
    assert preview.read_bytes().startswith(b"\x89PNG") and sheet.read_bytes().startswith(b"<svg")


def test_a_focus_is_heeded(photos):
    words = (photos / "beach.jpg", "--recipe", "rain-until-four", "--json", "--focus")
    crops = [json.loads(run(*words, focus).stdout)["in_mats"][0]["crop"] for focus in ("0,0", "beach.jpg=100,100")]
    assert crops[0] != crops[1]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--preview", "x.png"], "goes with --recipe only"),
        (["--recipe", "rain-until-four", "--preview", "x.bmp"], "Invalid value for --preview: “x.bmp” should end in"),
        (["-o", "x.bmp"], "Invalid value for --output: “x.bmp” should end in"),
        (["--focus", "here"], "is not a point"),
        (["--focus", "sea.jpg=1,1"], "none of the photos"),
        (["-n", "0"], "0 is not in the range"),
    ],
)
def test_wrong_options_are_refused(photos, words, said):
    result = run(photos / "beach.jpg", *words)
    assert result.exit_code == 2 and said in result.stderr


def test_what_is_no_photo_is_refused_by_name(photos):
    (photos / "notes.txt").write_text("no photo")
    for name in ("notes.txt", "gone.jpg", "."):
        result = run(photos / "beach.jpg", photos / name)
        assert result.exit_code == 2 and str(name) in result.stderr
        assert not result.stdout


def test_too_many_photos_are_refused(photos):
    result = run(*[photos / "beach.jpg"] * 25)
    assert result.exit_code == 2 and "at most 24" in result.stderr


def test_it_speaks_german(photos):
    assert "Farben der Fotos" in run(photos / "beach.jpg", "--language", "de").stdout
