"""Pictures as letters: a coarse raster, each cell named by the nearest of a few colours."""

from collections.abc import Mapping
from io import BytesIO

from PIL import Image

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.raster import png
from spreadwright.drawing.svg import svg_bytes
from spreadwright.drawing.tint import channels


def letters(canvas: Canvas, columns: int, colours: Mapping[str, str], *, pixels: int = 12) -> tuple[str, ...]:
    """Rows of letters, each for the middle of a cell; `colours` maps a letter to ``#rrggbb``."""
    image = Image.open(BytesIO(png(svg_bytes(canvas), columns * pixels))).convert("RGB")
    rows = round(image.height / pixels)
    return tuple(
        "".join(
            _nearest(image.getpixel((column * pixels + pixels // 2, row * pixels + pixels // 2)), colours)
            for column in range(columns)
        )
        for row in range(rows)
    )


def _nearest(pixel: object, colours: Mapping[str, str]) -> str:
    assert isinstance(pixel, tuple)
    return min(
        colours, key=lambda letter: sum((a - b) ** 2 for a, b in zip(pixel, channels(colours[letter]), strict=True))
    )
