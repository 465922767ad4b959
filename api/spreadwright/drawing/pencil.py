"""Pencilled lines that stand for a caption: the gait of handwriting without its words."""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import combinations
from random import Random

from spreadwright.drawing.canvas import Canvas, stroked
from spreadwright.drawing.path import Path
from spreadwright.drawing.theme import MM
from spreadwright.drawing.tint import lightness
from spreadwright.geometry import Rect

_LINE = 15 * MM // 2
"""From line to line."""
_LOW = 19 * MM // 10
"""Height of the small letters."""
_LONGEST_LINE = 95 * MM
_MOST_LINES = 4
_PAD = 5 * MM
PENCILS = ("#4a4540", "#f4efe4")
"""A dark one, and a white one for dark papers."""


def write_lines(canvas: Canvas, room: Rect, ground: str, seed: str) -> None:
    """A few lines in the room that a caption has; none when it is too small to write in."""
    inner = room.inset(_PAD)
    if inner.width < 15 * MM or room.height < 8 * MM:
        return
    canvas.path(_lines(room, seed), stroked(pencil_on(ground), MM * 42 // 100, opacity=0.78, is_round=True))


def pencil_on(ground: str) -> str:
    """The colour of a pencil that shows on a ground."""
    return PENCILS[0 if lightness(ground) > 0.56 else 1]


@lru_cache(maxsize=256)
def _lines(room: Rect, seed: str) -> Path:
    inner = room.inset(_PAD)
    chance = Random(f"words of {seed}")
    count = max(1, min(inner.height // _LINE, _MOST_LINES))
    first = room.top + (room.height - (count - 1) * _LINE) // 2 + _LOW // 2
    path = Path(places=2)
    for number in range(count):
        share = chance.uniform(0.45, 0.75) if number == count - 1 and count > 1 else chance.uniform(0.86, 1)
        _line(path, inner.left, first + number * _LINE, round(min(inner.width, _LONGEST_LINE) * share), chance)
    return path


def free_room(paper: Rect, covers: Sequence[Rect]) -> Rect | None:
    """The largest rectangle of a paper that nothing covers, no more of it counted than a caption can use."""
    lying = [cover for cover in covers if cover.overlaps(paper)]
    xs = _edges(paper.left, paper.right, [edge for cover in lying for edge in (cover.left, cover.right)])
    ys = _edges(paper.top, paper.bottom, [edge for cover in lying for edge in (cover.top, cover.bottom)])
    rooms = (
        Rect.between(left, top, right, bottom)
        for left, right in combinations(xs, 2)
        for top, bottom in combinations(ys, 2)
    )
    free = (room for room in rooms if not any(cover.overlaps(room) for cover in lying))
    return max(free, key=lambda room: (_usable(room), room), default=None)


def _edges(low: int, high: int, between: Iterable[int]) -> list[int]:
    return sorted({low, high, *(edge for edge in between if low < edge < high)})


def _usable(room: Rect) -> int:
    return min(room.width, _LONGEST_LINE + 2 * _PAD) * min(room.height, _MOST_LINES * _LINE)


def _line(path: Path, left: int, base: int, length: int, chance: Random) -> None:
    """Words of two to eight letters until the line is full."""
    x = left
    while x < left + length - 4 * MM:
        letters = min(chance.randint(2, 8), (left + length - x) // (MM * 3 // 2))
        path.move(x, base - chance.randint(0, MM // 4))
        for _ in range(max(letters, 1)):
            x = _letter(path, x, base + chance.randint(-MM // 12, MM // 12), chance)
        x += 2 * MM + chance.randint(0, MM // 2)


def _letter(path: Path, x: int, base: int, chance: Random) -> int:
    """One letter, leaning forward, joined to the next; gives where that one starts."""
    wide = chance.randint(MM * 11 // 10, MM * 17 // 10)
    low = _LOW + chance.randint(-MM // 6, MM // 6)
    lean = low // 3
    kind = chance.choice("nnneeeulg")
    if kind == "e":
        path.curve(x + wide, base - low // 4, x + wide, base - low, x + wide // 2, base - low)
        path.curve(x, base - low, x + wide // 5, base, x + wide, base)
    elif kind == "l":
        path.curve(
            x + wide, base - low, x + wide + lean, base - low * 5 // 2, x + wide * 3 // 5 + lean, base - low * 5 // 2
        )
        path.curve(x + wide // 3, base - low * 5 // 2, x + wide // 3, base, x + wide, base)
    elif kind == "g":
        path.quad(x + wide, base - low, x + wide, base - low).line(x + wide * 3 // 4, base + low)
        path.curve(x + wide // 3, base + low * 5 // 3, x, base + low, x + wide, base - low // 4)
    else:
        peak = base - low if kind == "n" else base - low * 3 // 4
        path.quad(x + wide // 3 + lean, peak - low // 3, x + wide * 3 // 5, base)
        path.quad(x + wide * 4 // 5, base + low // 5, x + wide, base - low // 4)
    return x + wide
