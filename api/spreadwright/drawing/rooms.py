"""Where something can stand: the largest free rectangles of a partly covered one, and the place for a box among them.

Each cover splits every room that it hits into the at most four that lie left, right, above and below of it, each as
long as the room itself; what lies inside another room is dropped. What remains are the maximal rectangles.
"""

from collections.abc import Iterable, Sequence

from spreadwright.drawing.path import Point
from spreadwright.geometry import Rect, Size

_MOST = 64
"""More rooms than this are never kept, the roomiest first: a thousand pieces must not take a minute."""


def rooms(rect: Rect, covers: Iterable[Rect]) -> tuple[Rect, ...]:
    """The largest rectangles of `rect` that no cover hides, the roomiest first; they may overlap."""
    found = [rect] if rect.width > 0 and rect.height > 0 else []
    for cover in sorted(covers, key=lambda each: (-each.area, each)):
        hit = [room for room in found if room.overlaps(cover)]
        if not hit:
            continue
        whole = [room for room in found if not room.overlaps(cover)]
        split = {part for room in hit for part in _beside(room, cover)}
        found = _roomiest(whole + _maximal(split, whole))[:_MOST]
    return tuple(_roomiest(found))


def nearest_place(box: Size, free: Sequence[Rect], part: Rect) -> Rect | None:
    """The place of a box in one of the rooms, nearest to the middle of a part; None where it fits in none."""
    middle = centred(box, part, part)
    places = [centred(box, part, room) for room in free if room.size.fits(box)]
    return min(places, key=lambda p: (abs(p.left - middle.left) + abs(p.top - middle.top), p), default=None)


def centred(box: Size, part: Rect, room: Rect) -> Rect:
    """A box in the middle of the part, pushed into the room."""
    left = part.left + (part.width - box.width) // 2
    top = part.top + (part.height - box.height) // 2
    left = max(room.left, min(left, room.right - box.width))
    return Rect.at(left, max(room.top, min(top, room.bottom - box.height)), box)


def middle_of(rect: Rect) -> Point:
    """The middle of a rectangle."""
    return rect.left + rect.width // 2, rect.top + rect.height // 2


def nearest_point(point: Point, rect: Rect) -> Point:
    """The point of a rectangle that is nearest to another one."""
    return max(rect.left, min(point[0], rect.right)), max(rect.top, min(point[1], rect.bottom))


def _beside(room: Rect, cover: Rect) -> list[Rect]:
    """What a cover leaves of a room on each of its four sides."""
    sides = (
        Rect.between(room.left, room.top, room.right, cover.top),
        Rect.between(room.left, room.top, cover.left, room.bottom),
        Rect.between(cover.right, room.top, room.right, room.bottom),
        Rect.between(room.left, cover.bottom, room.right, room.bottom),
    )
    return [side for side in sides if side.width > 0 and side.height > 0]


def _maximal(split: set[Rect], whole: Sequence[Rect]) -> list[Rect]:
    others = [*whole, *split]
    return [room for room in split if not any(other != room and other.contains(room) for other in others)]


def _roomiest(found: Iterable[Rect]) -> list[Rect]:
    return sorted(found, key=lambda room: (-min(room.width, room.height), -room.area, room))
