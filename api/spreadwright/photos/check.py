"""What photographs have to say about a recipe: mats that do not exist, are used twice, or are too small."""

from collections.abc import Iterator, Sequence

from spreadwright.errors import Finding, error, warning
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit, size_text, with_unit
from spreadwright.model import Photo, Piece, Recipe, piece_hint
from spreadwright.photos.crop import trims
from spreadwright.photos.mats import has_room, photo_size
from spreadwright.photos.prints import PRINTS

SMALLEST = TICKS[Unit.INCH]
"""A photo with a side below 1 in shows nothing any more: common practice of the trade."""


def photo_findings(recipe: Recipe, pieces: Sequence[Piece]) -> tuple[Finding, ...]:
    """Everything that can be said about the photographs of a recipe."""
    by_id = {piece.id: piece for piece in pieces}
    seen: set[str] = set()
    findings: list[Finding] = []
    for photo in recipe.photos:
        findings += _mat_findings(photo, by_id, recipe.unit)
        if photo.on in seen:
            message = f"Two photos lie on “{photo.on}”."
            findings.append(error("photo-twice", f"{photo.where}/on", message, "Keep one of them."))
        seen.add(photo.on)
    return tuple(findings)


def _mat_findings(photo: Photo, by_id: dict[str, Piece], unit: Unit) -> Iterator[Finding]:
    piece = by_id.get(photo.on)
    if piece is None:
        message = f"The photo lies on “{photo.on}”, which no sheet gives."
        yield error("photo-on-unknown", f"{photo.where}/on", message, piece_hint(photo.on, by_id.values()))
    elif photo.border is not None:
        yield from _size_findings(photo, photo.border, piece, unit)
        if piece.size is not None and has_room(piece.size, photo):
            yield from _print_findings(photo, photo_size(piece.size, photo.border), unit)


def _size_findings(photo: Photo, border: int, mat: Piece, unit: Unit) -> Iterator[Finding]:
    """Said of the shorter side, or of the one side that is known."""
    sides = [side for side in (mat.width, mat.height) if side is not None]
    if not sides:
        return
    shortest = min(sides)
    shown = f"The mat “{photo.on}” is {with_unit(shortest, unit)} on its shorter side"
    shown += f"; a border of {with_unit(border, unit)}"
    if 2 * border >= shortest:
        remedy = f"Use a border below {with_unit(shortest // 2, unit)}, or a larger mat."
        yield error("mat-too-small", photo.where, f"{shown} leaves no room for a photo.", remedy)
    elif shortest - 2 * border < SMALLEST:
        left = with_unit(shortest - 2 * border, unit)
        message = f"{shown} leaves {left} of the photo, less than 1 in (25.4 mm)."
        yield warning("mat-too-small", photo.where, message, "Use a larger mat or a narrower border.")


def _print_findings(photo: Photo, size: Size, unit: Unit) -> Iterator[Finding]:
    """Said of a photo that no print can be trimmed to."""
    if trims(size):
        return
    largest = PRINTS[-1].size
    message = (
        f"The photo on “{photo.on}” is {size_text(size.width, size.height, unit)}; none of the usual prints covers it"
    )
    message += f", the largest is {size_text(largest.width, largest.height, unit)}."
    remedy = "Use a smaller mat or a wider border, or have the photo printed at its own size."
    yield warning("no-print-large-enough", photo.where, message, remedy)
