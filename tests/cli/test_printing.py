"""Findings as text for people."""

import pytest

from spreadwright.cli.printing import print_findings
from spreadwright.errors import warning


@pytest.mark.parametrize("letters", range(60, 100))
@pytest.mark.parametrize("size", ["2 5/8 in", "17.5 cm"])
def test_no_line_ends_within_a_length(capsys, letters, size):
    print_findings("a", [warning("code", "/here", f"{'x' * letters} {size}.", "Mend it.")])
    lines = capsys.readouterr().out.splitlines()
    assert not any(line.endswith(("2", "5/8", "17.5")) for line in lines)
    assert size in " ".join(line.strip() for line in lines)
