"""How far the planner gets, as tables: ``python -m tests.bench.planner --help``.

Everything runs on one core, one instance after the other. Plans are replayed by a checker that shares no code with the
planner. Libraries to compare with take part where they are installed (rectpack, ortools).
"""

import argparse
import gc
import json
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from fractions import Fraction
from pathlib import Path
from statistics import median

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from bench.dissections import SHEET, Rect, dissection, without_some  # noqa: E402
from bench.others import cp_sat_time, rectpack_fits  # noqa: E402
from cutting.cutter import cut_block  # noqa: E402
from spreadwright.cutting.planner import plan  # noqa: E402
from spreadwright.cutting.problem import Problem, Stock, Wanted  # noqa: E402
from spreadwright.cutting.search import bounds  # noqa: E402
from spreadwright.cutting.search.exact import Verdict  # noqa: E402
from spreadwright.cutting.search.fit import fit  # noqa: E402
from spreadwright.cutting.search.insertion import Inserter, Request  # noqa: E402
from spreadwright.cutting.search.kinds import kind, stock  # noqa: E402
from spreadwright.cutting.search.unlimited import most_value  # noqa: E402
from spreadwright.geometry import Size  # noqa: E402

CLASSES = ((12, 20), (21, 30), (31, 40), (41, 60))
TIMES = (0.5, 2.0, 10.0)


def clock(seconds: float) -> Callable[[], bool]:
    """Says yes once so many seconds are over."""
    end = time.perf_counter() + seconds
    return lambda: time.perf_counter() > end


def same(a: list[Rect], b: list[Rect]) -> bool:
    """Whether both are the same pieces, turned or not."""
    return Counter(map(whole, a)) == Counter(map(whole, b))


def whole(piece: Rect) -> Rect:
    """A piece with its shorter side first."""
    return min(piece), max(piece)


def dissections(options: argparse.Namespace) -> None:
    """Zero-scrap instances: share solved by time."""
    print(f"{'pieces':>8} {'sheets':>6}  " + "  ".join(f"{t:>4} s" for t in TIMES) + "   rectpack   CP-SAT 10 s")
    for fewest, most in CLASSES:
        for sheets in (1, 2, 4):
            runs, packed, solved = [], 0, []
            for number in range(options.count):
                pieces = dissection(sheets, fewest + number * 7 % (most - fewest + 1), options.seed + number)
                runs.append(fit_time(pieces, sheets, options.seconds))
                if options.others:
                    packed += rectpack_fits(pieces, sheets)
                    solved += [cp_sat_time(pieces, 10.0)] if sheets == 1 and most <= 30 else []
            shares = "  ".join(f"{100 * sum(r <= t for r in runs) / len(runs):4.0f} %" for t in TIMES)
            others = f"{100 * packed / len(runs):6.0f} %" if options.others else ""
            exact = f"{100 * sum(s <= 10 for s in solved) / len(solved):6.0f} %" if solved else ""
            print(f"{fewest:>4}-{most:<3} {sheets:>6}  {shares}   {others}     {exact}", flush=True)


def fit_time(pieces: list[Rect], sheets: int, seconds: float) -> float:
    """Seconds until a checked plan, or infinity."""
    begin = time.perf_counter()
    found = fit(stock(kind(*p) for p in pieces), [(SHEET, SHEET)] * sheets, is_over=clock(seconds))
    took = time.perf_counter() - begin
    if found.verdict is not Verdict.FOUND:
        assert found.verdict is Verdict.STOPPED, "a puzzle with an answer was called impossible"
        return float("inf")
    assert same([p for tree in found.trees for p in cut_block(tree, SHEET, SHEET)], pieces)
    return took


def slack(options: argparse.Namespace) -> None:
    """Instances with some pieces taken away: sheets against the bound, largest spare against all spares."""
    optimal, shares, times = 0, [], []
    for number in range(options.count):
        share = (0.05, 0.1, 0.15, 0.2, 0.25)[number % 5]
        sheets = (1, 2, 4)[number % 3]
        pieces = without_some(dissection(sheets, 20 + number % 31, options.seed + number), share, number)
        wanted = tuple(Wanted(str(i), Size(*p)) for i, p in enumerate(pieces))
        begin = time.perf_counter()
        made = plan(Problem(wanted, (Stock(Size(SHEET, SHEET)),)), is_over=clock(options.seconds))
        times.append(time.perf_counter() - begin)
        optimal += made.is_optimal
        spare = sum(s.area for s in made.spares)
        shares.append(float(Fraction(made.spares[0].area, spare)) if spare else 1.0)
    print(
        f"{options.count} instances, 5 to 25 % removed, {options.seconds:g} s at most (median {median(times):.1f} s):"
    )
    print(f"  fewest sheets proved in {100 * optimal / options.count:.0f} %")
    print(f"  largest spare: {100 * median(shares):.0f} % of what is left in the median")


