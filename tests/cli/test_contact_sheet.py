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
    (tmp_path / "broken.json").write_bytes(spoilt(lambda recipe: recipe.update(title="Torn", placements=[])))
    (tmp_path / "paper-sets" / "two.json").write_text(json.dumps(PAPERS))
    plain = spoilt(lambda d: d["papers"].__delitem__(slice(2, 4)), PAPERS)
    (tmp_path / "paper-sets" / "plain.json").write_bytes(plain)
    return lambda *words: CliRunner().invoke(main, ["--collection", str(tmp_path), *words])


@pytest.mark.parametrize(("suffix", "start"), [("svg", b"<svg"), ("png", b"\x89PNG"), ("pdf", b"%PDF")])
def test_a_sheet_is_written_in_every_form(run, tmp_path, suffix, start):
    file = tmp_path / f"sheet.{suffix}"
    result = run("contact-sheet", "window-seat", "--set", "two", "-n", "2", "--width", "300", "-o", str(file))
    assert result.exit_code == 0 and file.read_bytes().startswith(start)
    assert "Window seat: 2 of 75 colourways" in result.stdout and "two." in result.stdout


def test_the_whole_collection_is_laid_in_one_set(run, tmp_path):
    result = run("contact-sheet", "--set", "two", "-o", str(tmp_path / "set.svg"))
    assert result.exit_code == 0
    assert "Two and two: 1 layout" in result.stdout and "Torn: " in result.stdout


def test_answers_as_json_need_no_file(run):
    answer = json.loads(run("contact-sheet", "window-seat", "-n", "3", "--json").stdout)
    assert [frame["number"] for frame in answer["frames"]] == [1, 2, 3]
    assert [left["name"] for left in answer["left_out"]] == ["Two and two"]


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("window-seat",), 2, "says where the sheet goes"),
        (("window-seat", "-n", "25", "--json"), 2, "1<=x<=24"),
        (("window-seat", "window-seat", "--json"), 2, "name the set"),
        (("window-seat", "-o", "x.gif"), 2, "should end in"),
        (("window-seat", "--set", "plain", "-o", "x.svg"), 1, "no patterned face"),
        (("window-seat", "broken", "--set", "plain", "-o", "x.svg"), 1, "no patterned face"),
        (("nobody", "-o", "x.svg"), 2, "There is no file or recipe"),
    ],
)
def test_what_cannot_be_shown_is_refused(run, words, code, told):
    result = run("contact-sheet", *words)
    assert result.exit_code == code and told in result.stderr


def test_a_strip_is_told_and_drawn(run, tmp_path):
    file = tmp_path / "strip.png"
    result = run("test-strip", "window-seat", "--set", "two", "--width", "300", "-o", str(file))
    assert result.exit_code == 0 and file.read_bytes().startswith(b"\x89PNG")
    assert "As a grey print" in result.stdout and "difference" in result.stdout


def test_a_strip_as_json_has_five_sights(run):
    answer = json.loads(run("test-strip", "window-seat", "--colourway", "two.fog.slate.reed", "--json").stdout)
    assert [each["sight"] for each in answer["sights"]] == ["colour", "grey", "protan", "deutan", "tritan"]
    assert run("test-strip", "window-seat", "--colourway", "two.fog", "--json").exit_code == 2
