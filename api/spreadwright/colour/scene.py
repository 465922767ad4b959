"""What is seen of a recipe's papers, whatever they are: areas, and the edges along which they meet.

Exact whole numbers. Each page is divided by every edge that lies on it into cells; the topmost piece or photograph of a
cell is what is seen there. Cells that meet share an edge; those that a narrow gap parts face each other.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Side

Owners = NDArray[np.int64]

NARROW = TICKS[Unit.INCH] // 2
"""Two pieces that are no further apart than this lie beside each other, ticks."""


@dataclass(frozen=True, slots=True, order=True)
class Surface:
    """One side of the paper of one role, or something that no colourway chooses."""

    role: str
    side: Side = Side.FRONT


PAGE, PHOTO = Surface("", Side.FRONT), Surface("", Side.BACK)
"""The page where nothing lies on it, and any photograph."""

Meeting = tuple[Surface, Surface]


@dataclass(frozen=True, slots=True)
class Patch:
    """Something that lies on a page; `rect` in ticks from the page's top left corner."""

    page: str
    surface: Surface
    rect: Rect


@dataclass(frozen=True)
class Scene:
    """What is seen of a recipe's papers.

    Attributes:
        areas: Square ticks in sight.
        edges: Ticks along which two pieces meet in sight, by their surfaces in order; a surface meets itself where
            two of its pieces do.
        facing: Ticks along which they face each other across a gap of at most `NARROW`.
        captions: Every surface that is written on, with how many captions it carries.
    """

    areas: Mapping[Surface, int]
    edges: Mapping[Meeting, int]
    facing: Mapping[Meeting, int]
    captions: Mapping[Surface, int]

    @property
    def papers(self) -> dict[Surface, int]:
        """The areas of paper alone, without photographs and the bare page."""
        return {surface: area for surface, area in self.areas.items() if surface not in (PAGE, PHOTO)}


def scene(page: Size, patches: Sequence[Patch], captions: Iterable[Surface]) -> Scene:
    """What is seen of patches that lie on one another in their order, the first one lowest.

    Args:
        page: Size of every page.
        patches: On any pages; a page without a patch shows nothing.
        captions: The surface of each piece that is written on.
    """
    areas: dict[Surface, int] = defaultdict(int)
    edges: dict[Meeting, int] = defaultdict(int)
    facing: dict[Meeting, int] = defaultdict(int)
    for name in sorted({patch.page for patch in patches}):
        seen = _Seen(page, [patch for patch in patches if patch.page == name])
        seen.add_areas(areas)
        for along in (seen, seen.turned()):
            along.add_edges(edges)
            along.add_facing(facing)
    written: dict[Surface, int] = defaultdict(int)
    for surface in captions:
        written[surface] += 1
    return Scene(
        dict(sorted(areas.items())),
        dict(sorted(edges.items())),
        dict(sorted(facing.items())),
        dict(sorted(written.items())),
    )


class _Seen:
    """The cells of one page; edges are looked for from left to right."""

    def __init__(self, page: Size, patches: Sequence[Patch]) -> None:
        whole = Rect.at(0, 0, page)
        rects = [_clipped(patch.rect, whole) for patch in patches]
        self.surfaces = [PAGE, *(patch.surface for patch in patches)]
        xs = np.unique([0, page.width, *(x for rect in rects for x in (rect.left, rect.right))])
        ys = np.unique([0, page.height, *(y for rect in rects for y in (rect.top, rect.bottom))])
        self.owners: Owners = np.zeros((len(ys) - 1, len(xs) - 1), np.int64)
        for number, rect in enumerate(rects, 1):
            columns = slice(*np.searchsorted(xs, (rect.left, rect.right)))
            rows = slice(*np.searchsorted(ys, (rect.top, rect.bottom)))
            self.owners[rows, columns] = number
        self.widths, self.heights = np.diff(xs), np.diff(ys)

    def turned(self) -> "_Seen":
        """The same with rows and columns exchanged."""
        other = object.__new__(_Seen)
        other.surfaces, other.owners = self.surfaces, self.owners.T
        other.widths, other.heights = self.heights, self.widths
        return other

    def add_areas(self, areas: dict[Surface, int]) -> None:
        found = np.zeros(len(self.surfaces), np.int64)
        np.add.at(found, self.owners, self.heights[:, None] * self.widths)
        for surface, area in zip(self.surfaces, found.tolist(), strict=True):
            if area:
                areas[surface] += area

    def add_edges(self, edges: dict[Meeting, int]) -> None:
        for row, height in zip(self.owners, self.heights.tolist(), strict=True):
            for one, other in _steps(row):
                edges[self._meeting(one, other)] += height

    def add_facing(self, facing: dict[Meeting, int]) -> None:
        for row, height in zip(self.owners, self.heights.tolist(), strict=True):
            starts = np.flatnonzero(np.diff(row, prepend=-1))
            wide = np.add.reduceat(self.widths, starts).tolist()
            runs = row[starts].tolist()
            for before, gap, after in zip(runs, wide[1:], runs[2:], strict=False):
                if gap <= NARROW and before != after and PHOTO not in (self.surfaces[before], self.surfaces[after]):
                    facing[self._meeting(before, after)] += height

    def _meeting(self, one: int, other: int) -> Meeting:
        first, second = sorted((self.surfaces[one], self.surfaces[other]))
        return first, second


def _steps(row: Owners) -> list[tuple[int, int]]:
    places = np.flatnonzero(row[1:] != row[:-1])
    return list(zip(row[places].tolist(), row[places + 1].tolist(), strict=True))


def _clipped(rect: Rect, whole: Rect) -> Rect:
    left, top = max(rect.left, whole.left), max(rect.top, whole.top)
    return Rect.between(left, top, max(left, min(rect.right, whole.right)), max(top, min(rect.bottom, whole.bottom)))
