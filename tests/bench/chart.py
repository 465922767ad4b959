"""The chart of growth as SVG: plain shapes and text, readable on light and dark pages."""

from collections.abc import Iterator
from itertools import groupby
from math import log10

Point = tuple[int, float | None, float]

WIDTH, HEIGHT = 760, 640
LEFT, RIGHT = 70, 640
TOPS = {"time": (50, 330), "share": (400, 580)}
FASTEST, SLOWEST = 0.001, 10.0
MOST_PIECES = 200
STROKES = {1: ("#b3432b", ""), 2: ("#2f6f9f", "7 4"), 4: ("#4d7d3a", "2 4"), 8: ("#7a5195", "10 3 2 3")}


def chart(curves: dict[int, list[Point]], limit: float, instances: int) -> str:
    """Median time above, share solved below, one line for each number of sheets."""
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
            'font-family="sans-serif" font-size="14" fill="#222">',
            "<title>Planning time and share solved against the number of pieces, for 1, 2, 4 and 8 sheets</title>",
            f'<rect width="{WIDTH}" height="{HEIGHT}" rx="6" fill="#fbfaf7"/>',
            *_time_axis(limit, instances),
            *_share_axis(limit),
            *(shape for sheets, points in curves.items() for shape in _curve(sheets, points)),
            *_key(list(curves)),
            "</svg>\n",
        ]
    )


def _x(pieces: float) -> float:
    return LEFT + (RIGHT - LEFT) * pieces / MOST_PIECES


def _y_time(seconds: float) -> float:
    top, bottom = TOPS["time"]
    share = log10(max(seconds, FASTEST) / FASTEST) / log10(SLOWEST / FASTEST)
    return bottom - (bottom - top) * min(1.0, share)


def _y_share(share: float) -> float:
    top, bottom = TOPS["share"]
    return bottom - (bottom - top) * share


def _time_axis(limit: float, instances: int) -> Iterator[str]:
    title = f"Processor time until a plan without scrap, median of {instances} random puzzles"
    yield f'<text x="{LEFT}" y="30" font-weight="bold">{title}</text>'
    for seconds, label in ((0.001, "1 ms"), (0.01, "10 ms"), (0.1, "100 ms"), (1.0, "1 s"), (limit, f"{limit:g} s")):
        yield from _rule(_y_time(seconds), label)
    yield from _pieces_axis(TOPS["time"][1])


def _share_axis(limit: float) -> Iterator[str]:
    yield f'<text x="{LEFT}" y="385" font-weight="bold">Share solved within {limit:g} s</text>'
    for percent in (0, 50, 100):
        yield from _rule(_y_share(percent / 100), f"{percent} %")
    yield from _pieces_axis(TOPS["share"][1])
    yield f'<text x="{(LEFT + RIGHT) / 2:.0f}" y="{HEIGHT - 15}" text-anchor="middle">number of pieces</text>'


def _rule(y: float, label: str) -> Iterator[str]:
    yield f'<path d="M{LEFT} {y:.1f}H{RIGHT}" stroke="#d5d0c4" fill="none"/>'
    yield f'<text x="{LEFT - 8}" y="{y + 5:.1f}" text-anchor="end">{label}</text>'


def _pieces_axis(bottom: float) -> Iterator[str]:
    for pieces in range(0, MOST_PIECES + 1, 20):
        x = _x(pieces)
        yield f'<path d="M{x:.1f} {bottom}v5" stroke="#222" fill="none"/>'
        yield f'<text x="{x:.1f}" y="{bottom + 20}" text-anchor="middle">{pieces}</text>'


def _curve(sheets: int, points: list[Point]) -> Iterator[str]:
    for is_known, run in groupby(points, lambda point: point[1] is not None):
        if is_known:
            yield from _line(sheets, [(_x(pieces), _y_time(seconds or 0)) for pieces, seconds, _ in run])
    yield from _line(sheets, [(_x(pieces), _y_share(share)) for pieces, _, share in points])


def _line(sheets: int, points: list[tuple[float, float]]) -> Iterator[str]:
    color, dashes = STROKES[sheets]
    if points:
        way = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
        yield f'<path d="M{way}" stroke="{color}" stroke-width="2" stroke-dasharray="{dashes}" fill="none"/>'
    for x, y in points:
        yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="3.5" fill="{color}"/>'


def _key(numbers: list[int]) -> Iterator[str]:
    for place, sheets in enumerate(numbers):
        color, dashes = STROKES[sheets]
        y = TOPS["time"][0] + 14 + 24 * place
        dashed = f'stroke="{color}" stroke-width="2" stroke-dasharray="{dashes}"'
        yield f'<path d="M{RIGHT + 15} {y}h30" {dashed} fill="none"/>'
        yield f'<text x="{RIGHT + 52}" y="{y + 5}">{sheets} {"sheet" if sheets == 1 else "sheets"}</text>'
