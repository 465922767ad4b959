import re
from fractions import Fraction

import pytest

from spreadwright import shipped
from spreadwright.document import pictures, read_any
from spreadwright.drawing.pixels import PIXELS_PER_MM
from spreadwright.errors import Severity
from spreadwright.lengths import Unit, size_text
from spreadwright.model import Basis, Pattern, Texture, basis_weight, rounded
from spreadwright.store.pictures import MOST_BYTES

PAGE = (shipped.folder("site") / "docs" / "papers.md").read_text()
ROWS = re.findall(r"^\| (`[^|]+`) \| ([^|]+) in \| ([\d.]+) g/m² \| (\d+) lb: (\d+) g/m² \|$", PAGE, re.MULTILINE)


def test_example_set_is_sound():
    example = re.search(r"```json\n(.*?)```", PAGE, re.DOTALL)
    assert example
    reading = read_any(example[1].encode())
    assert [(f.code, f.severity) for f in reading.findings] == [("picture-not-sent", Severity.NOTE)]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_pounds_are_as_told(row):
    names, size, factor, pounds, grammage = row
    for basis in (Basis(name) for name in re.findall(r"`([a-z]+)`", names)):
        assert f"{size} in" == size_text(basis.size.width, basis.size.height, Unit.INCH)
        assert f"{float(basis_weight(Fraction(1), basis).grammage):.3f}" == factor
        assert rounded(basis_weight(Fraction(pounds), basis).grammage) == int(grammage)


def test_every_kind_pattern_and_texture_is_told():
    told = set(re.findall(r"`([a-z]+)`", PAGE))
    assert {each.value for kind in (Basis, Pattern, Texture) for each in kind} <= told


def test_bounds_are_as_told():
    flat = " ".join(PAGE.split())
    assert f"{pictures.LONGEST_PX} pixels each way" in flat and "one part in 32" in flat
    assert f"up to {pictures.MOST_BYTES_AS_PNG // 1024} kB" in flat
    assert f"{MOST_BYTES // 1024**2} MB and {pictures.MOST_PICTURE_PIXELS // 10**6} million pixels" in flat
    assert f"{pictures.COARSEST} pixels per inch" in flat
    assert PIXELS_PER_MM == 2 and "two to the millimetre" in flat
