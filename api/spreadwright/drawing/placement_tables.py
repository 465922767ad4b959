"""The tables of a placement: every piece with its moves in short, every photograph with its size."""

from collections.abc import Mapping, Sequence

from spreadwright.drawing.tables import Table
from spreadwright.geometry import Size
from spreadwright.lengths import nearest, size_text, told_size, with_unit
from spreadwright.model import Axis, Bench, Side
from spreadwright.photos import MattedPhoto
from spreadwright.placing import Move, MoveKind, PlaceStep, distance, edge_name
from spreadwright.words import gettext as _
from spreadwright.words import title


def piece_table(steps: Sequence[PlaceStep], bench: Bench, sizes: Mapping[str, Size]) -> Table:
    """A row for each piece, in gluing order.

    Args:
        sizes: Of pieces as they are told, by id, unturned; those of others are as designed.
    """
    heads = (_("No."), _("Piece"), "", _("Size"), _("On"), _("Across"), _("Down"))
    note = _("Sizes and distances for the bench “{bench}”.").format(bench=title(bench.title))
    marks = {step.placed.piece.id: step.placed.piece.mark for step in steps}
    return Table(heads, tuple(_piece(step, bench, marks, sizes) for step in steps), note=note)


def photo_table(steps: Sequence[PlaceStep], photos: Sequence[MattedPhoto], bench: Bench) -> Table:
    """A row for each photograph, in the order of its mats; sizes as seen on the page, to the marks of the ruler."""
    by_mat = {photo.on: photo for photo in photos}
    rows = tuple(
        _photo(step, photo, bench) for step in steps if (photo := by_mat.get(step.placed.piece.id)) is not None
    )
    note = _("Photos go on last, when all paper is glued; in the picture they are dashed.")
    return Table((_("No."), _("Mat"), "", _("Photo size"), _("Page"), _("Border all round")), rows, note=note)


def page_name(page: str) -> str:
    """A page, as it is called under its picture."""
    return {"page": _("page"), "left": _("left page"), "right": _("right page")}[page]


def _piece(step: PlaceStep, bench: Bench, marks: Mapping[str, str], sizes: Mapping[str, Size]) -> tuple[str, ...]:
    placed = step.placed
    name = placed.piece.id
    if placed.is_turned:
        name = _("{piece}, turned").format(piece=name)
    if placed.side is Side.BACK:
        name = _("{piece}, other face up").format(piece=name)
    told = sizes.get(placed.piece.id)
    lying = placed.rect.size if told is None else told.turned() if placed.is_turned else told
    size = told_size(lying.width, lying.height, bench.unit)
    base = step.located.base
    board = base.piece.mark if base else page_name(placed.page)
    across, down = (_move(step, axis, bench, marks) for axis in Axis)
    return (str(step.number), placed.piece.mark, name, size, board, across, down)


def _photo(step: PlaceStep, photo: MattedPhoto, bench: Bench) -> tuple[str, ...]:
    placed, mark = step.placed, bench.ruler.graduation
    rect = photo.rect_on(placed.rect)
    size = size_text(nearest(rect.width, mark), nearest(rect.height, mark), bench.unit)
    border = with_unit(nearest(photo.border, mark), bench.unit)
    return (str(step.number), placed.piece.mark, placed.piece.id, size, page_name(placed.page), border)


def _move(step: PlaceStep, axis: Axis, bench: Bench, marks: Mapping[str, str]) -> str:
    """What settles one direction, in short; a move that settles both is told once."""
    move = next((each for each in step.located.moves if each.axis in (axis, None)), None)
    if move is None or (move.axis is None and axis is Axis.ROWS):
        return ""
    edge = edge_name(move) if move.end else ""
    by, base = move.lines[0].piece, step.located.base
    mark = marks.get(by, "") if base is None or by != base.piece.id else ""
    return _short(move, has_mark=bool(mark)).format(edge=edge, distance=distance(move, bench), mark=mark)


def _short(move: Move, *, has_mark: bool) -> str:
    """The template of a move, by the page or base, whose name the row bears, or by another piece."""
    by_board = {
        MoveKind.COVER: _("all of it"),
        MoveKind.FRAME: _("by eye, {distance} all round") if move.exact else _("fits between the others"),
        MoveKind.FLUSH: _("{edge}: flush"),
        MoveKind.SPACER: _("{edge}: ruler, {distance}"),
        MoveKind.CENTRE: _("in the middle"),
        MoveKind.OFFSET: _("{edge}: {distance}"),
    }
    by_piece = {
        MoveKind.AGAINST: _("{edge}: against {mark}"),
        MoveKind.LEVEL: _("{edge}: level with {mark}"),
        MoveKind.SPACER: _("{edge}: ruler along {mark}"),
        MoveKind.EQUAL_GAP: _("{edge}: equal gap to {mark}"),
        MoveKind.GAP: _("{edge}: {distance} from {mark}"),
    }
    return by_piece.get(move.kind, by_board.get(move.kind, "")) if has_mark else by_board[move.kind]
