"""SVG to PNG and PDF: the only door to the libraries that do it.

They are imported when first needed, since they take longer to load than most commands to run.
"""

from collections.abc import Sequence
from io import BytesIO
from typing import TYPE_CHECKING

from spreadwright.errors import CannotDraw

if TYPE_CHECKING:
    from pikepdf import Pdf

NARROWEST_PX, WIDEST_PX = 16, 6000
"""No PNG is narrower or wider, whatever is asked for."""


def png(svg: bytes, width_px: int) -> bytes:
    """A picture of our own as PNG, `width_px` wide (16 to 6000) and as high as it must be.

    Raises:
        CannotDraw: The library refused; its error is the cause.
    """
    import cairosvg

    try:
        return bytes(cairosvg.svg2png(bytestring=svg, output_width=max(NARROWEST_PX, min(width_px, WIDEST_PX))))
    except Exception as cause:  # the library raises whatever its parser and its binding raise
        raise CannotDraw("The PNG") from cause


def pdf(svgs: Sequence[bytes]) -> bytes:
    """Pictures as one PDF, a page each, at full size; the same pictures give the same bytes.

    Raises:
        CannotDraw: There is no picture, or a library refused; its error is the cause.
    """
    import cairosvg
    import pikepdf

    try:
        with pikepdf.new() as joined:
            for svg in svgs:
                with pikepdf.open(BytesIO(cairosvg.svg2pdf(bytestring=svg))) as single:
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
