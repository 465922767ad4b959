"""Plans replayed by the checker of the tests, which shares no code with the planner."""

from collections.abc import Sequence

from bench.jobs import Rect, same
from cutting.cutter import cut
from spreadwright.cutting.plan import Plan


def is_cut_right(made: Plan, pieces: Sequence[Rect], may_turn: bool = True) -> bool:
    """Whether the sheets of a plan give just these pieces."""
    parts = [part for sheet in made.sheets for part in cut(sheet.content, sheet.size.width, sheet.size.height)]
    return same([(w, h) for name, w, h in parts if name], pieces, may_turn)
