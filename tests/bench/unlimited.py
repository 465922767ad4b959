"""Published instances: the most value of one sheet with any number of copies."""

import argparse
import time
from collections.abc import Iterator
from functools import partial

from bench.jobs import Job, Row, Target, case_key, published
from spreadwright.cutting.search.kinds import kind
from spreadwright.cutting.search.unlimited import most_value


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """All cases."""
    for record, case in published("knapsack_unlimited", options.every):
        yield Job(case_key("knapsack_unlimited", record, case), partial(_measured, record, case))


def _measured(record: Row, case: Row) -> Row:
    begin = time.process_time()
    items = [(kind(w, h, case["rotation"]), value) for w, h, _, value in record["items"]]
    ours = most_value(items, *record["sheet"])
    took = time.process_time() - begin
    return {
        "name": record["name"],
        "turn": case["rotation"],
        "ours": ours,
        "known": case["known_optimum"],
        "seconds": took,
    }


def table(rows: list[Row]) -> Iterator[str]:
    """A line for fixed pieces and one for those that may turn."""
    yield "pieces    cases  equal to known  seconds, longest"
    for turn in (False, True):
        some = [r for r in rows if r["turn"] == turn]
        if some:
            equal = sum(r["ours"] == r["known"] for r in some)
            longest = max(r["seconds"] for r in some)
            yield f"{'may turn' if turn else 'fixed':8} {len(some):>6}  {equal:>14}  {longest:>16.1f}"


def targets(rows: list[Row]) -> Iterator[Target]:
    """How many are right; the method is exact, so each is a proof."""
    equal = sum(r["ours"] == r["known"] for r in rows)
    yield Target("knapsack_unlimited: optima, proved", f"{len(rows)} cases", str(equal), equal == len(rows))
