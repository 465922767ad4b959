"""The pictures that a paper set names: found beside it, read, and made ready to be embedded."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from spreadwright.document.cursor import Cursor
from spreadwright.errors import Finding, PictureNotSent, UnreadablePicture, error, note, warning
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Swatch

if TYPE_CHECKING:
    from spreadwright.images import Raster

Pictures = Callable[[str], bytes]
"""Gives the bytes of the file of a name; raises `UnreadablePicture` where it cannot, `PictureNotSent` if not yet."""

LONGEST_PX = 1024
"""The longest side of a picture that is embedded, its overlap included."""
_OVERLAP = 32
"""One part in so many of it is the overlap."""
MOST_PICTURE_PIXELS = 24_000_000
"""A whole sheet of 12 in scanned at 400 dots per inch."""
MOST_BYTES_AS_PNG = 128 * 1024
"""A picture that takes more than this without loss is embedded as JPEG."""
COARSEST = 50
"""Fewer pixels per inch than this look like squares on paper."""

LONGEST_KEPT_PX, KEPT_QUALITY = 2048, 95
"""Of a picture that is written anew to be kept: twice what is embedded of it, so that nothing is lost by that."""
PICTURE_SUFFIXES = (".png", ".jpg", ".jpeg")


@dataclass(frozen=True, slots=True)
class Print:
    """A picture that was read.

    Attributes:
        average: The colour that it has from afar, ``#rrggbb``.
        width_px: As it was made.
        meets: Whether its sides, and whether its upper and lower edge, go on in each other.
    """

    swatch: Swatch
    average: str
    width_px: int
    meets: tuple[bool, bool]


def is_plain_name(name: str) -> bool:
    """Whether a name stands for a file in the folder itself: no way out of it, nor further in."""
    return bool(name) and not name.startswith(".") and not set(name) & set("/\\:\0")


def printed(
    face: Cursor, repeat: int | None, sheet: Size, pictures: Pictures | None, findings: list[Finding]
) -> Print | None:
    """What the picture of a face shows; None where there is none to be had, which is a finding.

    Args:
        face: The face, of the pattern ``picture``.
        repeat: How wide the picture is on paper, ticks, if that is known.
        sheet: The size of the paper, ticks.
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
        found = _read(name, pictures(name))
    except PictureNotSent:
        findings.append(_not_sent(name, where))
        return None
    except UnreadablePicture as reason:
        findings.append(error(reason.code, where, f"“{name}”: {reason.reason}", reason.remedy))
        return None
    if repeat:
        findings.extend((*_coarse(found, where, repeat), *_joints(found, where, repeat, sheet)))
    return found


def bare_picture(data: bytes, name: str, *, most_pixels: int = MOST_PICTURE_PIXELS) -> bytes:
    """A picture as it is kept where everybody may read it: its pixels alone, PNG or JPEG as its name says.

    Args:
        data: A whole file.
        name: Which ends as `PICTURE_SUFFIXES` do.
        most_pixels: Of the picture as it was made.

    Raises:
        UnreadablePicture: It is no picture, too large, damaged, or moves.
    """
    from spreadwright.images import encode_jpeg, encode_png, read

    try:
        pixels = read(data, longest=LONGEST_KEPT_PX, most_pixels=most_pixels).pixels
    except UnreadablePicture as reason:
        raise UnreadablePicture(reason.code, reason.reason, reason.remedy, name=name) from reason
    return encode_png(pixels) if name.lower().endswith(".png") else encode_jpeg(pixels, KEPT_QUALITY)


def _refused_name(name: str, where: str) -> Finding | None:
    if not is_plain_name(name):
        message = f"The picture “{name[:60]}” lies outside the folder of its paper set."
        remedy = "Put the file into the folder that is named like the set, and write its name alone: “rope.png”."
        return error("picture-outside-folder", where, message, remedy)
    if not name.lower().endswith(PICTURE_SUFFIXES):
        message = f"The picture “{name[:60]}” is neither a PNG nor a JPEG by its name."
        return error("not-a-picture", where, message, "Save it as NAME.png or NAME.jpg.")
    return None


def _not_sent(name: str, where: str) -> Finding:
    message = f"The picture “{name[:60]}” did not come along, so nothing is known of it but its name."
    remedy = "Check the set as a file, beside the folder that holds the picture; to a service, send the picture, too."
    return note("picture-not-sent", where, message, remedy)


def _read(name: str, data: bytes) -> Print:
    from spreadwright.images import read  # imported when needed: Pillow and numpy take a third of a second
    from spreadwright.images.joins import meets_across, meets_down
    from spreadwright.images.srgb import average_colour

    found = read(data, longest=LONGEST_PX - LONGEST_PX // _OVERLAP, most_pixels=MOST_PICTURE_PIXELS)
    height, width, _ = found.pixels.shape
    overlap = -(-max(width, height) // _OVERLAP)
    embedded, media_type = _embedded(found.pixels, overlap, is_png=name.lower().endswith(".png"))
    swatch = Swatch(name, embedded, media_type, width, height, overlap)
    meets = (meets_across(found.pixels), meets_down(found.pixels))
    return Print(swatch, average_colour(found.pixels), found.width, meets)


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


def _coarse(found: Print, where: str, repeat: int) -> Iterator[Finding]:
    per_inch = found.width_px * TICKS[Unit.INCH] / repeat
    if per_inch < COARSEST:
        told = f"{found.width_px} pixel{'s' if found.width_px != 1 else ''} for its repeat, {per_inch:.0f} per inch"
        message = f"“{found.swatch.name}” has {told}: on paper they show as squares."
        remedy = f"Scan it finer, at {COARSEST} pixels per inch or more, or mend the repeat if that is wrong."
        yield warning("picture-coarse", where, message, remedy)


def _joints(found: Print, where: str, repeat: int, sheet: Size) -> Iterator[Finding]:
    """What would be seen between two repeats on one sheet."""
    down = repeat * found.swatch.height // found.swatch.width
    seen = [
        edges
        for edges, meets, is_repeated in (
            ("its left and right edge", found.meets[0], repeat < sheet.width),
            ("its upper and lower edge", found.meets[1], down < sheet.height),
        )
        if is_repeated and not meets
    ]
    if seen:
        message = f"“{found.swatch.name}” does not go on where it meets itself: {' and '.join(seen)} differ."
        remedy = "Crop it to exactly one repeat; scan a print that never repeats whole, and say how wide that is."
        yield note("picture-joins-show", where, message, remedy)
