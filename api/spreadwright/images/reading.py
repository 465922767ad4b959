"""Bytes made elsewhere as a picture: upright, opaque, in sRGB, and no larger than asked for.

The steps, in an order that keeps memory bounded:
  1. the bytes are counted and the header is read: kind, size, frames; what is too large is refused before decoding;
  2. the picture is decoded, a JPEG at the coarsest scale that is still fine enough;
  3. it is made as small as asked for;
  4. its colours become 8-bit sRGB by its profile, what shows through becomes white, and it is turned upright.
"""

import struct
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from warnings import filterwarnings

from PIL import Image, ImageFile, UnidentifiedImageError

from spreadwright.errors import UnreadablePicture
from spreadwright.images import refusals
from spreadwright.images.colours import WIDE, flattened, in_srgb
from spreadwright.images.heif import can_read_heif, is_heif, register_heif
from spreadwright.images.picture import Picture
from spreadwright.images.resizing import fitted
from spreadwright.images.shrinking import shrunk

MOST_BYTES = 40_000_000
"""Of one file."""

MOST_PIXELS = 64_000_000
"""As many as the largest cameras that people carry take, 50 million, and some to spare."""

LONGEST = 1024
"""The longest side of what is read, unless told otherwise, pixels."""

_MOST_SCANS = 40
"""A JPEG that comes in passes has about ten; thousands would cost minutes."""

filterwarnings("ignore", module=r"PIL\.")  # what Pillow has doubts about is refused here, or harmless
Image.init()  # knows the kinds below only then
_KINDS = ("JPEG", "PNG", "WEBP", "TIFF", "GIF")
_STILL = ("MPO", "HEIF")
"""Kinds whose further pictures belong to the first: the other eye's, the same in other exposures."""

_ORIENTATION = 0x0112
"""The Exif tag that says how the camera was held."""

_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
_SIDEWAYS = (
    Image.Transpose.TRANSPOSE,
    Image.Transpose.ROTATE_270,
    Image.Transpose.TRANSVERSE,
    Image.Transpose.ROTATE_90,
)

_FAILURES = (OSError, ValueError, SyntaxError, EOFError, IndexError, KeyError, TypeError, OverflowError, struct.error)
"""What Pillow raises over damaged bytes, its own classes among them."""


def read(data: bytes, *, longest: int = LONGEST, most_pixels: int = MOST_PIXELS) -> Picture:
    """The picture in these bytes: JPEG, PNG, WebP, TIFF, GIF that stands still, or HEIF with the extra of that name.

    Args:
        data: A whole file.
        longest: The longest side of the pixels that come back; smaller pictures stay as they are.
        most_pixels: Of the picture as it was made.

    Raises:
        UnreadablePicture: It is no picture, too large, damaged, or moves.
    """
    if not data:
        raise refusals.empty()
    if len(data) > MOST_BYTES:
        raise refusals.too_heavy(len(data), MOST_BYTES)
    ImageFile.LOAD_TRUNCATED_IMAGES = False  # weasyprint turns it on for everybody when it is loaded
    with _opened(data, most_pixels) as image:
        _refuse(image, data, most_pixels)
        width, height = image.size
        with _damage():
            small = _small(image, longest)
            turn = _TURNS.get(image.getexif().get(_ORIENTATION, 1))
            upright = small.transpose(turn) if turn is not None else small
    pixels = in_srgb(upright, image.info.get("icc_profile"))
    pixels.flags.writeable = False
    return Picture(pixels, *((height, width) if turn in _SIDEWAYS else (width, height)))


def pixel_count(data: bytes) -> int:
    """How many pixels the picture in these bytes has by its header; 0 where `read` would say why it has none."""
    try:
        with _opened(data, MOST_PIXELS) as image:
            return image.width * image.height
    except UnreadablePicture:
        return 0


def _opened(data: bytes, most_pixels: int) -> Image.Image:
    kinds: tuple[str, ...] = _KINDS
    if is_heif(data):
        if not can_read_heif():
            raise refusals.heif_not_installed()
        register_heif()
        kinds = ("HEIF",)
    try:
        return Image.open(BytesIO(data), formats=kinds)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as problem:
        raise refusals.too_many_pixels(None, most_pixels) from problem
    except UnidentifiedImageError as problem:
        raise refusals.not_a_picture() from problem
    except _FAILURES as problem:
        raise refusals.damaged() from problem


def _refuse(image: Image.Image, data: bytes, most_pixels: int) -> None:
    if image.width * image.height > most_pixels:
        raise refusals.too_many_pixels(image.size, most_pixels)
    with _damage():
        moves = image.format not in _STILL and getattr(image, "is_animated", False)
    if moves:
        raise refusals.moves()
    if image.format in ("JPEG", "MPO") and data.count(b"\xff\xda") > _MOST_SCANS:
        raise refusals.too_many_scans(_MOST_SCANS)


def _small(image: Image.Image, longest: int) -> Image.Image:
    """The picture decoded and made small, its colours still its own."""
    size = fitted(image.width, image.height, longest)
    if isinstance(image, ImageFile.ImageFile):
        image.draft(image.mode, size)
    image.load()
    if image.mode in WIDE:  # four bytes a pixel, and more to work on: made small as they are
        return flattened(image.resize(size, Image.Resampling.BOX))
    return shrunk(flattened(image), size)


@contextmanager
def _damage() -> Iterator[None]:
    """Whatever goes wrong inside means that the file is damaged."""
    try:
        yield
    except (*_FAILURES, MemoryError) as problem:
        raise refusals.damaged() from problem
