from pathlib import Path

import pypdfium2
import pytest
from click.testing import CliRunner, Result

from builder import sound, spoilt
from spreadwright.cli import main


@pytest.fixture
def run(tmp_path: Path):
    (tmp_path / "broken.json").write_bytes(spoilt(lambda recipe: recipe["placements"].pop()))
    (tmp_path / "seat.json").write_bytes(sound())

    def run(name: str, *words: str) -> tuple[Result, Path]:
        output = tmp_path / "booklet.pdf"
        result = CliRunner().invoke(main, ["booklet", str(tmp_path / name), "-o", str(output), *words])
        return result, output

    return run


def test_booklet_is_written_whole(run):
    result, output = run("seat.json", "--page", "letter", "--address", "https://albums.example")
    assert result.exit_code == 0 and result.stdout == ""
    assert "writing" in result.stderr and f"wrote {output}" in result.stderr
    document = pypdfium2.PdfDocument(output.read_bytes())
    assert document.get_metadata_dict()["Title"] == "Window seat"
    assert "https://albums.example/recipes/seat" in document[0].get_textpage().get_text_bounded()


def test_recipe_with_errors_is_refused_with_its_findings(run):
    result, output = run("broken.json")
    assert result.exit_code == 1 and "[piece-not-placed]" in result.stderr and not output.exists()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--page", "a7"), "'a4', 'letter'"),
        (("--language", "tlh"), "'en'"),
        (("--address", "albums"), "https://albums.example/"),
        (("-o", "booklet.png"), "should end in .pdf"),
        (("--set", "windfal"), "windfall"),
    ],
)
def test_what_cannot_be_is_refused_with_what_can(run, words, said):
    result, output = run("seat.json", *words)
    assert result.exit_code == 2 and said in result.stderr and not output.exists()
