import json
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder import PAPERS, sound, spoilt
from spreadwright.cli import main

REPOSITORY = Path(__file__).parents[2]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A collection of one sound recipe, one broken one and one paper set, with the shipped benches."""
    (tmp_path / "paper-sets").mkdir()
    (tmp_path / "benches").symlink_to(REPOSITORY / "recipes" / "benches")
    (tmp_path / "window-seat.json").write_bytes(sound())
    (tmp_path / "broken.json").write_bytes(spoilt(lambda d: d["placements"].pop()))
    (tmp_path / "paper-sets" / "two.json").write_text(json.dumps(PAPERS))
    return tmp_path


@pytest.fixture
def run(folder: Path):
    def run(*words: str, stdin: bytes | None = None) -> Result:
        result = CliRunner().invoke(main, ["--collection", str(folder), *words], input=stdin)
        assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
        return result

    return run


def test_check_says_fine_with_exit_code_0(run):
    result = run("check", "window-seat")
    assert (result.exit_code, result.stdout) == (0, "window-seat: no findings\n")


def test_check_lists_findings_with_exit_code_1(run):
    result = run("check", "broken", "window-seat")
    assert result.exit_code == 1
    assert "broken: 1 error" in result.stdout and "[piece-not-placed]" in result.stdout


def test_check_reads_standard_input_and_files(run, folder):
    assert run("check", "-", stdin=sound()).exit_code == 0
    assert run("check", str(folder / "broken.json")).exit_code == 1


def test_check_as_json_is_what_the_api_gives(run):
    answer = json.loads(run("check", "broken", "--json").stdout)
    assert answer["kind"] == "recipe" and answer["fine"] is False
    assert set(answer["findings"][0]) == {"code", "severity", "where", "message", "remedy"}
    assert len(json.loads(run("check", "broken", "window-seat", "--json").stdout)) == 2


def test_check_with_a_set_that_does_not_fit(run):
    result = run("check", "window-seat", "--colourway", "two.fog.rope.reed")
    assert result.exit_code == 1 and "role-wrong-kind" in result.stdout


@pytest.mark.parametrize(
    "data",
    [b"", b"no", b"[" * 10_000, b'{"a": NaN}', b'{"a": 1, "a": 2}', b'{"a": "\\ud800"}', b" " * 50_000_000, b"\xff"],
    ids=lambda data: data[:12],
)
@pytest.mark.parametrize("verb", ["check", "cut", "place"])
def test_unusable_input_is_exit_code_2_and_one_line(run, verb, data):
    result = run(verb, "-", stdin=data)
    assert result.exit_code == 2 and result.stdout == ""
    assert result.stderr.startswith("spreadwright: ") and result.stderr.count("\n") == 1


@pytest.mark.parametrize("verb", ["cut", "place"])
def test_recipe_with_errors_is_refused_with_its_findings(run, verb):
    result = run(verb, "broken")
    assert result.exit_code == 1 and result.stdout == "" and "piece-not-placed" in result.stderr


def test_unreadable_document_hides_none_of_the_others(run, folder):
    (folder / "torn.txt").write_text("{")
    result = run("check", str(folder / "torn.txt"), "broken", "window-seat")
    assert result.exit_code == 2
    assert "torn.txt: This is no JSON" in result.stderr
    assert "broken: 1 error" in result.stdout and "window-seat: no findings" in result.stdout
    answers = json.loads(run("check", str(folder / "torn.txt"), "window-seat", "--json").stdout)
    assert [each["fine"] for each in answers] == [False, True]
    assert answers[0]["findings"][0]["code"] == "unreadable"


def test_json_of_a_refusal_is_a_report(run):
    answer = json.loads(run("cut", "broken", "--json").stdout)
    assert answer["fine"] is False and answer["findings"][0]["code"] == "piece-not-placed"


def test_metric_recipe_is_cut_on_a_metric_bench(run, folder):
    (folder / "metric.json").write_bytes(spoilt(_in_centimetres))
    assert run("check", "metric").stdout == "metric: no findings\n"
    assert "millimetre scale" in run("cut", "metric").stdout


def _in_centimetres(document):
    document["unit"] = "cm"
    document["spread"] = {"pages": ["page"], "size": ["30", "30"]}
    document["sheets"] = [
        {"role": "plain", "size": ["30", "30"], "columns": [{"width": "15", "piece": "mat", "times": 2}]}
    ]
    document["placements"] = [
        {"piece": "mat-1", "page": "page", "left": "0", "top": "0"},
        {"piece": "mat-2", "page": "page", "right": "0", "top": "0"},
    ]
    document["photos"], document["captions"], document["roles"] = [], [], {"plain": {"kind": "plain"}}


def test_unreadable_file_of_the_collection_keeps_its_reason(run, folder):
    (folder / "huge.json").write_bytes(b" " * 2_000_000)
    assert "more than 1,048,576 bytes" in run("check", "huge").stderr


def test_name_longer_than_any_file_is_unknown(run):
    result = run("check", "a" * 5000)
    assert result.exit_code == 2 and "There is no file or recipe" in result.stderr


def test_list_ends_where_the_colourways_end(run):
    result = run("colourways", "window-seat", "--set", "two", "--all", "--start", "9" * 20)
    assert result.exit_code == 0 and result.stdout.endswith(" colourways\n")


def test_first_set_that_fits_is_drawn_when_none_is_named(run, folder, tmp_path):
    plain = spoilt(lambda d: d["papers"].__delitem__(slice(2, 4)), PAPERS)
    (folder / "paper-sets" / "a-plain.json").write_bytes(plain)
    assert run("draw", "window-seat", "-o", str(tmp_path / "spread.svg")).exit_code == 0
    assert "Two and two" in (tmp_path / "spread.svg").read_text()


def test_full_disk_is_one_line_and_exit_code_2():
    command = [sys.executable, "-m", "spreadwright", "check", "rain-until-four"]
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 2 and done.stderr.count("\n") == 1 and "No space left" in done.stderr


def test_ctrl_c_is_exit_code_130(run, monkeypatch):
    def stop(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("spreadwright.tasks.cut", stop)
    result = run("cut", "window-seat")
    assert (result.exit_code, result.stderr) == (130, "spreadwright: stopped.\n")


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (["check", "window-set"], "“window-seat”"),
        (["cut", "window-seat", "--bench", "bench-inhc"], "“bench-inch”"),
        (["colourways", "window-seat", "--set", "tow"], "Did you mean “two”?"),
        (["draw", "window-seat", "--colourway", "two.fog", "-o", "x.svg"], "two.background.plain.print"),
    ],
)
def test_unknown_name_hints_at_the_nearest(run, words, hint):
    result = run(*words)
    assert result.exit_code == 2 and hint in result.stderr


def test_cut_writes_cautions_before_steps(run):
    lines = run("cut", "window-seat").stdout.splitlines()
    assert lines[0] == "Window seat: 4 sheets, 7 cuts"
    first_step = next(i for i, line in enumerate(lines) if line.lstrip().startswith("1."))
    assert any("latch the arm" in line for line in lines[:first_step])
    assert "Pile of the right page" in "\n".join(lines)


def test_place_lists_pieces_and_photos(run):
    out = run("place", "window-seat").stdout
    assert "Glue “panel” (B), 7 × 7 in, onto the left page.\n" in out
    assert "Left edge: flush with the edge of the page.\n      Top edge: flush with the edge of the page." in out
    assert "photo-safe" in out and "archival" not in out
    assert "\n\nPhotographs\n  Photo on “panel”" in out and "\n  Photo on “mat-1”: 3 1/4 × 4 3/4 in" in out


def test_same_steps_in_another_unit(run):
    out = run("cut", "window-seat", "--bench", "bench-metric").stdout
    assert "Set the scale to 178 mm for the part that stays, and cut." in out


def test_json_of_cuts_and_placement(run):
    cuts = json.loads(run("cut", "window-seat", "--json").stdout)
    assert len(cuts["steps"]) == 7 and cuts["steps"][0]["reading"]["text"] == "7 in"
    placement = json.loads(run("place", "window-seat", "--json").stdout)
    assert [step["number"] for step in placement["steps"]] == list(range(1, 12))


def test_colourways_page_through_the_list(run):
    everything = json.loads(run("colourways", "window-seat", "--set", "two", "--all", "-n", "1000", "--json").stdout)
    part = json.loads(
        run("colourways", "window-seat", "--set", "two", "--all", "-n", "2", "--start", "3", "--json").stdout
    )
    assert everything["count"] == len(everything["colourways"])
    assert part["colourways"] == everything["colourways"][3:5]


@pytest.mark.parametrize(("what", "written"), [("spread", 1), ("placement", 1), ("cut-sheets", 4)])
def test_draw_writes_whole_files(run, tmp_path, what, written):
    out = tmp_path / "out"
    out.mkdir()
    for suffix, magic in (("svg", b"<svg"), ("png", b"\x89PNG"), ("pdf", b"%PDF")):
        assert run("draw", "window-seat", "--what", what, "-o", str(out / f"p.{suffix}")).exit_code == 0
        found = sorted(out.glob(f"*.{suffix}"))
        assert len(found) == (1 if suffix == "pdf" else written)
        assert all(file.read_bytes().startswith(magic) for file in found)


def test_draw_leaves_nothing_behind_when_it_fails(run, tmp_path):
    assert run("draw", "broken", "-o", str(tmp_path / "p.svg")).exit_code == 1
    assert run("draw", "window-seat", "-o", str(tmp_path / "p.gif")).exit_code == 2
    nowhere = run("draw", "window-seat", "-o", str(tmp_path / "no" / "p.svg"))
    assert nowhere.exit_code == 2 and "No such file or directory" in nowhere.stderr
    assert not list(tmp_path.glob("**/*p.*"))


def test_package_starts_without_its_heavy_libraries():
    code = "import sys, spreadwright.cli; print([m for m in ('mkdocs', 'flask', 'gunicorn') if m in sys.modules])"
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert out == "[]\n"