def records(name: str, every: int) -> Iterator[tuple[dict, dict]]:
    """Each published instance with each of its cases."""
    for record in json.loads((HERE.parent / "benchmarks" / f"{name}.json").read_text())[::every]:
        for case in record["cases"]:
            yield record, case


def published_sheets(options: argparse.Namespace) -> None:
    """Fewest sheets for published instances."""
    for name in ("sheets_small", "sheets_furniture", "sheets_large"):
        over: dict[bool, Counter[int]] = {False: Counter(), True: Counter()}
        proved = 0
        for record, case in records(name, options.every):
            known = case["known_optimum"] or case["upper_bound"]
            sheets, bound = fewest(record, case["rotation"], options.seconds)
            assert bound <= known, (record["name"], "bound above a known plan")
            over[case["rotation"]][sheets - known] += 1
            proved += sheets == bound
        for may_turn, counts in over.items():
            total = sum(counts.values())
            found = f"{100 * sum(n for d, n in counts.items() if d <= 0) / total:5.1f} %" if total else "-"
            print(f"{name:17} {'may turn' if may_turn else 'fixed':9} equal to known: {found}  {dict(counts)}")
        print(f"{name:17} proved optimal by our own bound: {proved}", flush=True)


def fewest(record: dict, may_turn: bool, seconds: float) -> tuple[int, int]:
    """Sheets of the best checked plan, and the lower bound."""
    width, height = record["sheet"]
    requests = [Request(kind(w, h, may_turn)) for w, h, n, _ in record["items"] for _ in range(n)]
    bound = bounds.fewest_sheets(list(Counter(r.kind for r in requests).items()), width, height)
    inserter = Inserter(requests, [(width, height)] * len(requests), 1)
    best = None
    for packing in inserter.packings(len(requests), 1 << 60, clock(seconds)):
        best = packing
        if packing.merit.sheets == bound:
            break
    assert best is not None and not best.left_out
    cut = [p for tree in best.trees for p in cut_block(tree, width, height)]
    assert same(cut, [(r.kind.wide, r.kind.high) for r in requests])
    return len(best.trees), bound


def published_fits(options: argparse.Namespace) -> None:
    """Published puzzles without waste: solved, proved impossible, wrong."""
    tally: Counter[str] = Counter()
    for record, case in records("fit_zero_waste", options.every):
        pieces = stock(kind(w, h, case["rotation"]) for w, h, n, _ in record["items"] for _ in range(n))
        found = fit(pieces, [tuple(record["sheet"])], is_over=clock(options.seconds))
        turn = "may turn" if case["rotation"] else "fixed"
        tally[f"{turn}, answer {case['known_optimum']}: {found.verdict.value}"] += 1
    for line, number in sorted(tally.items()):
        print(f"fit_zero_waste    {line:35} {number}")


def unlimited(options: argparse.Namespace) -> None:
    """Most value of one sheet with any number of copies."""
    right, total, slowest = 0, 0, 0.0
    for record, case in records("knapsack_unlimited", 1):
        begin = time.perf_counter()
        items = [(kind(w, h, case["rotation"]), value) for w, h, _, value in record["items"]]
        value = most_value(items, *record["sheet"])
        slowest = max(slowest, time.perf_counter() - begin)
        right += value == case["known_optimum"]
        total += 1
    print(f"knapsack_unlimited: {right} of {total} cases right, slowest {slowest:.1f} s")


PARTS = {f.__name__: f for f in (dissections, slack, published_sheets, published_fits, unlimited)}


def main() -> None:
    """Prints the tables asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("parts", nargs="*", help=f"any of: {', '.join(PARTS)}; all by default")
    parser.add_argument("--count", type=int, default=100, help="instances a class")
    parser.add_argument("--seconds", type=float, default=10.0, help="time limit of each instance")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--every", type=int, default=1, help="take only every n-th published instance")
    parser.add_argument("--others", action="store_true", help="also run the libraries to compare with")
    options = parser.parse_args()
    for sheets in (1, 2):
        fit(stock(kind(*p) for p in dissection(sheets, 30, 0)), [(SHEET, SHEET)] * sheets, is_over=clock(1.0))
    gc.disable()
    for name in options.parts or PARTS:
        print(f"\n== {name}: {PARTS[name].__doc__}")
        PARTS[name](options)
        gc.collect()


if __name__ == "__main__":
    main()
