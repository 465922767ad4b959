"""The pictures of a document: each has an address in its page, under which it is found when the page is printed."""

from dataclasses import dataclass

from markupsafe import Markup

from spreadwright.drawing.canvas import Canvas, printable
from spreadwright.drawing.millimetres import mm


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture for a page.

    Attributes:
        alt: What it shows, for people who cannot see it.
        width: Ticks; nought for its own.
    """

    canvas: Canvas
    alt: str
    width: int = 0


class Album:
    """The pictures that a page has shown so far, by address."""

    def __init__(self) -> None:
        self.pictures: dict[str, Canvas] = {}

    def shown(self, picture: Picture) -> Markup:
        """The place of a picture in a page of HTML."""
        address = f"picture:{len(self.pictures) + 1}"
        self.pictures[address] = picture.canvas
        size = picture.canvas.size
        wide = picture.width or size.width
        style = f"width:{mm(wide)}mm;height:{mm(size.height * wide // size.width)}mm"
        return Markup('<img src="{}" alt="{}" style="{}">').format(address, printable(picture.alt), style)
