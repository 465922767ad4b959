"""Published instances: the fewest sheets for all pieces."""

import argparse
import time
from collections import Counter
from collections.abc import Callable, Iterator
from functools import partial

from bench.jobs import Job, Row, Target, case_key, clock, percent, published
from bench.verified import is_cut_right
from spreadwright.cutting.planner import plan
from spreadwright.cutting.problem import Problem, Stock, Wanted
from spreadwright.cutting.reporter import Silent
from spreadwright.geometry import Size
from spreadwright.tasks import effort

SETS = ("sheets_small", "sheets_furniture", "sheets_large")
WANTED = {"sheets_small": 98, "sheets_furniture": 90, "sheets_large": 90}


class Watch(Silent):
    """Notes the best number of sheets and the bound; the search need not go on once the known answer is met."""

    def __init__(self, known: int, is_late: Callable[[], bool]) -> None:
        self.known, self.is_late = known, is_late
        self.sheets, self.bound = 0, 0

    def bounded(self, paper: str, lower_bound: int) -> None:
        """A bound of our own."""
        self.bound = lower_bound

    def improved(self, paper: str, cost: int, largest_spare: int) -> None:
        """A better plan."""
        self.sheets = cost

    def is_over(self) -> bool:
        """Whether the time is over or nothing can be gained."""
        return 0 < self.sheets <= max(self.known, self.bound) or self.is_late()


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """All cases of all sets."""
    for name in SETS:
        for record, case in published(name, options.every):
            yield Job(case_key(name, record, case), partial(_measured, name, record, case, options.seconds))


def _measured(name: str, record: Row, case: Row, seconds: float) -> Row:
    known = case["known_optimum"] or case["upper_bound"]
    pieces = [(w, h) for w, h, n, _ in record["items"] for _ in range(n)]
    wanted = tuple(Wanted(str(i), Size(*p), may_turn=case["rotation"]) for i, p in enumerate(pieces))
    begin = time.process_time()
    watch = Watch(known, clock(seconds))
    made = plan(
        Problem(wanted, (Stock(Size(*record["sheet"])),)), effort=effort(seconds), is_over=watch.is_over, reporter=watch
    )
    took = time.process_time() - begin
    assert is_cut_right(made, pieces, case["rotation"])
    ours, bound = len(made.sheets), made.certificates[0][1].lower_bound
    assert bound <= known, "the bound is above a known plan"
    row = {"set": name, "name": record["name"], "turn": case["rotation"], "pieces": len(pieces), "seconds": took}
    return {**row, "ours": ours, "known": known, "gap": ours - known, "bound": bound}


def table(rows: list[Row]) -> Iterator[str]:
    """A line for each set with and without turning, and each case that is not met."""
    yield "set               pieces    cases  equal to known  sheets above known      proved  seconds, longest"
    for name in SETS:
        for turn in (False, True):
            some = [r for r in rows if r["set"] == name and r["turn"] == turn]
            if some:
                equal, proved = sum(r["gap"] <= 0 for r in some), sum(r["bound"] == r["ours"] for r in some)
                over = ", ".join(f"{n} x {gap:+}" for gap, n in sorted(Counter(r["gap"] for r in some).items()) if gap)
                label = f"{name:17} {'may turn' if turn else 'fixed':8} {len(some):>6}"
                longest = max(r["seconds"] for r in some)
                yield f"{label}  {percent(equal, len(some)):>14}  {over or '-':22}  {proved:>6}  {longest:>16.1f}"
    for row in rows:
        if row["gap"] > 0:
            turn = "may turn" if row["turn"] else "fixed"
            yield f"above: {row['set']} {row['name']} {turn}: {row['ours']}, known {row['known']}"


def targets(rows: list[Row]) -> Iterator[Target]:
    """Shares equal to the known number, and the worst."""
    for name, share in WANTED.items():
        some = [r for r in rows if r["set"] == name]
        if some:
            equal, worst = sum(r["gap"] <= 0 for r in some), max(r["gap"] for r in some)
            reached = f"{100 * equal / len(some):.1f} %"
            yield Target(f"{name}: known number of sheets", f"{share} %", reached, 100 * equal >= share * len(some))
            yield Target(f"{name}: sheets above it at most", "1", str(worst), worst <= 1)
