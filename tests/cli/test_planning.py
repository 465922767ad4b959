import json
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from spreadwright.cli import main
from spreadwright.cli.patience import Patience
from spreadwright.document import canonical, pieces_in_short

PAGE = "7x7 left, 3 1/2x5 *2 right, 5x6 *2 tile"
PINWHEEL = "70x30, 26x60, 60x36, 36x66, 34x30"


@pytest.fixture
def run(tmp_path: Path):
    def run(*words: str, stdin: bytes | None = None) -> Result:
        result = CliRunner().invoke(main, ["plan", *words], input=stdin)
        assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
        return result

    return run


def test_a_list_in_short_is_planned_in_words(run):
    result = run(PAGE, "--stock", "12x12*2")
    assert result.exit_code == 0
    assert result.stdout.startswith("Pieces: 1 sheet, nothing left over\n\nSheet 1 (paper, 12 × 12 in)\n  column ")
    assert "2 rows, each 6 in high: “tile”" in result.stdout and "\nProved: " in result.stdout
    assert "at least 1 needed" in result.stderr and "stopped" not in result.stderr


def test_a_document_gives_the_same_from_a_file_and_from_standard_input(run, tmp_path):
    data = canonical(pieces_in_short(PAGE))
    (tmp_path / "page.json").write_bytes(data)
    found = [run(PAGE), run(str(tmp_path / "page.json")), run("-", stdin=data)]
    assert len({result.stdout for result in found}) == 1 and found[0].exit_code == 0


def test_a_recipe_is_planned_as_a_whole_recipe(run):
    answer = json.loads(run("rain-until-four", "--json").stdout)
    (made,) = answer["plans"]
    assert made["optimal"] and made["recipe"]["schema"] == "recipe/1"
    assert made["recipe"]["sheets"] == made["sheets"]


def test_stock_of_a_document_gives_way_to_that_of_the_command(run):
    answer = json.loads(run("-", "--stock", "8x8", "--json", stdin=canonical(pieces_in_short("7x7 *2"))).stdout)
    assert answer["plans"][0]["sheet_count"] == 2


def test_explanation_says_what_binds(run):
    words = run("7x7 *3", "--explain").stdout
    assert "What binds:" in words and "By their sides they need at least 3 sheets" in words


def test_several_plans_are_numbered(run):
    words = run(PAGE, "-n", "2").stdout
    assert "Pieces, plan 1: 1 sheet" in words and "Pieces, plan 2: 1 sheet" in words


def test_what_is_impossible_is_exit_code_1_with_its_causes(run):
    result = run(PINWHEEL, "--stock", "96x96*1")
    assert result.exit_code == 1 and result.stdout == ""
    assert "There is no plan: 1 error" in result.stderr and "[no-through-cuts]" in result.stderr
    answer = json.loads(run("13x13 big", "--json").stdout)
    assert answer["impossible"] and answer["findings"][0]["code"] == "piece-larger-than-stock"


def test_a_search_that_finds_nothing_in_time_is_exit_code_2(run, monkeypatch):
    monkeypatch.setattr(Patience, "is_over", lambda self: True)
    result = run(PINWHEEL, "--stock", "96x96*1")
    assert result.exit_code == 2 and "that proves nothing" in result.stderr


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["7x7, 0x5"], "Piece 2, “0x5”, has a side of “0”"),
        (["7x7", "--stock", "12"], "Sheet 1, “12”, has no width and height"),
        (["7x7", "--stock", "12x12!"], "A sheet carries “!”"),
        (["rain-until-for"], "Did you mean “rain-until-four”?"),
        (["7x7", "--bench", "bench-inhc"], "Did you mean “bench-inch”?"),
        (["7x7", "--seconds", "0"], "--seconds"),
        (["7x7", "-o", "plan.gif"], "should end in .svg"),
        (["-"], "no JSON"),
    ],
)
def test_unusable_input_is_exit_code_2(run, words, told):
    result = run(*words, stdin=b"{")
    assert result.exit_code == 2 and result.stdout == "" and told in result.stderr


