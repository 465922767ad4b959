"""The pictures that a paper set names: found beside it, read, and made ready to be embedded."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from spreadwright.document.cursor import Cursor
from spreadwright.errors import Finding, UnreadablePicture, error, note, warning
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Swatch

if TYPE_CHECKING:
    from spreadwright.images import Raster

Pictures = Callable[[str], bytes]
"""Gives the bytes of the file of a name; raises `UnreadablePicture` where it cannot."""

LONGEST_PX = 1024
"""The longest side of a picture that is embedded, its overlap included."""
_OVERLAP = 32
"""One part in so many of it is the overlap."""
MOST_PIXELS = 24_000_000
"""A whole sheet of 12 in scanned at 400 dots per inch."""
MOST_BYTES_AS_PNG = 128 * 1024
"""A picture that takes more than this without loss is embedded as JPEG."""
COARSEST = 50
"""Fewer pixels per inch than this look like squares on paper."""

_SUFFIXES = (".png", ".jpg", ".jpeg")


@dataclass(frozen=True, slots=True)
class Print:
    """A picture that was read, and the colour that it has from afar, ``#rrggbb``."""

    swatch: Swatch
    average: str


def is_plain_name(name: str) -> bool:
    """Whether a name stands for a file in the folder itself: no way out of it, nor further in."""
    return bool(name) and not name.startswith(".") and not set(name) & set("/\\:\0")


def printed(face: Cursor, repeat: int | None, pictures: Pictures | None, findings: list[Finding]) -> Print | None:
    """What the picture of a face shows; None where there is none to be had, which is a finding.

    Args:
        face: The face, of the pattern ``picture``.
        repeat: How wide the picture is on paper, ticks, if that is known.
        pictures: None where a document came without its folder.
        findings: Where to say what is wrong.
    """
    name, where = face.text("picture"), face.child("picture").where
    if not name:
        return None  # the schema says so
    refused = _refused_name(name, where)
    if refused or pictures is None:
        findings.append(refused or _not_sent(name, where))
        return None
    try:
        found, width_px = _read(name, pictures(name))
    except UnreadablePicture as reason:
        findings.append(error(reason.code, where, f"“{name}”: {reason.reason}", reason.remedy))
        return None
    findings.extend(_coarse(name, where, width_px, repeat))
    return found


def _refused_name(name: str, where: str) -> Finding | None:
    if not is_plain_name(name):
        message = f"The picture “{name[:60]}” lies outside the folder of its paper set."
        remedy = "Put the file into the folder that is named like the set, and write its name alone: “rope.png”."
        return error("picture-outside-folder", where, message, remedy)
    if not name.lower().endswith(_SUFFIXES):
        message = f"The picture “{name[:60]}” is neither a PNG nor a JPEG by its name."
        return error("not-a-picture", where, message, "Save it as NAME.png or NAME.jpg.")
    return None


def _not_sent(name: str, where: str) -> Finding:
    message = f"The picture “{name[:60]}” did not come along, so nothing is known of it but its name."
    remedy = "Check the set as a file, beside the folder that holds the picture."
    return note("picture-not-sent", where, message, remedy)


def _read(name: str, data: bytes) -> tuple[Print, int]:
    """The picture, and how many pixels wide it was made."""
    from spreadwright.images import read  # imported when needed: Pillow and numpy take a third of a second
    from spreadwright.images.average import average_colour

    found = read(data, longest=LONGEST_PX - LONGEST_PX // _OVERLAP, most_pixels=MOST_PIXELS)
    height, width, _ = found.pixels.shape
    overlap = -(-max(width, height) // _OVERLAP)
    embedded, media_type = _embedded(found.pixels, overlap, is_png=name.lower().endswith(".png"))
    swatch = Swatch(name, embedded, media_type, width, height, overlap)
    return Print(swatch, average_colour(found.pixels)), found.width


def _embedded(pixels: "Raster", overlap: int, *, is_png: bool) -> tuple[bytes, str]:
    """Written anew, so that nothing else comes along: no profile, no turn, no word on where it was taken."""
    import numpy as np

    from spreadwright.images import encode_jpeg, encode_png

    wide = np.pad(pixels, ((0, overlap), (0, overlap), (0, 0)), mode="wrap")
    if is_png:
        data = encode_png(wide)
        if len(data) <= MOST_BYTES_AS_PNG:
            return data, "image/png"
    return encode_jpeg(wide), "image/jpeg"


def _coarse(name: str, where: str, width_px: int, repeat: int | None) -> list[Finding]:
    if not repeat or width_px * TICKS[Unit.INCH] >= COARSEST * repeat:
        return []
    per_inch = width_px * TICKS[Unit.INCH] / repeat
    message = f"“{name}” has {width_px} pixels for its repeat, {per_inch:.0f} per inch: on paper they show as squares."
    remedy = f"Scan it finer, at {COARSEST} pixels per inch or more, or mend the repeat if that is wrong."
    return [warning("picture-coarse", where, message, remedy)]
