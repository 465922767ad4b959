"""Published puzzles: whether all pieces can be cut from one sheet, with nothing or little left over."""

import argparse
import time
from collections.abc import Iterator
from functools import partial

from bench.jobs import Job, Rect, Row, Target, case_key, clock, published, same
from cutting.cutter import cut_block
from spreadwright.cutting.search.exact import Verdict
from spreadwright.cutting.search.fit import fit
from spreadwright.cutting.search.kinds import kind, stock
from spreadwright.cutting.search.knapsack import all_fit
from spreadwright.cutting.search.trees import Block

SETS = ("fit_zero_waste", "fit_low_waste")


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """All cases of both sets, those with an answer first."""
    cases = [(name, *pair) for name in SETS for pair in published(name, options.every)]
    for name, record, case in sorted(cases, key=lambda c: (SETS.index(c[0]), -c[2]["known_optimum"])):
        yield Job(case_key(name, record, case), partial(_measured, name, record, case, options.fit_seconds))


def _measured(name: str, record: Row, case: Row, seconds: float) -> Row:
    width, height = record["sheet"]
    turn = case["rotation"]
    pieces = [(w, h) for w, h, n, _ in record["items"] for _ in range(n)]
    begin = time.process_time()
    verdict, trees = _answered(pieces, width, height, turn, seconds)
    took = time.process_time() - begin
    if verdict is Verdict.FOUND:
        assert same([p for tree in trees for p in cut_block(tree, width, height)], pieces, turn)
    row = {"set": name, "name": record["name"], "turn": turn, "pieces": len(pieces), "seconds": took}
    return {**row, "known": case["known_optimum"], "verdict": verdict.value}


def _answered(
    pieces: list[Rect], width: int, height: int, turn: bool, seconds: float
) -> tuple[Verdict, tuple[Block, ...]]:
    kinds = stock(kind(w, h, turn) for w, h in pieces)
    if kinds.area == width * height:
        found = fit(kinds, [(width, height)], is_over=clock(seconds))
        return found.verdict, found.trees
    pairs = list(zip(kinds.kinds, kinds.counts, strict=True))
    answer = all_fit(pairs, width, height, is_over=clock(seconds))
    return answer.verdict, (answer.tree,) if answer.tree else ()


def table(rows: list[Row]) -> Iterator[str]:
    """How often each verdict fell on each answer."""
    yield "set             pieces    known answer   cases" + "".join(f"{v.value:>12}" for v in Verdict)
    for name in SETS:
        for turn in (False, True):
            for known in (1, 0):
                some = [r for r in rows if (r["set"], r["turn"], r["known"]) == (name, turn, known)]
                if some:
                    said = "".join(f"{sum(r['verdict'] == v.value for r in some):>12}" for v in Verdict)
                    answer = "can be cut" if known else "impossible"
                    yield f"{name:15} {'may turn' if turn else 'fixed':8}  {answer:12} {len(some):>7}{said}"
    for row in rows:
        if row["verdict"] == Verdict.STOPPED.value:
            answer = "can be cut" if row["known"] else "impossible"
            turn = "may turn" if row["turn"] else "fixed"
            yield f"open: {row['set']} {row['name']} {turn}, {row['pieces']} pieces, {answer}"


def targets(rows: list[Row]) -> Iterator[Target]:
    """Those with an answer that were found; answers that contradict what is known."""
    some = [r for r in rows if r["set"] == "fit_zero_waste" and r["known"] == 1]
    if some:
        found = sum(r["verdict"] == Verdict.FOUND.value for r in some)
        yield Target("fit_zero_waste: found", "80 %", f"{100 * found / len(some):.1f} %", found >= 0.8 * len(some))
    wrong = {1: Verdict.IMPOSSIBLE.value, 0: Verdict.FOUND.value}
    number = sum(r["verdict"] == wrong[r["known"]] for r in rows)
    yield Target("fits: answers that contradict what is known", "0", str(number), number == 0)
