"""Single measurements, kept line by line in a file, so that a long run can be stopped and taken up again."""

import gc
import json
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

Rect = tuple[int, int]
Row = dict[str, Any]

BENCHMARKS = Path(__file__).resolve().parent.parent / "benchmarks"


class Job(NamedTuple):
    """One measurement: a name that no other one of its part has, and what measures."""

    key: str
    run: Callable[[], Row]


class Target(NamedTuple):
    """What was wanted and what was reached, side by side."""

    what: str
    wanted: str
    reached: str
    is_met: bool


def clock(seconds: float) -> Callable[[], bool]:
    """Says yes once this process has worked for so many seconds."""
    end = time.process_time() + seconds
    return lambda: time.process_time() > end


def rows(part: str, jobs: Iterable[Job], keep: Path | None) -> list[Row]:
    """Every job's row, measured now or read from what an earlier run kept."""
    known = kept(part, keep)
    found = []
    for number, job in enumerate(jobs, 1):
        if job.key not in known:
            known[job.key] = job.run()
            gc.collect()
            if keep:
                with keep.open("a") as file:
                    file.write(json.dumps({"part": part, "key": job.key, "row": known[job.key]}) + "\n")
        found.append(known[job.key])
        print(f"\r{part}: {number} done, last {job.key:40.40}", end="", file=sys.stderr, flush=True)
    print(file=sys.stderr)
    return found


def kept(part: str, keep: Path | None) -> dict[str, Row]:
    """What an earlier run kept of a part."""
    if keep is None or not keep.exists():
        return {}
    lines = [json.loads(line) for line in keep.read_text().splitlines()]
    return {line["key"]: line["row"] for line in lines if line["part"] == part}


def published(name: str, every: int) -> Iterator[tuple[Row, Row]]:
    """Each published instance with each of its cases."""
    for record in json.loads((BENCHMARKS / f"{name}.json").read_text())[::every]:
        for case in record["cases"]:
            yield record, case


def case_key(name: str, record: Row, case: Row) -> str:
    """The name of a published case."""
    return f"{name} {record['name']} {'turned' if case['rotation'] else 'fixed'}"


def same(a: Iterable[Rect], b: Iterable[Rect], may_turn: bool = True) -> bool:
    """Whether both are the same pieces, turned or not where they may."""
    ways = (lambda p: (min(p), max(p))) if may_turn else tuple
    return Counter(map(ways, a)) == Counter(map(ways, b))


def percent(part: int, whole: int) -> str:
    """A share in words."""
    return f"{100 * part / whole:.0f} %" if whole else "–"
