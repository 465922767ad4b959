"""The JSON form of what to expect of each piece: the same on the command line and over HTTP."""

from spreadwright.lengths import size_text
from spreadwright.model import Bench
from spreadwright.tasks.answers import SCALE, Json, bench_answer, finding_answer, length_answer
from spreadwright.tasks.tolerance import Tolerance
from spreadwright.tolerance import Expected, PieceTolerance, amount


def tolerance_answer(found: Tolerance) -> Json:
    """How far every piece may come out off, and what that does to the layout."""
    bench = found.bench
    return {
        "recipe": found.recipe.id,
        "bench": bench_answer(bench),
        **SCALE,
        "accuracy": length_answer(bench.trimmer.accuracy, bench.unit),
        "pieces": [_piece(each, bench) for each in found.pieces],
        "findings": [finding_answer(finding) for finding in found.findings],
    }


def _piece(each: PieceTolerance, bench: Bench) -> Json:
    return {
        "id": each.piece.id,
        "mark": each.piece.mark,
        "text": size_text(each.width.length, each.height.length, bench.unit),
        "width": _expected(each.width, bench),
        "height": _expected(each.height, bench),
        "words": each.sentence,
    }


def _expected(expected: Expected, bench: Bench) -> Json:
    deviation = expected.side.deviation
    return {
        "ticks": expected.length,
        "edges": [number or None for number in expected.side.edges],
        "shift_ticks": int(deviation.shift),
        "cuts": [{"cut": source.number, "times": int(times)} for source, times in deviation.terms],
        "worst": _error(deviation.worst, bench),
        "typical": _error(deviation.typical, bench),
        "expanded": _error(deviation.expanded, bench),
        "standard_ticks": round(deviation.standard, 3),
        "why": expected.why,
    }


def _error(ticks: int, bench: Bench) -> Json:
    return {"ticks": ticks, "text": amount(ticks, bench.unit)}
