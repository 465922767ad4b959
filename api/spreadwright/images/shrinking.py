"""A decoded picture made small without a second copy of it."""

from PIL import Image

ROWS = 64
"""Of what comes out, in one strip."""

_CLEAR = ("LA", "RGBA")
"""Modes that show through: Pillow weighs their colours by how much they show, on a copy of the whole."""


def shrunk(image: Image.Image, size: tuple[int, int]) -> Image.Image:
    """The picture in another size, width and height in pixels; those that show through are copied strip by strip."""
    if image.size == size:
        return image
    factor = min(image.width // size[0], image.height // size[1]) // 2
    if image.mode in _CLEAR and factor > 1:
        image = _by_strips(image, factor)
    return image.resize(size, Image.Resampling.LANCZOS, reducing_gap=2.0)


def _by_strips(image: Image.Image, factor: int) -> Image.Image:
    """Every so many pixels across and down as one, their mean."""
    width, height = image.size
    whole = Image.new(image.mode, (-(-width // factor), -(-height // factor)))
    for number, top in enumerate(range(0, height, ROWS * factor)):
        strip = image.crop((0, top, width, min(height, top + ROWS * factor)))
        whole.paste(strip.reduce(factor), (0, number * ROWS))
    return whole
