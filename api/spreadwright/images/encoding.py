"""Pixels as PNG, JPEG or WebP: the same bytes for the same pixels."""

from io import BytesIO

from PIL import Image

from spreadwright.images.picture import Raster

QUALITY = 85
"""Of a JPEG, 1 to 95: no trace to be seen at the size at which the picture is drawn."""


def encode_png(pixels: Raster) -> bytes:
    """The pixels as PNG, without loss."""
    file = BytesIO()
    Image.fromarray(pixels).save(file, "PNG", optimize=False, compress_level=6)
    return file.getvalue()


def encode_jpeg(pixels: Raster, quality: int = QUALITY) -> bytes:
    """The pixels as JPEG."""
    file = BytesIO()
    Image.fromarray(pixels).save(file, "JPEG", quality=quality, optimize=True)
    return file.getvalue()


WEBP_QUALITY = 66
"""Of a small picture on a page full of them, 1 to 100: prints stay crisp, and ten of them weigh less than the type."""
_EFFORT = 4
"""Of Pillow's 0 to 6: 6 takes twice as long for files that are a twenty-fifth smaller."""


def encode_webp(pixels: Raster, quality: int = WEBP_QUALITY) -> bytes:
    """The pixels as WebP, with their opacity where they have one."""
    file = BytesIO()
    Image.fromarray(pixels).save(file, "WEBP", quality=quality, method=_EFFORT, alpha_quality=60)
    return file.getvalue()


def encode_few_colours(pixels: Raster, colours: int = 256) -> bytes:
    """The pixels as PNG in at most so many colours: for pictures that go where nothing newer is read."""
    few = Image.fromarray(pixels).quantize(colours, Image.Quantize.MEDIANCUT, dither=Image.Dither.FLOYDSTEINBERG)
    file = BytesIO()
    few.save(file, "PNG", optimize=True)
    return file.getvalue()
