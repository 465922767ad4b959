"""A sheet as paths for cutting machines and other programs: what is cut, what the sheet is, what each part is called.

Three layers, CUT, SHEET and LABEL, in two file formats: SVG here, DXF in `cut_paths_dxf`. Full size, in millimetres,
without rounding.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from xml.etree.ElementTree import Element, SubElement, tostring

from spreadwright.cutting import CutStep
from spreadwright.drawing.canvas import printable
from spreadwright.drawing.millimetres import exact_mm
from spreadwright.drawing.path import Point
from spreadwright.drawing.theme import HAIRLINE, INK, MM, QUIET
from spreadwright.geometry import Rect, Size
from spreadwright.model import Axis

CUT, SHEET, LABEL = "CUT", "SHEET", "LABEL"
"""The layers."""

LABEL_HEIGHT = 4 * MM
"""Of capitals, ticks; smaller on a part that is narrower than its label."""

_FIGURE = 7, 10
"""How wide a letter is at most, of the height of capitals."""


@dataclass(frozen=True, slots=True)
class CutLine:
    """One straight cut from the left or the top, ticks from the sheet's top left corner."""

    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class PathLabel:
    """The words of one part, and the part."""

    words: str
    rect: Rect

    @property
    def is_upright(self) -> bool:
        """Whether it reads from the right, along the height of a narrow part."""
        return self.rect.height > self.rect.width < self._length(LABEL_HEIGHT)

    @property
    def height(self) -> int:
        """Of capitals, so that the words stay inside the part; ticks."""
        along, beside = self.rect.width, self.rect.height
        if self.is_upright:
            along, beside = beside, along
        room = along * LABEL_HEIGHT // self._length(LABEL_HEIGHT)
        return max(MM // 2, min(LABEL_HEIGHT, room, beside // 2))

    def _length(self, height: int) -> int:
        """How long the words are at most, with some air, in capitals of a height; ticks."""
        wide, high = _FIGURE
        return height * wide * max(1, len(self.words)) // high * 10 // 9

    @property
    def middle(self) -> Point:
        """The middle of the part, ticks."""
        return self.rect.left + self.rect.width // 2, self.rect.top + self.rect.height // 2


@dataclass(frozen=True, slots=True)
class CutPaths:
    """All paths of one sheet.

    Attributes:
        lines: In cutting order, none on another.
    """

    title: str
    size: Size
    lines: tuple[CutLine, ...]
    labels: tuple[PathLabel, ...]


def cut_lines(steps: Iterable[CutStep]) -> tuple[CutLine, ...]:
    """The cuts of one sheet as lines; what lies on one line without a gap is one line, at the turn of its first cut."""
    lines: list[CutLine] = []
    for step in steps:
        line = _line(step)
        touching = [other for other in lines if _meet(line, other)]
        whole = CutLine(min([line.start, *(o.start for o in touching)]), max([line.end, *(o.end for o in touching)]))
        place = lines.index(touching[0]) if touching else len(lines)
        lines = [other for other in lines if other not in touching]
        lines.insert(place, whole)
    return tuple(lines)


def _line(step: CutStep) -> CutLine:
    """Where the part that stays and the part that falls meet."""
    board, kept, falling = step.on_board, step.kept.rect, step.falling.rect
    if step.axis is Axis.COLUMNS:
        x = max(kept.left, falling.left)
        return CutLine((x, board.top), (x, board.bottom))
    y = max(kept.top, falling.top)
    return CutLine((board.left, y), (board.right, y))


def _meet(one: CutLine, other: CutLine) -> bool:
    """Whether two lines lie on one line and touch."""
    for along, beside in ((0, 1), (1, 0)):
        places = {one.start[beside], one.end[beside], other.start[beside], other.end[beside]}
        if len(places) == 1:
            return one.start[along] <= other.end[along] and other.start[along] <= one.end[along]
    return False


def cut_paths_svg(paths: CutPaths) -> bytes:
    """The paths as SVG whose user unit is the millimetre, a group for each layer."""
    wide, high = exact_mm(paths.size.width), exact_mm(paths.size.height)
    frame = {"xmlns": "http://www.w3.org/2000/svg", "width": f"{wide}mm", "height": f"{high}mm"}
    root = Element("svg", frame | {"viewBox": f"0 0 {wide} {high}"})
    SubElement(root, "title").text = printable(paths.title)
    sheet = _layer(root, SHEET, QUIET)
    SubElement(sheet, "rect", {"x": "0", "y": "0", "width": wide, "height": high})
    cut = _layer(root, CUT, INK)
    for line in paths.lines:
        (x1, y1), (x2, y2) = line.start, line.end
        SubElement(cut, "line", _held(x1=x1, y1=y1, x2=x2, y2=y2))
    _svg_labels(root, paths.labels)
    return tostring(root, encoding="unicode").encode() + b"\n"


def _layer(root: Element, name: str, colour: str) -> Element:
    return SubElement(root, "g", {"id": name, "fill": "none", "stroke": colour, "stroke-width": exact_mm(HAIRLINE)})


def _svg_labels(root: Element, labels: Sequence[PathLabel]) -> None:
    group = SubElement(root, "g", {"id": LABEL, "fill": QUIET, "font-family": "sans-serif", "text-anchor": "middle"})
    for label in labels:
        x, y = label.middle
        type_size = label.height * 10 // 7  # capitals are seven tenths of the size of the type
        held = _held(x=x, y=y + label.height // 2) | {"font-size": exact_mm(type_size)}
        turn = {"transform": f"rotate(-90 {exact_mm(x)} {exact_mm(y)})"} if label.is_upright else {}
        element = SubElement(group, "text", held | turn)
        element.text = printable(label.words)


def _held(**lengths: int) -> dict[str, str]:
    return {name: exact_mm(length) for name, length in lengths.items()}
