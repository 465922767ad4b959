"""Dimensions as technical drawings have them (ISO 129-1): extension lines, dimension lines, figures.

Figures stand above their line and read from below or from the right.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.theme import HAIRLINE, INK, MM, SMALL
from spreadwright.drawing.type import Align, Style, width, write

FIGURES = Style(size=SMALL, is_tabular=True)
_GAP = MM
_OVERSHOOT = 3 * MM // 2
_TICK = 3 * MM // 4
_LINE = stroked(INK, HAIRLINE)


@dataclass(frozen=True, slots=True)
class Span:
    """One dimension of a chain: its two ends as drawn, ticks, and its figure."""

    start: int
    end: int
    figure: str


def across(canvas: Canvas, spans: Sequence[Span], *, edge: int, line: int) -> None:
    """A chain of widths along a horizontal line; extension lines start at the edge that is measured.

    Args:
        edge: The y of the edge, ticks.
        line: The y of the dimension line, ticks.
    """
    away = 1 if line > edge else -1
    for x in _ends(spans):
        canvas.line((x, edge + away * _GAP), (x, line + away * _OVERSHOOT), _LINE)
    for span in spans:
        canvas.line((span.start, line), (span.end, line), _LINE)
        write(canvas, span.figure, ((span.start + span.end) // 2, line - MM), FIGURES, align=Align.MIDDLE)
    slashes(canvas, [(x, line) for x in _ends(spans)])


def down(canvas: Canvas, spans: Sequence[Span], *, edge: int, line: int) -> None:
    """A chain of heights along a vertical line, figures read from the right; see `across`."""
    away = 1 if line > edge else -1
    for y in _ends(spans):
        canvas.line((edge + away * _GAP, y), (line + away * _OVERSHOOT, y), _LINE)
    for span in spans:
        canvas.line((line, span.start), (line, span.end), _LINE)
        middle = (line - MM, (span.start + span.end) // 2)
        write(canvas, span.figure, middle, FIGURES, align=Align.MIDDLE, turned_deg=-90)
    slashes(canvas, [(line, y) for y in _ends(spans)])


def fits(spans: Sequence[Span]) -> bool:
    """Whether every figure has room over its part of the line, clear of the strokes at its ends."""
    return all(width(span.figure, FIGURES) + 2 * _TICK <= span.end - span.start for span in spans)


def gathered(spans: Sequence[Span]) -> list[Span]:
    """The same chain with neighbours of one figure told as one, like `4 × 1/2`, where they have no room each."""
    found: list[Span] = []
    for figure, group in groupby(spans, key=lambda span: span.figure):
        alike = list(group)
        if len(alike) == 1 or fits(alike):
            found += alike
        else:
            found.append(Span(alike[0].start, alike[-1].end, f"{len(alike)} × {figure}"))
    return found


def _ends(spans: Sequence[Span]) -> list[int]:
    return sorted({end for span in spans for end in (span.start, span.end)})


def slashes(canvas: Canvas, points: Sequence[tuple[int, int]]) -> None:
    """The oblique strokes that end a dimension line; they need less room than arrowheads."""
    path = Path()
    for x, y in points:
        path.move(x - _TICK, y + _TICK).line(x + _TICK, y - _TICK)
    canvas.path(path, stroked(INK, 2 * HAIRLINE))
