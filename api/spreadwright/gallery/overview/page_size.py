"""How large a page is, in the unit of its document and in the other one."""

from dataclasses import dataclass

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit, nearest, size_text

_MARK = {Unit.INCH: TICKS[Unit.INCH] // 16, Unit.MILLIMETRE: TICKS[Unit.MILLIMETRE]}
"""What the other unit is rounded to: a sixteenth of an inch, a millimetre."""


@dataclass(frozen=True, slots=True)
class PageSize:
    """Width and height of one page, ticks, and the unit that its document speaks."""

    width: int
    height: int
    unit: str

    @property
    def value(self) -> str:
        """The size in ticks, the same for the same paper whatever unit it is told in: ``97536x97536``."""
        return f"{self.width}x{self.height}"

    @property
    def both(self) -> str:
        """The size as people read it.

        >>> PageSize(12 * 8128, 12 * 8128, "in").both, PageSize(96000, 64000, "mm").both
        ('12 × 12 in (305 × 305 mm)', '300 × 200 mm (11 13/16 × 7 7/8 in)')
        """
        own = Unit(self.unit)
        other = Unit.INCH if own is not Unit.INCH else Unit.MILLIMETRE
        width, height = (nearest(length, _MARK[other]) for length in (self.width, self.height))
        return f"{size_text(self.width, self.height, own)} ({size_text(width, height, other)})"


def page_size(page: Size | None, unit: Unit) -> PageSize:
    """Of a page; nought where a recipe does not say."""
    return PageSize(page.width if page else 0, page.height if page else 0, unit.value)
