"""How the time grows with pieces and sheets: medians, and the share solved within the time limit."""

import argparse
from collections.abc import Iterator
from functools import partial
from itertools import product
from statistics import median

from bench.dissections import dissection
from bench.jobs import Job, Row, Target, percent
from bench.perfect import fit_time

PIECES = (10, 20, 30, 40, 60, 80, 120, 160, 200)
SHEETS = (1, 2, 4, 8)
INSTANCES = 10


def jobs(options: argparse.Namespace) -> Iterator[Job]:
    """Some instances for each number of pieces and sheets, which take turns."""
    for seed in range(options.seed, options.seed + min(INSTANCES, options.count)):
        for sheets, pieces in product(SHEETS, PIECES):
            key = f"{pieces} pieces, {sheets} sheets, seed {seed}"
            yield Job(key, partial(_measured, pieces, sheets, seed, options.seconds))


def _measured(pieces: int, sheets: int, seed: int, seconds: float) -> Row:
    sizes = dissection(sheets, pieces, seed)
    return {"pieces": pieces, "sheets": sheets, "limit": seconds, "seconds": fit_time(sizes, sheets, seconds)}


def table(rows: list[Row]) -> Iterator[str]:
    """Median time and share solved, a line for each number of pieces."""
    yield f"{'pieces':>6}" + "".join(f"{f'{s} sheets':>18}" for s in SHEETS)
    for pieces in PIECES:
        yield f"{pieces:>6}" + "".join(f"{_cell(_some(rows, pieces, sheets)):>18}" for sheets in SHEETS)


def _some(rows: list[Row], pieces: int, sheets: int) -> list[Row]:
    return [r for r in rows if r["pieces"] == pieces and r["sheets"] == sheets]


def _cell(rows: list[Row]) -> str:
    if not rows:
        return "–"
    solved = percent(sum(r["seconds"] is not None for r in rows), len(rows))
    typical = middle(rows)
    return f"{'> limit' if typical is None else f'{typical:.2f} s'} {solved:>6}"


def middle(rows: list[Row]) -> float | None:
    """The median time, None where more than half were not solved."""
    typical = median(float("inf") if r["seconds"] is None else r["seconds"] for r in rows)
    return None if typical == float("inf") else typical


def curves(rows: list[Row]) -> dict[int, list[tuple[int, float | None, float]]]:
    """For each number of sheets: pieces, median time, share solved."""
    found: dict[int, list[tuple[int, float | None, float]]] = {}
    for sheets in SHEETS:
        for pieces in PIECES:
            some = _some(rows, pieces, sheets)
            if some:
                solved = sum(r["seconds"] is not None for r in some) / len(some)
                found.setdefault(sheets, []).append((pieces, middle(some), solved))
    return found


def targets(rows: list[Row]) -> Iterator[Target]:
    """None: growth is for looking at."""
    yield from ()
