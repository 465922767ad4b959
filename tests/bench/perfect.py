"""Random dissections without scrap, beside a packing library and a constraint solver on the same instances."""

import argparse
import time
from collections.abc import Iterator
from functools import partial
from itertools import product
from statistics import median

from bench.dissections import SHEET, dissection
from bench.jobs import Job, Rect, Row, Target, clock, percent, same
from bench.others import cp_sat_time, rectpack_fits
from cutting.cutter import cut_block
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.kinds import kind, stock

CLASSES = ((12, 20), (21, 30), (31, 40), (41, 60))
SHEETS = (1, 2, 4)
TIMES = (0.5, 2.0, 10.0)
WANTED = {
    (12, 20): (100, 100, 100),
    (21, 30): (98, 100, 100),
    (31, 40): (90, 95, 99),
    (41, 60): (0, 70, 85),
}
"""Shares in percent that are to be solved within each of the times."""

CP_SAT_SECONDS = 10.0


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """All instances; the classes take turns, so that a run that is stopped early is fair to each."""
    for number in range(options.count):
        for (fewest, most), sheets in product(CLASSES, SHEETS):
            key = f"{fewest}-{most} pieces, {sheets} sheets, seed {options.seed + number}"
            count = fewest + number * 7 % (most - fewest + 1)
            yield Job(key, partial(_measured, fewest, most, sheets, count, options.seed + number, options))


def _measured(fewest: int, most: int, sheets: int, count: int, seed: int, options: argparse.Namespace) -> Row:
    pieces = dissection(sheets, count, seed)
    row: Row = {"class": [fewest, most], "sheets": sheets, "seed": seed, "pieces": len(pieces)}
    row["seconds"] = fit_time(pieces, sheets, options.seconds)
    if options.others:
        row["rectpack"] = rectpack_fits(pieces, sheets)
        if sheets == 1 and most <= 30:
            row["cp_sat"] = cp_sat_time(pieces, CP_SAT_SECONDS)
    return row


def fit_time(pieces: list[Rect], sheets: int, seconds: float) -> float | None:
    """Processor seconds until a checked plan, None if there was none within the limit."""
    begin = time.process_time()
    found = fit(stock(kind(*p) for p in pieces), [(SHEET, SHEET)] * sheets, is_over=clock(seconds))
    took = time.process_time() - begin
    if found.verdict is not Verdict.FOUND:
        assert found.verdict is Verdict.STOPPED, "a puzzle with an answer was called impossible"
        return None
    assert same([p for tree in found.trees for p in cut_block(tree, SHEET, SHEET)], pieces)
    return took


def table(rows: list[Row]) -> Iterator[str]:
    """A line for each class and number of sheets."""
    yield (
        f"{'pieces':>8} {'sheets':>6} {'instances':>9}  "
        + "  ".join(f"{t:>4} s" for t in TIMES)
        + "  rectpack  CP-SAT 10 s"
    )
    for fewest, most in CLASSES:
        for sheets in (*SHEETS, 0):
            some = [r for r in rows if r["class"] == [fewest, most] and sheets in (0, r["sheets"])]
            if some:
                shares = "  ".join(f"{percent(_solved(some, t), len(some)):>6}" for t in TIMES)
                label = f"{fewest:>4}-{most:<3} {sheets or 'all':>6} {len(some):>9}"
                yield f"{label}  {shares}  {_rectpack(some):>8}  {_cp_sat(some):>11}"
    yield from (
        f"missed: {r['pieces']} pieces, {r['sheets']} sheets, seed {r['seed']}" for r in rows if r["seconds"] is None
    )


def _solved(rows: list[Row], seconds: float) -> int:
    return sum(r["seconds"] is not None and r["seconds"] <= seconds for r in rows)


def _rectpack(rows: list[Row]) -> str:
    tried = [r["rectpack"] for r in rows if "rectpack" in r]
    return percent(sum(tried), len(tried))


def _cp_sat(rows: list[Row]) -> str:
    tried = [r["cp_sat"] for r in rows if "cp_sat" in r]
    return percent(sum(s is not None for s in tried), len(tried))


def targets(rows: list[Row]) -> Iterator[Target]:
    """The shares by class, and the ratio of times to CP-SAT where both found a plan, or it found none."""
    for (fewest, most), shares in WANTED.items():
        some = [r for r in rows if r["class"] == [fewest, most]]
        for seconds, share in zip(TIMES, shares, strict=True):
            if some and share:
                solved = _solved(some, seconds)
                what = f"{fewest}-{most} pieces without scrap within {seconds:g} s"
                yield Target(what, f"{share} %", f"{100 * solved / len(some):.1f} %", 100 * solved >= share * len(some))
    ratios = [
        (CP_SAT_SECONDS if r["cp_sat"] is None else r["cp_sat"]) / max(r["seconds"], 1e-4)
        for r in rows
        if "cp_sat" in r and r["seconds"] is not None and r["class"] == [12, 20]
    ]
    if ratios:
        reached = median(ratios)
        what = f"12-20 pieces, one sheet: times as fast as CP-SAT, median of {len(ratios)}"
        yield Target(what, "10", f"{reached:.0f}", reached >= 10)
