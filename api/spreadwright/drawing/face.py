"""A whole sheet with one face up, at real scale and nothing else: what pages cut the papers of a spread from."""

from dataclasses import replace
from functools import lru_cache

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.patterns import draw_face
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.images import encode_webp, read, resized
from spreadwright.model import Paper, Side, Swatch

_PX_PER_MM = 4
"""Of the pictures of papers: a double page as wide as a desk screen has two, on fine pixels four."""
_QUALITY = 80


def face_picture(paper: Paper, side: Side) -> Canvas:
    """All of a sheet, its top left corner in that of the picture; pictures of papers no finer than screens show."""
    canvas = Canvas(paper.size, title=f"{paper.title}, {side.value}")
    face = paper.face(side)
    if face.picture:
        face = replace(face, picture=_for_screens(face.picture, face.repeat))
    draw_face(canvas, face, Rect.at(0, 0, paper.size))
    return canvas


@lru_cache(maxsize=64)
def _for_screens(picture: Swatch, repeat: int) -> Swatch:
    """Its sides keep their numbers: they say where one repeat ends, and the rest is stretched to them."""
    pixels = read(picture.data).pixels
    high, wide = pixels.shape[:2]
    scale = min(1, _PX_PER_MM * repeat / MM / picture.width)
    smaller = resized(pixels, max(1, round(wide * scale)), max(1, round(high * scale)))
    return replace(picture, data=encode_webp(smaller, _QUALITY), media_type="image/webp")
