"""What photographs have to say about a recipe: mats that do not exist, are used twice, or are too small."""

from collections.abc import Iterator, Sequence

from spreadwright.errors import Finding, error, warning
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit, told, told_size
from spreadwright.model import Photo, Piece, Recipe, piece_hint
from spreadwright.photos.crop import trims
from spreadwright.photos.mats import has_room, photo_size
from spreadwright.photos.prints import PRINTS
from spreadwright.words import gettext as _

SMALLEST = TICKS[Unit.INCH]
"""A photo with a side below 1 in shows nothing any more: common practice of the trade."""


def photo_findings(recipe: Recipe, pieces: Sequence[Piece], unit: Unit | None = None) -> tuple[Finding, ...]:
    """Everything that can be said about the photographs of a recipe, in its unit or another one."""
    by_id = {piece.id: piece for piece in pieces}
    seen: set[str] = set()
    findings: list[Finding] = []
    for photo in recipe.photos:
        findings += _mat_findings(photo, by_id, unit or recipe.unit)
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
    left = shortest - 2 * border
    shown = {"mat": photo.on, "side": told(shortest, unit), "border": told(border, unit), "left": told(left, unit)}
    if left <= 0:
        message = _("The mat “{mat}” is {side} on its shorter side; a border of {border} leaves no room for a photo.")
        remedy = _("Use a border below {border}, or a larger mat.").format(border=told(shortest // 2, unit))
        yield error("mat-too-small", photo.where, message.format(**shown), remedy)
    elif left < SMALLEST:
        message = _(
            "The mat “{mat}” is {side} on its shorter side; a border of {border} leaves {left} of the photo, "
            "less than 1 in (25.4 mm)."
        )
        remedy = _("Use a larger mat or a narrower border.")
        yield warning("mat-too-small", photo.where, message.format(**shown), remedy)


def _print_findings(photo: Photo, size: Size, unit: Unit) -> Iterator[Finding]:
    """Said of a photo that no print can be trimmed to."""
    if trims(size):
        return
    largest = PRINTS[-1].size
    message = _("The photo on “{mat}” is {size}; none of the usual prints covers it, the largest is {largest}.").format(
        mat=photo.on,
        size=told_size(size.width, size.height, unit),
        largest=told_size(largest.width, largest.height, unit),
    )
    remedy = _("Use a smaller mat or a wider border, or have the photo printed at its own size.")
    yield warning("no-print-large-enough", photo.where, message, remedy)
