"""Pieces that lie so that an error of one shows beside another: in a row across the page, level, apart, or nested."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import islice

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Axis
from spreadwright.tolerance.laid import Laid

BESIDE = TICKS[Unit.INCH]
"""Pieces further apart than 1 in are not seen as one row."""

_MOST_ROWS = 50
"""Of pieces that begin on one line; layers over layers could make any number."""

Row = tuple[Laid, ...]
Pair = tuple[Laid, Laid]
Starts = Mapping[int, Sequence[Laid]]


def rows(pieces: Sequence[Laid], end: int, axis: Axis) -> Iterator[Row]:
    """Pieces that lie edge to edge from one edge of the page to the other, at `end`, each row once."""
    seen: set[tuple[str, ...]] = set()
    for line in sorted({each.near(axis.other) for each in pieces}):
        starts: defaultdict[int, list[Laid]] = defaultdict(list)
        for each in pieces:
            if each.near(axis.other) <= line < each.far(axis.other):
                starts[each.near(axis)].append(each)
        for row in islice(_rows(_leading_to(starts, end, axis), 0, end, axis), _MOST_ROWS):
            ids = tuple(each.id for each in row)
            if ids not in seen:
                seen.add(ids)
                yield row


def _leading_to(starts: Starts, end: int, axis: Axis) -> Starts:
    """Only those pieces from which others lead on to the end, so that no search for a row runs into nothing."""
    leading: dict[int, list[Laid]] = {}
    for start in sorted(starts, reverse=True):
        reaching = [each for each in starts[start] if each.far(axis) == end or each.far(axis) in leading]
        if reaching:
            leading[start] = reaching
    return leading


def _rows(starts: Starts, start: int, end: int, axis: Axis) -> Iterator[Row]:
    for each in starts.get(start, ()):
        if each.far(axis) == end:
            yield (each,)
        else:
            yield from ((each, *more) for more in _rows(starts, each.far(axis), end, axis))


def beside(pieces: Iterable[Laid], axis: Axis) -> Iterator[tuple[Laid, Laid, int]]:
    """Two pieces of one page that face each other at most 1 in apart, and their distance, ticks; 0 where they touch."""
    in_order = sorted(pieces, key=lambda each: (each.near(axis), each.id))
    for index, first in enumerate(in_order):
        for second in islice(in_order, index + 1, None):
            gap = second.near(axis) - first.far(axis)
            if gap > BESIDE:
                break
            if gap >= 0 and _faces(first, second, axis.other):
                yield first, second, gap


def _faces(first: Laid, second: Laid, axis: Axis) -> bool:
    return first.near(axis) < second.far(axis) and second.near(axis) < first.far(axis)


def across_the_gutter(left: Iterable[Laid], right: Iterable[Laid], page: Size) -> Iterator[Pair]:
    """Two pieces that meet at the gutter with their upper and their lower edges level."""
    at_gutter = [each for each in right if each.near(Axis.COLUMNS) == 0]
    for first in left:
        if first.far(Axis.COLUMNS) == page.width:
            yield from ((first, second) for second in at_gutter if is_level(first, second, Axis.COLUMNS))


def is_level(first: Laid, second: Laid, axis: Axis) -> bool:
    """Whether two pieces that follow each other along an axis share both lines beside it."""
    other = axis.other
    return (first.near(other), first.far(other)) == (second.near(other), second.far(other))


def nested(pieces: Sequence[Laid], page: Size) -> Iterator[Pair]:
    """A piece, and one glued within it later; whole pages hold everything and do not count."""
    for index, lower in enumerate(pieces):
        if lower.placed.rect.size == page:
            continue
        for upper in islice(pieces, index + 1, None):
            if lower.placed.rect.contains(upper.placed.rect):
                yield lower, upper
