"""Pixels as PNG or JPEG: the same bytes for the same pixels."""

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
