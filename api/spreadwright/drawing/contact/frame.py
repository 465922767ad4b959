"""What a contact sheet shows, and how one of its spreads is drawn.

A contact sheet has many small pictures of the same photographs, so these are drawn once, as JPEG.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.raster import pixels
from spreadwright.drawing.scenes import draw_print
from spreadwright.drawing.spread import draw_spread, prints, spread_size
from spreadwright.drawing.svg import svg_bytes
from spreadwright.drawing.theme import PAPER
from spreadwright.geometry import Rect, Size
from spreadwright.images import encode_jpeg
from spreadwright.model import Colourway, Recipe
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlacedPiece
from spreadwright.words import gettext as _

_LONGEST_PX = 320
"""Of a photograph, whose longest side is hardly ever more than 30 mm here."""
_QUALITY = 78
"""Of a spread as JPEG: of so many pixels to the inch nothing is seen of it."""
_EDGE_SHARE = 24
"""How much higher a spread is than the room that its shadow needs around it."""


@dataclass(frozen=True, slots=True)
class Layout:
    """A recipe with its pieces in their places."""

    recipe: Recipe
    placed: tuple[PlacedPiece, ...]
    photos: tuple[MattedPhoto, ...]

    @property
    def size(self) -> Size:
        """All pages side by side, ticks."""
        return spread_size(self.recipe)


@dataclass(frozen=True, slots=True)
class Frame:
    """One spread on the sheet, and what is written below it.

    Attributes:
        number: By which people speak of it.
        title: What tells it from the others: its paper set, or its recipe.
        points: 0 to 100.
        score: The points in words.
        papers: Which role is played by which paper.
        reason: Why it ranks where it does.
        id: By which the colourway is found again.
    """

    layout: Layout
    colourway: Colourway
    number: str
    title: str
    points: float
    score: str
    papers: tuple[tuple[str, str], ...]
    reason: str
    id: str


def papers_line(frame: Frame) -> str:
    """Which role is played by which paper, in one line."""
    return " · ".join(_("{name}: {summary}").format(name=role, summary=paper) for role, paper in frame.papers)


@dataclass(frozen=True, slots=True)
class LeftOut:
    """What is not on the sheet, and why."""

    name: str
    reason: str


@dataclass(frozen=True, slots=True)
class ContactSheet:
    """The spreads of one sheet, in order.

    Attributes:
        about: Below the title: what is shown.
        notes: What else is to be said of it.
        left_out_heading: Stands above what is left out.
    """

    title: str
    about: str
    frames: tuple[Frame, ...]
    notes: tuple[str, ...] = ()
    left_out_heading: str = ""
    left_out: tuple[LeftOut, ...] = ()

    @property
    def has_wide(self) -> bool:
        """Whether a double page is among them."""
        return any(frame.layout.size.width > frame.layout.size.height * 3 // 2 for frame in self.frames)

    @property
    def widest(self) -> int:
        """The width of the widest, ticks: all are drawn to one scale."""
        return max(frame.layout.size.width for frame in self.frames)


def draw_frame(canvas: Canvas, frame: Frame, *, repeats: str = "") -> None:
    """The spread of a frame at real scale, its top left corner at the origin; `repeats` as in `draw_spread`."""
    layout = frame.layout
    shown = photographs(layout)
    draw_spread(canvas, layout.recipe, layout.placed, layout.photos, frame.colourway, pictures=shown, repeats=repeats)


def frame_jpeg(frame: Frame, width_px: int) -> bytes:
    """The spread of a frame with the paper around it that its shadow falls on, as JPEG."""
    whole = frame_size(frame)
    edge = frame_edge(frame)
    canvas = Canvas(whole, title="")
    canvas.rect(Rect.at(0, 0, whole), filled("#ffffff"))
    with canvas.group(at=(edge, edge)):
        draw_frame(canvas, frame)
    return encode_jpeg(pixels(svg_bytes(canvas), width_px), quality=_QUALITY)


def frame_edge(frame: Frame) -> int:
    """How wide the paper around a spread is, ticks."""
    return frame.layout.size.height // _EDGE_SHARE


def frame_size(frame: Frame) -> Size:
    """Of the spread with the paper around it, ticks."""
    size, edge = frame.layout.size, frame_edge(frame)
    return Size(size.width + 2 * edge, size.height + 2 * edge)


@lru_cache(maxsize=64)
def photographs(layout: Layout) -> Mapping[str, bytes]:
    """What lies on the mats of a layout, as JPEG by piece."""
    found = {}
    for each in prints(layout.recipe, layout.placed, layout.photos):
        size = each.rect.size
        canvas = Canvas(size, title="")
        canvas.rect(Rect.at(0, 0, size), filled(PAPER))
        draw_print(canvas, Rect.at(0, 0, size), each.scene, day=layout.recipe.id, seed=each.mat.piece.id)
        wide = max(1, _LONGEST_PX * size.width // max(size.width, size.height))
        found[each.mat.piece.id] = encode_jpeg(pixels(svg_bytes(canvas), wide))
    return found
