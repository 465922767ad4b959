"""What placing has to say about a recipe: pieces and placements that do not match, pages left, pieces hidden."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import chain

from spreadwright.errors import Finding, error, nearest_hint, warning
from spreadwright.geometry import uncovered
from spreadwright.lengths import Unit, size_text, with_unit
from spreadwright.model import Bench, Edge, Piece, Placement, Recipe, piece_hint
from spreadwright.placing.adhesive import adhesive_findings, glued
from spreadwright.placing.check_ruler import ruler_findings
from spreadwright.placing.layers import PlacedPiece, placed_pieces, placed_spans
from spreadwright.words import gettext as _


def placing_findings(recipe: Recipe, pieces: Sequence[Piece], bench: Bench | None) -> tuple[Finding, ...]:
    """Everything that can be said about the placements of a recipe; about its ruler only given a bench."""
    placed = placed_pieces(recipe, pieces)
    by_id = {piece.id: piece for piece in pieces}
    return tuple(
        chain(
            _unplaced(recipe, pieces),
            chain.from_iterable(_placement_findings(each, recipe, by_id) for each in recipe.placements),
            ruler_findings(recipe, bench) if bench else (),
            _twice(recipe),
            _off_page(recipe, pieces),
            _hidden(placed),
            _photos(recipe, placed),
            _captions(recipe, pieces),
            adhesive_findings(glued(recipe, placed), bench) if bench else (),
        )
    )


def _unplaced(recipe: Recipe, pieces: Sequence[Piece]) -> Iterator[Finding]:
    named = {placement.piece for placement in recipe.placements}
    for piece in pieces:
        if piece.id not in named:
            message = f"The piece “{piece.id}” is cut but not placed."
            yield error("piece-not-placed", piece.where, message, "Place it on a page, or keep the part as “spare”.")


def _placement_findings(each: Placement, recipe: Recipe, by_id: Mapping[str, Piece]) -> Iterator[Finding]:
    piece = by_id.get(each.piece)
    if piece is None:
        yield error(
            "piece-not-cut",
            f"{each.where}/piece",
            f"The piece “{each.piece}” is placed, but no sheet gives it.",
            piece_hint(each.piece, by_id.values()),
        )
    elif each.is_turned and (role := recipe.role(piece.role)) and role.is_directional:
        message = f"“{each.piece}” is turned, but its role “{role.id}” may carry a one-way print."
        remedy = "Place it unturned, cut it the other way round, or make the role not directional."
        yield error("print-turned", f"{each.where}/turned", message, remedy)
    if piece:
        yield from _as_cut(each, piece, recipe)
    if each.page and recipe.spread.pages and each.page not in recipe.spread.pages:
        message = f"The spread has no page “{each.page}”."
        known = nearest_hint(each.page, recipe.spread.pages)
        yield error("page-unknown", f"{each.where}/page", message, known)
    yield from _centre_findings(each, piece, recipe)


def _as_cut(each: Placement, piece: Piece, recipe: Recipe) -> Iterator[Finding]:
    """Size and role that a placement repeats against those that the sheets give."""
    if each.size and piece.size and each.size != piece.size:
        here, cut = (size_text(size.width, size.height, recipe.unit) for size in (each.size, piece.size))
        message = f"“{each.piece}” is placed as {here}, but cut as {cut}."
        yield error("size-differs", f"{each.where}/size", message, "Change one of them, or leave the size out here.")
    if each.role and each.role != piece.role:
        message = f"“{each.piece}” is placed as a piece of “{each.role}”, but cut from “{piece.role}”."
        yield error("role-differs", f"{each.where}/role", message, "Change one of them, or leave the role out here.")


def _centre_findings(each: Placement, piece: Piece | None, recipe: Recipe) -> Iterator[Finding]:
    page = recipe.spread.size
    sides = (piece.width, piece.height) if piece else (None, None)
    wide, high = sides[::-1] if each.is_turned else sides
    frees = (page.width - wide if page and wide else None, page.height - high if page and high else None)
    for offset, free in zip((each.across, each.down), frees, strict=True):
        if offset.edge in (Edge.CENTRE, Edge.MIDDLE) and free is not None and free % 2:
            message = f"“{each.piece}” cannot be centred: what is left of the page does not halve on any ruler."
            where = f"{each.where}/{offset.edge}"
            yield error("centre-between-marks", where, message, "Measure it from an edge of the page.")


def _twice(recipe: Recipe) -> Iterator[Finding]:
    count = Counter(placement.piece for placement in recipe.placements)
    seen: set[str] = set()
    for placement in recipe.placements:
        if placement.piece in seen:
            message = f"The piece “{placement.piece}” is placed {count[placement.piece]} times."
            yield error("piece-placed-twice", f"{placement.where}/piece", message, "Keep one of the placements.")
        seen.add(placement.piece)


def _off_page(recipe: Recipe, pieces: Sequence[Piece]) -> Iterator[Finding]:
    page = recipe.spread.size
    by_id = {piece.id: piece for piece in pieces}
    for each in recipe.placements:
        if page is None or each.piece not in by_id:
            continue
        across, down = placed_spans(recipe, each, by_id[each.piece])
        beyond = _beyond(across, page.width, ("left", "right"), recipe.unit)
        beyond += _beyond(down, page.height, ("top", "bottom"), recipe.unit)
        if beyond:
            message = f"“{each.piece}” lies off the page: " + ", ".join(beyond) + "."
            yield error("off-page", each.where, message, "Move it onto the page, or cut it smaller.")


def _beyond(ends: tuple[int, int] | None, page: int, edges: tuple[str, str], unit: Unit) -> list[str]:
    if ends is None:
        return []
    overhangs = ((edges[0], -ends[0]), (edges[1], ends[1] - page))
    return [f"{with_unit(over, unit)} beyond the {edge} edge" for edge, over in overhangs if over > 0]


def _hidden(placed: Sequence[PlacedPiece]) -> Iterator[Finding]:
    for index, each in enumerate(placed):
        later = (other for other in placed[index + 1 :] if other.page == each.page)
        above = [other.rect for other in later if other.rect.overlaps(each.rect)]
        if above and not uncovered(each.rect, above):
            message = f"“{each.piece.id}” is hidden entirely under the pieces above it."
            remedy = "Place it later in the list or elsewhere, or keep the part as “spare”."
            yield warning("piece-hidden", each.where, message, remedy)


def _photos(recipe: Recipe, placed: Sequence[PlacedPiece]) -> Iterator[Finding]:
    """Photos go on last: one whose mat lies partly under a later piece comes to lie on that piece."""
    for photo in recipe.photos:
        index = next((i for i, each in enumerate(placed) if each.piece.id == photo.on), None)
        if index is None or photo.border is None:
            continue
        mat = placed[index]
        area = mat.rect.inset(photo.border)
        over = [p.piece.id for p in placed[index + 1 :] if p.page == mat.page and p.rect.overlaps(area)]
        if over:
            message = _("The photo on “{mat}” meets “{piece}”, which is glued over its mat.")
            remedy = _("Move one of them, or place “{piece}” before “{mat}”; photos go on last.")
            names = {"mat": photo.on, "piece": over[0]}
            yield warning("photo-meets-piece", photo.where, message.format(**names), remedy.format(**names))


def _captions(recipe: Recipe, pieces: Sequence[Piece]) -> Iterator[Finding]:
    by_id = {piece.id: piece for piece in pieces}
    mats = {photo.on for photo in recipe.photos}
    seen: set[str] = set()
    for caption in recipe.captions:
        where = f"{caption.where}/on"
        if caption.on not in by_id:
            message = f"The caption is on “{caption.on}”, which no sheet gives."
            yield error("caption-on-unknown", where, message, piece_hint(caption.on, pieces))
        elif caption.on in seen:
            yield error("caption-twice", where, f"Two captions stand on “{caption.on}”.", "Keep one of them.")
        elif caption.on in mats:
            message = _("The caption is on “{piece}”, which a photo covers.").format(piece=caption.on)
            yield warning("caption-under-photo", where, message, _("Write on another piece."))
        seen.add(caption.on)
