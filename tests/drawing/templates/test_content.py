import pytest

from builder import sound
from spreadwright.document import read_recipe
from spreadwright.drawing.booklet import Format
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.templates.content import break_sign, content
from spreadwright.drawing.templates.plan import TemplatePlan, leaves_of
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size
from spreadwright.model import INCH_BENCH
from spreadwright.tasks.templates import template_plan


@pytest.fixture(scope="module")
def plan() -> TemplatePlan:
    return template_plan(read_recipe(sound()), INCH_BENCH, Format.A4)


def breaks(monkeypatch, plan: TemplatePlan) -> list[tuple[int, tuple[int, int]]]:
    """The number of the printed page and the place of every break sign."""
    found = []
    for leaf in leaves_of(plan):
        monkeypatch.setattr(
            "spreadwright.drawing.templates.content.break_sign",
            lambda _canvas, at, *, is_level, leaf=leaf: found.append((leaf.number, at)),
        )
        content(Canvas(plan.page_size, title=""), plan, leaf)
    return found


def test_dimension_that_is_cut_by_the_end_of_a_tile_is_broken_off_there(monkeypatch, plan):
    found = breaks(monkeypatch, plan)
    leaves = {leaf.number: leaf for leaf in leaves_of(plan)}
    edges = {x for each in plan.placed for x in (each.rect.left, each.rect.right, each.rect.top, each.rect.bottom)}
    assert found
    for number, at in found:
        assert at[0] not in edges or at[1] not in edges
        assert leaves[number].tile.core.inset(MM).contains(Rect(*at, 0, 0))


def test_break_sign_stands_across_its_line():
    level, upright = (Canvas(Size(20 * MM, 20 * MM), title="") for _ in range(2))
    break_sign(level, (10 * MM, 10 * MM), is_level=True)
    break_sign(upright, (10 * MM, 10 * MM), is_level=False)
    assert level.outline() != upright.outline() and "path" in level.outline()[-1]
