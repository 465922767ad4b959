"""A whole sheet with one face up, at real scale and nothing else: what pages cut the papers of a spread from."""

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.geometry import Rect
from spreadwright.model import Paper, Side


def face_picture(paper: Paper, side: Side) -> Canvas:
    """All of a sheet, its top left corner in that of the picture."""
    canvas = Canvas(paper.size, title=f"{paper.title}, {side.value}")
    draw_face(canvas, paper.face(side), Rect.at(0, 0, paper.size))
    return canvas
