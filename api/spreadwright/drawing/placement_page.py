"""One page of the placement, as drawn."""

from dataclasses import dataclass

from spreadwright.drawing.path import Point
from spreadwright.geometry import Rect, Size


@dataclass(frozen=True, slots=True)
class DrawnPage:
    """One page in the picture: where it lies and how much smaller it is drawn."""

    name: str
    at: Point
    drawn_width: int
    size: Size

    @property
    def whole(self) -> Rect:
        """All of the page, as drawn."""
        return self.rect(Rect.at(0, 0, self.size))

    def rect(self, rect: Rect) -> Rect:
        """A place on the page, as drawn."""
        left, top = self._scaled(rect.left), self._scaled(rect.top)
        right, bottom = self._scaled(rect.right), self._scaled(rect.bottom)
        return Rect.between(self.at[0] + left, self.at[1] + top, self.at[0] + right, self.at[1] + bottom)

    def _scaled(self, length: int) -> int:
        return length * self.drawn_width // self.size.width
