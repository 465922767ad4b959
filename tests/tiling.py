"""What it means that nothing is left over."""

from collections.abc import Sequence

from spreadwright.geometry import Rect, area


def is_tiled(rect: Rect, tiles: Sequence[Rect]) -> bool:
    """Whether the tiles fill the rectangle without gap or overlap.

    Inside, equal in total area and pairwise apart: then nothing can be left over.
    """
    apart = not any(a.overlaps(b) for i, a in enumerate(tiles) for b in tiles[:i])
    return apart and all(rect.contains(tile) for tile in tiles) and area(tiles) == rect.area
