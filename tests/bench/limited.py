"""Published knapsacks with limited copies, on one sheet and on several, as a part of all measurements."""

import argparse
from collections.abc import Iterator
from functools import partial

from bench import knapsack
from bench.jobs import Job, Row, Target, case_key


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """All cases."""
    for name, record, case in knapsack.cases(options.every):
        yield Job(case_key(name, record, case), partial(knapsack.solved, name, record, case, options.fit_seconds))


def table(rows: list[Row]) -> Iterator[str]:
    """One line a case, and sums."""
    yield from knapsack.table(rows)


def targets(rows: list[Row]) -> Iterator[Target]:
    """Instances whose value is met in all their cases, and values or bounds that contradict what is known."""
    some = [r for r in rows if r["file"] == "knapsack_limited"]
    for turn in (False, True):
        cases = [r for r in some if r["turn"] == turn]
        if cases:
            equal, proven = sum(r["ours"] == r["known"] for r in cases), sum(r["proven"] for r in cases)
            what = f"knapsack_limited, {'may turn' if turn else 'fixed'}: equal to known"
            wanted = 85 * len(cases) / 90
            yield Target(what, f"{wanted:.0f} of {len(cases)}", f"{equal}, {proven} proved", equal >= wanted)
    wrong = sum(not r["ours"] <= r["known"] <= r["bound"] for r in rows)
    yield Target("knapsacks: values or bounds that contradict what is known", "0", str(wrong), wrong == 0)
