"""One paper as a small picture: its front, and behind it the back looking out at the lower right."""

from spreadwright.drawing import relief
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size
from spreadwright.model import Core, Face, Paper, Side

SIDE = 60 * MM
"""Side of the part of the sheet that is shown, at real scale."""
_BEHIND = 9 * MM
_MARGIN = 3 * MM
WHOLE = SIDE + _BEHIND + 2 * _MARGIN
"""Side of the picture."""


def swatch_picture(paper: Paper, *, up: Side = Side.FRONT, prefix: str = "") -> Canvas:
    """A corner of the sheet at real scale with the face of one side up, the other beneath it."""
    canvas = Canvas(Size(WHOLE, WHOLE), title=_title(paper, up), prefix=prefix)
    draw_leaf(canvas, Rect(_MARGIN + _BEHIND, _MARGIN + _BEHIND, SIDE, SIDE), paper.face(up.other), paper.core, 1)
    draw_leaf(canvas, Rect(_MARGIN, _MARGIN, SIDE, SIDE), paper.face(up), paper.core, 2)
    return canvas


def _title(paper: Paper, up: Side) -> str:
    reverse = paper.face(up.other)
    return f"{paper.title}, {up.value}: {paper.face(up)}, with {reverse} on the other side"


def draw_leaf(canvas: Canvas, rect: Rect, face: Face, core: Core, layer: int) -> None:
    """A piece of paper that lies somewhere, its print beginning in its own corner; the shadow is that of a layer."""
    relief.shadow(canvas, rect, relief.depth_of(layer))
    with canvas.group(clip=rect):
        with canvas.group(at=(rect.left, rect.top)):
            draw_face(canvas, face, Rect.at(0, 0, rect.size))
        relief.cut_edge(canvas, rect, face.colours[0], core)
