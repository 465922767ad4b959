import csv
import json
from io import StringIO
from zipfile import ZipFile

import ezdxf
import pypdfium2
import pytest
from click.testing import CliRunner

from builder import sound, spoilt
from spreadwright.cli import main


@pytest.fixture
def run(tmp_path):
    (tmp_path / "seat.json").write_bytes(sound())
    (tmp_path / "broken.json").write_bytes(spoilt(lambda recipe: recipe["placements"].pop()))
    return lambda verb, name, *words: CliRunner().invoke(main, [verb, str(tmp_path / name), *map(str, words)])


def test_photos_are_told_with_the_wide_border_beside(run):
    result = run("photos", "seat.json")
    assert result.exit_code == 0
    assert "3 1/4 × 4 3/4 in" in result.stdout and "3 × 4 1/2 in" in result.stdout
    assert "975 × 1425, 488 × 713" in result.stdout


def test_photos_are_told_in_the_language_that_is_asked_for(run):
    told = run("photos", "seat.json", "--language", "de").stdout
    assert "Rand" in told and "11,8 %" in told and "Border" not in told


def test_photos_with_one_border_for_all(run):
    answer = json.loads(run("photos", "seat.json", "--border", "wide", "--json").stdout)
    assert {photo["border"]["text"] for photo in answer["photos"]} == {"1/4 in"}


def test_photos_as_a_table(run):
    rows = list(csv.DictReader(StringIO(run("photos", "seat.json", "--csv").stdout)))
    assert {row["mat"] for row in rows} == {"panel", "mat-1", "mat-2"}


def test_border_wider_than_a_mat_is_refused(run):
    result = run("photos", "seat.json", "--border", "wider")
    assert result.exit_code == 2 and "wide" in result.stderr


def test_pieces_go_to_standard_output_or_to_a_file(run, tmp_path):
    shown = run("pieces", "seat.json").stdout_bytes
    assert run("pieces", "seat.json", "-o", tmp_path / "pieces.csv").exit_code == 0
    assert (tmp_path / "pieces.csv").read_bytes() == shown and shown.startswith(b"mark,name,sheet,page,width_mm")
    assert len(json.loads(run("pieces", "seat.json", "--json").stdout)["pieces"]) == 11


def test_cut_paths_fill_a_folder(run, tmp_path):
    assert run("cut-paths", "seat.json", "-o", tmp_path / "paths").exit_code == 0
    names = sorted(path.name for path in (tmp_path / "paths").iterdir())
    assert names == sorted(["pieces.csv", *(f"sheet-{n}.{form}" for n in range(1, 5) for form in ("svg", "dxf"))])
    assert ezdxf.readfile(tmp_path / "paths" / "sheet-3.dxf").units == ezdxf.units.MM


def test_cut_paths_of_one_sheet_in_one_format(run, tmp_path):
    run("cut-paths", "seat.json", "--sheet", 4, "--format", "svg", "-o", tmp_path / "one")
    assert sorted(path.name for path in (tmp_path / "one").iterdir()) == ["pieces.csv", "sheet-4.svg"]
    run("cut-paths", "seat.json", "--sheet", 4, "-o", tmp_path / "four.svg")
    assert (tmp_path / "four.svg").read_bytes() == (tmp_path / "one" / "sheet-4.svg").read_bytes()


def test_cut_paths_as_an_archive(run, tmp_path):
    assert run("cut-paths", "seat.json", "-o", tmp_path / "all.zip").exit_code == 0
    assert len(ZipFile(tmp_path / "all.zip").namelist()) == 9


@pytest.mark.parametrize("words", [[], ["-o", "paths.pdf"], ["--sheet", "9", "-o", "nine.svg"]])
def test_what_cannot_be_written_is_refused(run, words):
    assert run("cut-paths", "seat.json", *words).exit_code == 2


def test_templates_are_written_on_the_paper_that_is_asked_for(run, tmp_path):
    result = run("templates", "seat.json", "--page", "letter", "-o", tmp_path / "full.pdf")
    assert result.exit_code == 0, result.stderr
    document = pypdfium2.PdfDocument((tmp_path / "full.pdf").read_bytes())
    assert len(document) == 9 and document.get_page_size(0) == pytest.approx((612, 792), abs=0.02)
    assert run("templates", "seat.json", "-o", tmp_path / "full.svg").exit_code == 2


@pytest.mark.parametrize("verb", ["photos", "pieces", "cut-paths", "templates"])
def test_recipe_with_errors_is_refused(run, verb, tmp_path):
    more = [] if verb in ("photos", "pieces") else ["-o", tmp_path / "out.pdf" if verb == "templates" else tmp_path]
    result = run(verb, "broken.json", *more)
    assert result.exit_code == 1 and "[piece-not-placed]" in result.stderr
