"""The one door through which pictures made elsewhere come in, and pixels go out as PNG, JPEG or WebP."""

from spreadwright.images.encoding import encode_few_colours, encode_jpeg, encode_png, encode_webp
from spreadwright.images.picture import Picture, Raster
from spreadwright.images.reading import LONGEST, MOST_BYTES, MOST_PIXELS, pixel_count, read
from spreadwright.images.resizing import fitted, limited, resized

__all__ = [
    "LONGEST",
    "MOST_BYTES",
    "MOST_PIXELS",
    "Picture",
    "Raster",
    "encode_few_colours",
    "encode_jpeg",
    "encode_png",
    "encode_webp",
    "fitted",
    "limited",
    "pixel_count",
    "read",
    "resized",
]
