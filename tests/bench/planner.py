"""How far the planner gets, as tables: ``python -m tests.bench.planner --help``.

Everything runs on one core, one instance after the other, and times are seconds of the processor. Plans are replayed by
a checker that shares no code with the planner. Libraries to compare with take part with `--others`.
"""

import argparse
import gc
import sys
from collections.abc import Iterable
from importlib import import_module
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from bench import growth
from bench.chart import chart
from bench.jobs import Target, rows
from spreadwright.cutting.search.ready import prepare

PARTS = ("perfect", "slack", "unlimited", "limited", "sheets", "fits", "growth")


def main() -> None:
    """Prints the tables asked for, and what was wanted beside what was reached."""
    options = parsed()
    prepare()
    gc.disable()
    reached: list[Target] = []
    for name in options.parts or PARTS:
        part = import_module(f"bench.{name}")
        found = rows(name, part.jobs(options), options.keep)
        print(f"\n{name}: {part.__doc__.splitlines()[0]}\n")
        print("\n".join(part.table(found)), flush=True)
        reached += part.targets(found)
        if name == "growth" and options.chart:
            options.chart.write_text(chart(growth.curves(found), options.seconds, min(growth.INSTANCES, options.count)))
    print("\n" + "\n".join(summary(reached)))


def summary(reached: Iterable[Target]) -> Iterable[str]:
    """All targets, one a line."""
    yield f"{'':68} {'wanted':>10} {'reached':>10}"
    for target in reached:
        yield f"{target.what:68} {target.wanted:>10} {target.reached:>10}  {'met' if target.is_met else 'MISSED'}"


def parsed() -> argparse.Namespace:
    """What is to be run."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("parts", nargs="*", help=f"any of: {', '.join(PARTS)}; all by default")
    parser.add_argument("--count", type=int, default=100, help="random instances a class")
    parser.add_argument("--seconds", type=float, default=10.0, help="time limit of an instance")
    parser.add_argument("--fit-seconds", type=float, default=60.0, help="time limit of a published fit")
    parser.add_argument("--seed", type=int, default=20261, help="of the first random instance of a class")
    parser.add_argument("--every", type=int, default=1, help="take only every n-th published instance")
    parser.add_argument("--others", action="store_true", help="also run the libraries to compare with")
    parser.add_argument(
        "--keep", type=Path, help="file of results, written line by line; what stands in it is not run again"
    )
    parser.add_argument("--chart", type=Path, help="file for the chart of growth, SVG")
    return parser.parse_args()


if __name__ == "__main__":
    main()
