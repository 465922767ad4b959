"""Pictures within our pictures, for the renderer of PNG and PDF.

By itself it would decode an embedded picture each time that it is shown, a hundred times for a print on a sheet, and
write it into a PDF as often, uncompressed. Here each is decoded once for one drawing, through our own door, and a JPEG
goes into a PDF as it is.
"""

import re
from base64 import b64decode
from typing import Any

from spreadwright.images import LONGEST, read

_EMBEDDED = re.compile(r"data:(image/(?:png|jpeg));base64,([A-Za-z0-9+/=]*)", re.ASCII)

_LISTED = re.compile(rb"/XObject << (?:/x\d+ \d+ 0 R ?)+>>")
_NAMED = re.compile(rb"/x\d+ \d+ 0 R")


def teach() -> None:
    """Have the renderer draw embedded pictures this way, and no other pictures at all."""
    from cairosvg import surface

    surface.TAGS["image"] = _draw


def once(pdf: bytes) -> bytes:
    """A PDF of the renderer without the names that it lists again each time that a picture is shown.

    Readers take the last of equal names; the library that joins pages takes a long list of them for damage. The places
    of all objects stay as they are.
    """
    return _LISTED.sub(lambda listed: _without_repeats(listed[0]), pdf)


def _without_repeats(listed: bytes) -> bytes:
    seen: set[bytes] = set()

    def kept(name: re.Match[bytes]) -> bytes:
        is_new = name[0] not in seen
        seen.add(name[0])
        return name[0] if is_new else b" " * len(name[0])

    return _NAMED.sub(kept, listed)


def _draw(surface: Any, node: Any) -> None:
    """Draw an `image` element: called by the renderer with its surface and the element."""
    import cairocffi
    from cairosvg.helpers import size

    href = str(node.get_href())
    if href not in surface.images:
        surface.images[href] = _decoded(href)
    picture = surface.images[href]
    left, top = size(surface, node.get("x"), "x"), size(surface, node.get("y"), "y")
    width, height = size(surface, node.get("width"), "x"), size(surface, node.get("height"), "y")
    pattern = cairocffi.SurfacePattern(picture)
    pattern.set_filter(cairocffi.FILTER_GOOD)
    context = surface.context
    context.save()
    context.translate(left, top)
    context.scale(width / picture.get_width(), height / picture.get_height())
    context.set_source(pattern)
    context.rectangle(0, 0, picture.get_width(), picture.get_height())
    context.fill()
    context.restore()


def _decoded(href: str) -> Any:
    """The picture as the renderer's library holds it.

    Raises:
        UnreadablePicture: The bytes are no picture.
        ValueError: It is not embedded.
    """
    import cairocffi
    import numpy as np

    embedded = _EMBEDDED.fullmatch(href)
    if embedded is None:
        raise ValueError("only embedded PNG and JPEG are drawn")
    data = b64decode(embedded[2])
    pixels = read(data, longest=LONGEST).pixels.astype(np.uint32)
    height, width, _ = pixels.shape
    words = 0xFF000000 | pixels[..., 0] << 16 | pixels[..., 1] << 8 | pixels[..., 2]
    picture = cairocffi.ImageSurface(
        cairocffi.FORMAT_RGB24, width, height, bytearray(words.astype(np.uint32).tobytes()), 4 * width
    )
    if embedded[1] == "image/jpeg":
        picture.set_mime_data("image/jpeg", data)
    return picture