def test_faults_of_a_document_are_findings(run):
    result = run("-", stdin=b'{"schema": "pieces/1", "unit": "in", "pieces": [], "stock": [{"size": ["0", "7"]}]}')
    assert result.exit_code == 1 and "/stock/0/size/0" in result.stderr
    assert run("1x1 *10000").exit_code == 1


def test_the_sheets_are_drawn_beside_the_words(run, tmp_path):
    result = run(PAGE + ", 12x12 base", "-o", str(tmp_path / "plan.svg"))
    assert result.exit_code == 0 and result.stdout.startswith("Pieces: 2 sheets")
    assert sorted(file.name for file in tmp_path.iterdir()) == ["plan-1.svg", "plan-2.svg"]


def test_the_first_interruption_ends_patience_and_the_second_everything():
    with Patience(60) as patience:
        assert not patience.is_over() and not patience.has_ended
        signal.raise_signal(signal.SIGINT)
        assert patience.is_over() and patience.has_ended
        with pytest.raises(KeyboardInterrupt):
            signal.raise_signal(signal.SIGINT)


def test_an_interrupted_search_gives_the_best_so_far():
    pieces = ", ".join(f"{3 + n % 7} {1 + n % 5}/8x{2 + n % 5} {1 + n % 7}/8 p{n}" for n in range(70))
    command = [sys.executable, "-m", "spreadwright", "plan", pieces, "--seconds", "600"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as search:
        while "found" not in (line := search.stderr.readline()):
            assert line
        time.sleep(0.2)
        search.send_signal(signal.SIGINT)
        words, told = search.communicate(timeout=60)
    assert search.returncode == 0 and "stopped after" in told
    assert words.startswith("Pieces: ") and "Open (" in words


def test_other_commands_start_without_the_search():
    code = "import sys; from spreadwright.cli import main; print([m for m in sys.modules if 'cutting.search' in m])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "[]\n"


def draft():
    return canonical(
        {
            "schema": "recipe/1",
            "title": "One square",
            "unit": "in",
            "spread": {"pages": ["page"], "size": ["12", "12"]},
            "roles": {"background": {"kind": "plain"}, "mat": {"kind": "any"}},
            "placements": [
                {"piece": "base", "page": "page", "left": "0", "top": "0", "size": ["12", "12"], "role": "background"},
                {"piece": "square-1", "page": "page", "left": "0", "top": "0", "size": ["6", "6"], "role": "mat"},
                {"piece": "square-2", "page": "page", "right": "0", "top": "0", "size": ["6", "6"], "role": "mat"},
            ],
        }
    )


def test_a_recipe_without_sheets_is_written_with_them(run, tmp_path):
    output = tmp_path / "whole.json"
    result = run("-", "--stock", "12x12", "-o", str(output), stdin=draft())
    assert result.exit_code == 0 and f"wrote {output}" in result.stderr
    checked = CliRunner().invoke(main, ["check", str(output)])
    assert checked.exit_code == 0 and "no findings" in checked.stdout
    written = json.loads(output.read_text())
    assert [sheet["role"] for sheet in written["sheets"]] == ["background", "mat"]
    assert "size" not in written["placements"][0]


def test_a_list_of_pieces_is_no_recipe_to_write(run, tmp_path):
    result = run(PAGE, "-o", str(tmp_path / "whole.json"))
    assert result.exit_code == 2 and "--json prints its cut trees" in result.stderr
    assert not list(tmp_path.iterdir())


def test_explained_sheets_are_drawn_in_characters(run):
    result = run("6x12 *2 half", "--stock", "12x12", "--explain")
    assert "  ┌" + "─" * 23 + "┬" + "─" * 23 + "┐\n" in result.stdout and "half 6 × 12 in" in result.stdout
    assert "┌" not in run("6x12 *2 half", "--stock", "12x12").stdout
