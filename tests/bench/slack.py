"""Dissections with pieces taken away: sheets against the bound, and how far the spares are gathered."""

import argparse
import time
from collections.abc import Iterator
from functools import partial
from statistics import median

from bench.dissections import SHEET, dissection, without_some
from bench.jobs import Job, Row, Target, clock, percent
from bench.verified import is_cut_right
from spreadwright.cutting.planner import plan
from spreadwright.cutting.problem import Problem, Stock, Wanted
from spreadwright.geometry import Size
from spreadwright.tasks import effort

SHARES = (0.05, 0.1, 0.15, 0.2, 0.25)
SHEETS = (1, 2, 4)


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """As many instances as are asked for."""
    for number in range(options.count):
        yield Job(f"seed {options.seed + number}", partial(_measured, number, options.seed + number, options.seconds))


def _measured(number: int, seed: int, seconds: float) -> Row:
    share, sheets = SHARES[number % len(SHARES)], SHEETS[number % len(SHEETS)]
    pieces = without_some(dissection(sheets, 20 + number % 31, seed), share, seed)
    wanted = tuple(Wanted(str(i), Size(*p)) for i, p in enumerate(pieces))
    begin = time.process_time()
    made = plan(Problem(wanted, (Stock(Size(SHEET, SHEET)),)), effort=effort(seconds), is_over=clock(seconds))
    took = time.process_time() - begin
    assert is_cut_right(made, pieces)
    left = sum(s.area for s in made.spares)
    gathered = made.spares[0].area / left if left else 1.0
    return {"share": share, "sheets": sheets, "optimal": made.is_optimal, "gathered": gathered, "seconds": took}


def table(rows: list[Row]) -> Iterator[str]:
    """A line for each share that was taken away."""
    yield "removed  instances  proved fewest  largest spare, median  seconds, median"
    for share in SHARES:
        some = [r for r in rows if r["share"] == share]
        if some:
            gathered, took = median(r["gathered"] for r in some), median(r["seconds"] for r in some)
            proved = percent(sum(r["optimal"] for r in some), len(some))
            yield f"{100 * share:5.0f} %  {len(some):>9}  {proved:>13}  {100 * gathered:>19.0f} %  {took:>15.1f}"


def targets(rows: list[Row]) -> Iterator[Target]:
    """Sheets proved fewest, and the share of the largest spare."""
    if rows:
        proved, gathered = sum(r["optimal"] for r in rows), median(r["gathered"] for r in rows)
        yield Target(
            "5-25 % removed: sheets proved fewest", "95 %", percent(proved, len(rows)), proved >= 0.95 * len(rows)
        )
        yield Target("largest spare of all that is left, median", "60 %", f"{100 * gathered:.0f} %", gathered >= 0.6)
