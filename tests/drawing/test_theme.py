import pytest

from spreadwright.drawing import theme
from spreadwright.drawing.tint import channels


def _luminance(colour: str) -> float:
    """Relative luminance, WCAG 2."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (v / 255 for v in channels(colour))]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("colour", [theme.INK, theme.ACCENT, theme.WARNING, theme.QUIET])
def test_words_stand_out_from_the_paper(colour: str):
    assert (_luminance(theme.PAPER) + 0.05) / (_luminance(colour) + 0.05) >= 4.5


def test_type_sizes_grow_by_a_quarter():
    steps = zip(theme.SIZES, theme.SIZES[1:], strict=False)
    assert all(larger / smaller == pytest.approx(1.25, abs=0.001) for smaller, larger in steps)
