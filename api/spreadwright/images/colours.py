"""Any kind of pixels as 8-bit sRGB on white."""

from io import BytesIO

import numpy as np
from PIL import Image, ImageCms

from spreadwright.images.picture import Raster

WHITE = (255, 255, 255)
WIDE = ("I", "F")
"""The modes whose numbers have 32 bits."""

_SPACES = {"RGB ": "RGB", "GRAY": "L", "CMYK": "CMYK"}
"""The colour space that a profile is for, and the mode of the pixels that it suits."""


def flattened(image: Image.Image) -> Image.Image:
    """The same picture in one of the modes L, LA, RGB, RGBA, CMYK, 8 bits a channel."""
    if image.mode.startswith("I;16"):
        return Image.fromarray((np.asarray(image) >> 8).astype(np.uint8))
    if image.mode in WIDE:
        return _squeezed(image)
    if image.mode in ("1", "L", "RGB", "CMYK") and "transparency" not in image.info:
        return image if image.mode != "1" else image.convert("L")
    if image.mode in ("LA", "RGBA"):
        return image
    return image.convert("RGBA" if image.has_transparency_data else "RGB")


def in_srgb(image: Image.Image, profile: bytes | None) -> Raster:
    """The pixels in sRGB, what shows through as white; a profile that cannot be read, or suits other pixels, is none.

    Args:
        image: As `flattened` gives it.
        profile: An ICC profile.
    """
    alpha = image.getchannel("A") if image.mode in ("LA", "RGBA") else None
    opaque = image.convert(image.mode.rstrip("A")) if alpha is not None else image
    coloured = _by_profile(opaque, profile) if profile else opaque
    coloured = coloured.convert("RGB")
    if alpha is not None:
        coloured = Image.composite(coloured, Image.new("RGB", coloured.size, WHITE), alpha)
    return np.array(coloured)


def _by_profile(image: Image.Image, data: bytes) -> Image.Image:
    try:
        profile = ImageCms.ImageCmsProfile(BytesIO(data))
        if _SPACES.get(profile.profile.xcolor_space) != image.mode:
            return image
        turned = ImageCms.profileToProfile(image, profile, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
        return image
    return turned or image


def _squeezed(image: Image.Image) -> Image.Image:
    """Numbers of 32 bits between black and white: those of 16 bits by their upper half, others by their own range."""
    numbers = np.nan_to_num(np.asarray(image, dtype=np.float64), nan=0, posinf=0, neginf=0)
    low, high = (0.0, 65535.0) if image.mode == "I" else (float(numbers.min()), float(numbers.max()))
    shares = np.clip((numbers - low) / (high - low or 1.0), 0, 1)
    return Image.fromarray(np.rint(shares * 255).astype(np.uint8))
