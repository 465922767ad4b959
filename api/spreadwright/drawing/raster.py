"""SVG to pixels, PNG and PDF: the only door to the libraries that do it.

They are imported when first needed, since they take longer to load than most commands to run.
"""

import re
from collections.abc import Sequence
from fractions import Fraction
from functools import cache
from io import BytesIO
from math import isqrt
from typing import TYPE_CHECKING, Any

from spreadwright.errors import CannotDraw

if TYPE_CHECKING:
    from numpy import uint8
    from numpy.typing import NDArray
    from pikepdf import Pdf

NARROWEST_PX, WIDEST_PX = 16, 6000
"""No PNG is narrower or wider, whatever is asked for."""
HIGHEST_PX, MOST_PIXELS = 16_000, 40_000_000
"""Nor is it higher, or larger: 160 MB while it is drawn."""


def png(svg: bytes, width_px: int) -> bytes:
    """A picture of our own as PNG, `width_px` wide (16 to 6000) and as high as it must be.

    Narrower where it would otherwise have more than `MOST_PIXELS` or be higher than `HIGHEST_PX`.

    Raises:
        CannotDraw: The library refused; its error is the cause.
    """
    try:
        cairosvg = _renderer()
        return bytes(cairosvg.svg2png(bytestring=svg, output_width=_bounded(width_px, svg)))
    except Exception as cause:  # the library raises whatever its parser and its binding raise
        raise CannotDraw("The PNG") from cause


def pixels(svg: bytes, width_px: int) -> "NDArray[uint8]":
    """Red, green and blue of a picture of our own that leaves nothing bare, as rows of pixels from the top.

    Raises:
        CannotDraw: The library refused; its error is the cause.
    """
    return _drawn(svg, width_px)[:, :, :3].copy()


def see_through_pixels(svg: bytes, width_px: int) -> "NDArray[uint8]":
    """Red, green, blue and opacity of a picture of our own, as rows of pixels from the top.

    Raises:
        CannotDraw: The library refused; its error is the cause.
    """
    drawn = _drawn(svg, width_px)
    fades = (drawn[:, :, 3] > 0) & (drawn[:, :, 3] < 255)  # few pixels do, and all others are as they should be
    fading, opacity = drawn[fades].astype("uint16"), drawn[fades, 3:].astype("uint16")
    drawn[fades, :3] = ((fading[:, :3] * 255 + opacity // 2) // opacity).clip(max=255)
    return drawn


def _drawn(svg: bytes, width_px: int) -> "NDArray[uint8]":
    """Red, green, blue and opacity, the colours multiplied by the opacity."""
    import numpy as np
    from cairosvg.parser import Tree
    from cairosvg.surface import PNGSurface

    try:
        _renderer()
        drawn = PNGSurface(Tree(bytestring=svg), None, 96, output_width=_bounded(width_px, svg)).cairo
        words = np.frombuffer(drawn.get_data(), dtype=np.uint32).reshape(drawn.get_height(), -1)
    except Exception as cause:
        raise CannotDraw("The picture") from cause
    bytes_of_words = words[:, : drawn.get_width()].astype("<u4").view(np.uint8)  # the highest byte is the opacity
    return bytes_of_words.reshape(*words.shape[:1], -1, 4)[:, :, [2, 1, 0, 3]]


@cache
def _renderer() -> Any:
    """The library, once it knows how pictures within pictures are drawn."""
    import cairosvg

    from spreadwright.drawing.embedded import teach

    teach()
    return cairosvg


def _bounded(width_px: int, svg: bytes) -> int:
    """The width that is drawn, by the proportions that our pictures state first of all."""
    width = max(NARROWEST_PX, min(width_px, WIDEST_PX))
    stated = re.search(rb'viewBox="\S+ \S+ (\S+) (\S+)"', svg[:1000])
    if not stated:
        return width
    steepness = Fraction(stated[2].decode()) / Fraction(stated[1].decode())
    return max(1, min(width, int(HIGHEST_PX / steepness), isqrt(int(MOST_PIXELS / steepness))))


def pdf(svgs: Sequence[bytes]) -> bytes:
    """Pictures as one PDF, a page each, at full size; the same pictures give the same bytes.

    Raises:
        CannotDraw: There is no picture, or a library refused; its error is the cause.
    """
    import pikepdf

    from spreadwright.drawing.embedded import once

    try:
        cairosvg = _renderer()
        with pikepdf.new() as joined:
            for svg in svgs:
                with pikepdf.open(BytesIO(once(cairosvg.svg2pdf(bytestring=svg)))) as single:
                    joined.pages.extend(single.pages)
            return _saved(joined)
    except Exception as cause:
        raise CannotDraw("The PDF") from cause


def _saved(document: "Pdf") -> bytes:
    """Without the date that the renderer writes, and with an id that follows from the content."""
    import pikepdf

    if not document.pages:
        raise ValueError("a PDF has at least one page")
    if pikepdf.Name.Info in document.trailer:
        del document.trailer[pikepdf.Name.Info]
    out = BytesIO()
    document.save(out, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return out.getvalue()
