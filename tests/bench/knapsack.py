"""Published knapsacks with limited copies, on one sheet and on several: ``python -m tests.bench.knapsack --help``.

Fixed pieces and pieces that may turn are kept apart. Time is that of the processor, one instance after the other. Every
tree is cut again by a checker that shares no code with the search. With ``--keep`` every result is a line of a file,
and a run that is started again goes on where it stopped.
"""

import argparse
import json
import sys
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from cutting.cutter import cut_block  # noqa: E402
from spreadwright.cutting.search.kinds import kind  # noqa: E402
from spreadwright.cutting.search.knapsack import Item, Yield, most_valuable  # noqa: E402
from spreadwright.cutting.search.ready import prepare  # noqa: E402

FILES = ("knapsack_limited", "knapsack_multi_sheet")

Record = dict[str, Any]


def cases(every: int) -> Iterator[tuple[str, Record, Record]]:
    """Every n-th record of each file, with each of its cases."""
    for name in FILES:
        for record in json.loads((HERE.parent / "benchmarks" / f"{name}.json").read_text())[::every]:
            for case in record["cases"]:
                yield name, record, case


def solved(file: str, record: Record, case: Record, seconds: float) -> Record:
    """What the search finds in so many seconds of the processor."""
    items = [Item(kind(w, h, case["rotation"], tag), n, v) for tag, (w, h, n, v) in enumerate(record["items"])]
    sheets = [tuple(record["sheet"])] * record.get("sheets_available", 1)
    start = time.process_time()
    answer = most_valuable(items, sheets, is_over=lambda: time.process_time() - start > seconds)
    spent = time.process_time() - start
    check(answer, items, sheets)
    return {
        "file": file,
        "name": record["name"],
        "turn": case["rotation"],
        "ours": answer.value,
        "bound": answer.bound,
        "known": case["known_optimum"],
        "proven": answer.is_proven,
        "seconds": round(spent, 2),
    }


def check(answer: Yield, items: list[Item], sheets: list[tuple[int, int]]) -> None:
    """Fails where a tree cuts more copies than there are, pieces of another size, or less value than it says."""
    sizes = [size for tree, sheet in zip(answer.trees, sheets, strict=True) for size in cut_block(tree, *sheet)]
    kinds = [leaf.kind for tree in answer.trees for leaf in tree.leaves() if leaf.kind]
    assert all(size in k.sides() for size, k in zip(sizes, kinds, strict=True))
    used = Counter(kinds)
    assert all(used[item.kind] <= item.count for item in items)
    assert sum(item.value * used[item.kind] for item in items) == answer.value


def kept(path: Path | None) -> list[Record]:
    """Results of a run before."""
    if path is None or not path.exists():
        return []
    return [json.loads(line) for line in path.read_text().splitlines()]


def run(options: argparse.Namespace) -> list[Record]:
    """All results, those of a run before and new ones."""
    results = kept(options.keep)
    done = {(r["file"], r["name"], r["turn"]) for r in results}
    for file, record, case in cases(options.every):
        if (file, record["name"], case["rotation"]) in done:
            continue
        result = solved(file, record, case, options.seconds)
        results.append(result)
        print(f"{len(results):4} {result['name']} {result['ours']} in {result['seconds']} s", file=sys.stderr)
        if options.keep:
            with options.keep.open("a") as file_kept:
                file_kept.write(json.dumps(result) + "\n")
    return results


def table(results: list[Record]) -> Iterator[str]:
    """One line a result, fixed and turned apart, and the sums below."""
    for file in FILES:
        for turn in (False, True):
            chosen = [r for r in results if r["file"] == file and r["turn"] == turn]
            if chosen:
                yield f"{file}, pieces {'may turn' if turn else 'fixed'}"
                yield f"  {'name':16} {'ours':>8} {'known':>8} {'gap':>7} {'bound':>8} {'proven':>6} {'s':>7}"
                yield from map(line, chosen)
                yield sums(chosen)


def line(r: Record) -> str:
    """One result; the gap is to what is known."""
    gap = f"{100 * (r['known'] - r['ours']) / r['known']:.2f} %"
    proven = "yes" if r["proven"] else "no"
    return f"  {r['name']:16} {r['ours']:8} {r['known']:8} {gap:>7} {r['bound']:8} {proven:>6} {r['seconds']:7.2f}"


def sums(chosen: list[Record]) -> str:
    """How many reach what is known, how many are proven, and how many bounds or values contradict it."""
    equal = sum(r["ours"] == r["known"] for r in chosen)
    proven = sum(r["proven"] for r in chosen)
    wrong = sum(not r["ours"] <= r["known"] <= r["bound"] for r in chosen)
    seconds = sum(r["seconds"] for r in chosen)
    return f"  equal {equal} of {len(chosen)}, proven {proven}, contradictions {wrong}, {seconds:.0f} s together\n"


def main() -> None:
    """Runs what is asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=float, default=60.0, help="processor seconds for each instance")
    parser.add_argument("--every", type=int, default=1, help="take every n-th instance")
    parser.add_argument("--keep", type=Path, help="file of results, one a line; a run goes on after those in it")
    options = parser.parse_args()
    prepare()
    for text in table(run(options)):
        print(text)


if __name__ == "__main__":
    main()
