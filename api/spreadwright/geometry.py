"""Rectangles on whole ticks: inside, overlap, what covers leave, turning; knows no paper.

Origin top left, x to the right, y down.
"""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Size:
    """Width and height, ticks."""

    width: int
    height: int

    @property
    def area(self) -> int:
        """Square ticks."""
        return self.width * self.height

    def turned(self) -> "Size":
        """The size after a quarter turn."""
        return Size(self.height, self.width)

    def fits(self, other: "Size") -> bool:
        """Whether `other` fits inside without turning."""
        return other.width <= self.width and other.height <= self.height


@dataclass(frozen=True, slots=True, order=True)
class Rect:
    """A rectangle by its top left corner and its size, ticks."""

    left: int
    top: int
    width: int
    height: int

    @property
    def right(self) -> int:
        """The right edge."""
        return self.left + self.width

    @property
    def bottom(self) -> int:
        """The bottom edge."""
        return self.top + self.height

    @property
    def area(self) -> int:
        """Square ticks."""
        return self.width * self.height

    @property
    def size(self) -> Size:
        """Width and height."""
        return Size(self.width, self.height)

    @staticmethod
    def between(left: int, top: int, right: int, bottom: int) -> "Rect":
        """The rectangle between four edges."""
        return Rect(left, top, right - left, bottom - top)

    @staticmethod
    def at(left: int, top: int, size: Size) -> "Rect":
        """The rectangle of a size with its top left corner somewhere."""
        return Rect(left, top, size.width, size.height)

    def moved(self, dx: int, dy: int) -> "Rect":
        """The same rectangle, moved."""
        return Rect(self.left + dx, self.top + dy, self.width, self.height)

    def inset(self, margin: int) -> "Rect":
        """The rectangle inside a margin that is equal all round."""
        return Rect(self.left + margin, self.top + margin, self.width - 2 * margin, self.height - 2 * margin)

    def contains(self, other: "Rect") -> bool:
        """Whether `other` lies inside, edges allowed to touch."""
        return (
            self.left <= other.left
            and self.top <= other.top
            and other.right <= self.right
            and other.bottom <= self.bottom
        )

    def overlaps(self, other: "Rect") -> bool:
        """Whether the two share more than an edge."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def minus(self, other: "Rect") -> tuple["Rect", ...]:
        """What `other` leaves of this rectangle, as at most four rectangles that do not overlap."""
        if not self.overlaps(other):
            return (self,)
        top, bottom = max(self.top, other.top), min(self.bottom, other.bottom)
        left, right = max(self.left, other.left), min(self.right, other.right)
        pieces = (
            Rect.between(self.left, self.top, self.right, top),
            Rect.between(self.left, top, left, bottom),
            Rect.between(right, top, self.right, bottom),
            Rect.between(self.left, bottom, self.right, self.bottom),
        )
        return tuple(piece for piece in pieces if piece.width and piece.height)


def uncovered(rect: Rect, covers: Iterable[Rect]) -> tuple[Rect, ...]:
    """The part of `rect` that none of `covers` hides, as rectangles that do not overlap."""
    left: tuple[Rect, ...] = (rect,)
    for cover in covers:
        left = tuple(rest for piece in left for rest in piece.minus(cover))
    return left


def area(rects: Iterable[Rect]) -> int:
    """Sum of the areas, square ticks."""
    return sum(rect.area for rect in rects)
