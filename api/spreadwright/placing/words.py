"""The steps with the ruler in words: first what is glued where, then a sentence for each move."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from spreadwright.geometry import Size
from spreadwright.lengths import nearest, on_scale, told, told_size, told_up
from spreadwright.model import Axis, Bench, Side
from spreadwright.placing.adhesive import Stick, instead, sticking
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.locate import Located
from spreadwright.placing.moves import PAGE, End, Line, Move, MoveKind
from spreadwright.words import gettext as _
from spreadwright.words import listed


@dataclass(frozen=True, slots=True)
class Telling:
    """What is known of a layout while its steps are put into words.

    Attributes:
        bench: Whose marks and adhesives count.
        pieces: Everything that is placed, by id.
        sizes: The size of every piece as it is told, unturned, ticks.
        marked: The pieces that carry a pencil mark at the corner that lay at the top left when they were cut.
    """

    bench: Bench
    pieces: Mapping[str, PlacedPiece]
    sizes: Mapping[str, Size]
    marked: Collection[str] = ()

    def size(self, placed: PlacedPiece) -> Size:
        """Of a piece as it lies."""
        size = self.sizes[placed.piece.id]
        return size.turned() if placed.is_turned else size


def cautions() -> tuple[str, ...]:
    """What is said before anything is glued."""
    return (
        _("Lay all pieces out before you glue anything."),
        _("Air the room while you glue, and keep adhesives away from the eyes and out of the reach of small children."),
        _("Children glue only with an adult beside them."),
        _("Follow the instructions of your adhesive’s maker and your local rules; they come before these."),
    )


def head(located: Located, telling: Telling) -> str:
    """What is glued where, how it is turned, and with what if no adhesive of the bench is narrow enough."""
    placed, bench = located.placed, telling.bench
    turned = [_("Turn it a quarter to the right from how it was cut.")] if placed.is_turned else []
    face = [_("Its other face is up.")] if placed.side is Side.BACK else []
    mark = [_cross(placed)] if placed.piece.id in telling.marked else []
    return " ".join([_glued(located, telling), *turned, *face, *mark, *_otherwise(located, bench)])


def _cross(placed: PlacedPiece) -> str:
    """Where the mark of the corner lies that was the top left one on the sheet; turned over sideways, it is right."""
    if placed.is_turned or placed.side is Side.BACK:
        return _("The pencilled cross lies beneath its top right corner.")
    return _("The pencilled cross lies beneath its top left corner.")


def _otherwise(located: Located, bench: Bench) -> list[str]:
    if is_page(located) or sticking(Stick("", located.placed.rect.size), bench).adhesive:
        return []
    told_instead = _("No adhesive of this bench is narrow enough for it: use {adhesive}.")
    return [told_instead.format(adhesive=instead(located.placed.rect.size, bench.unit))]


def is_page(located: Located) -> bool:
    """Whether a piece is the page itself, on which everything else is glued."""
    return located.placed.rect == located.board and located.placed.layer == 1


def _glued(located: Located, telling: Telling) -> str:
    placed, base = located.placed, located.base
    size = telling.size(placed)
    named = {
        "piece": placed.piece.id,
        "mark": placed.piece.mark,
        "size": told_size(size.width, size.height, telling.bench.unit),
    }
    if base is not None:
        joined = _("Join “{piece}” ({mark}), {size}, to “{base}” ({base_mark}) before that is glued down.")
        return joined.format(**named, base=base.piece.id, base_mark=base.piece.mark)
    if is_page(located):
        whole = {
            "page": _("“{piece}” ({mark}), {size}, is the page itself."),
            "left": _("“{piece}” ({mark}), {size}, is the left page itself."),
            "right": _("“{piece}” ({mark}), {size}, is the right page itself."),
        }
        return whole[placed.page].format(**named)
    onto = {
        "page": _("Glue “{piece}” ({mark}), {size}, onto the page."),
        "left": _("Glue “{piece}” ({mark}), {size}, onto the left page."),
        "right": _("Glue “{piece}” ({mark}), {size}, onto the right page."),
    }
    return onto[placed.page].format(**named)


def carried(marks: Sequence[str]) -> str:
    """That pieces were joined to this one before."""
    return _("It carries {pieces} already.").format(pieces=listed(marks))


def sentence(move: Move, located: Located, telling: Telling) -> str:
    """One move in words."""
    if move.kind is MoveKind.COVER:
        return _("Its edges meet those of what lies beneath all round.")
    if move.kind is MoveKind.FRAME:
        return _framed(move, located, telling)
    if move.kind is MoveKind.CENTRE:
        return _centred(move, located, telling)
    at_page, at_piece = _templates(move)
    other, third = (telling.pieces.get(line.piece) for line in (move.lines[0], move.lines[-1]))
    return (at_piece if other else at_page).format(
        edge=edge_name(move),
        distance=distance(move, telling.bench),
        piece=other.piece.id if other else "",
        mark=other.piece.mark if other else "",
        third=third.piece.id if third else "",
        third_mark=third.piece.mark if third else "",
    )


def edge_name(move: Move) -> str:
    """The edge that is laid, as the head of its sentence."""
    if move.axis is Axis.COLUMNS:
        return _("Left edge") if move.end is End.START else _("Right edge")
    return _("Top edge") if move.end is End.START else _("Bottom edge")


def distance(move: Move, bench: Bench) -> str:
    """The distance as the ruler shows it; that of its own width as it is, and about that of a gap that is repeated."""
    if move.kind is MoveKind.SPACER:
        return told(move.exact, bench.unit)
    if move.kind is MoveKind.EQUAL_GAP:
        return _about(move.exact, bench)
    return on_scale(move.reading or move.exact, bench.ruler.graduation, bench.unit)


def _templates(move: Move) -> tuple[str, str]:
    """The sentence of a move by the page, and by a piece."""
    if move.kind is MoveKind.FLUSH:
        return (
            _("{edge}: flush with the edge of the page."),
            _("{edge}: flush with the same edge of “{piece}” ({mark})."),
        )
    if move.kind is MoveKind.OFFSET:
        return (
            _("{edge}: {distance} from the edge of the page."),
            _("{edge}: {distance} inside the same edge of “{piece}” ({mark})."),
        )
    if move.kind is MoveKind.SPACER:
        inside = _(
            "{edge}: against the ruler, laid inside the same edge of “{piece}” ({mark}) as a spacer of {distance}."
        )
        beside = _("{edge}: against the ruler, laid along “{piece}” ({mark}) as a spacer of {distance}.")
        return (
            _("{edge}: against the ruler, laid along the edge of the page as a spacer of {distance}."),
            inside if move.lines[0].end is move.end else beside,
        )
    if move.kind is MoveKind.AGAINST:
        return "", _("{edge}: against “{piece}” ({mark}), without a gap.")
    if move.kind is MoveKind.LEVEL:
        return "", _("{edge}: in one line with the same edge of “{piece}” ({mark}).")
    if move.kind is MoveKind.GAP:
        return "", _("{edge}: {distance} from “{piece}” ({mark}).")
    return "", _(
        "{edge}: equal gaps; as far from “{piece}” ({mark}) as that lies from “{third}” ({third_mark}), {distance}."
    )


def _framed(move: Move, located: Located, telling: Telling) -> str:
    on_base = all(_is_of_board(line, located) for line in move.lines)
    border = _about(move.exact, telling.bench)
    if not move.exact:
        return " ".join([_("It fits into the space that is left, without a gap."), *_flush(move, located, telling)])
    if not on_base:
        within = _("Into the middle of the space that is left, by eye: the same gap of {border} on all sides.")
        return within.format(border=border)
    if located.base is None:
        on_page = _("In the middle of the page, by eye: the same border of {border} all round.")
        return on_page.format(border=border)
    on_piece = _("In the middle of “{base}” ({mark}), by eye: the same border of {border} all round.")
    return on_piece.format(base=located.base.piece.id, mark=located.base.piece.mark, border=border)


def _flush(move: Move, located: Located, telling: Telling) -> list[str]:
    """The sides of a piece that fits exactly which lie on an edge of the page or base."""
    by_board = [line for line in move.lines if _is_of_board(line, located)]
    laid = [Move(MoveKind.FLUSH, line.axis, line.end, (line,)) for line in by_board]
    return [sentence(each, located, telling) for each in laid]


def _is_of_board(line: Line, located: Located) -> bool:
    return line.piece == (located.base.piece.id if located.base else PAGE)


def _about(length: int, bench: Bench) -> str:
    """A length as the mark of the ruler that shows it; otherwise about the nearest one, if that is any."""
    mark = bench.ruler.graduation
    shown = on_scale(length, mark, bench.unit) if 2 * length >= mark else told(length, bench.unit)
    return _("about {length}").format(length=shown) if length % mark else shown


def _half(size: Size, axis: Axis, bench: Bench) -> str:
    """Half of a side as the ruler shows the whole of it; between two marks it is about that."""
    mark = bench.ruler.graduation
    half = nearest(axis.along(size), mark) // 2
    return (
        _("about {length}").format(length=told(half, bench.unit)) if half % mark else on_scale(half, mark, bench.unit)
    )


def _centred(move: Move, located: Located, telling: Telling) -> str:
    """By a ruler with a zero in the middle: what is equal to both sides is in the middle."""
    base, axis = located.base, move.axis or Axis.COLUMNS
    whole = telling.size(base) if base else located.board.size
    halves = {
        "whole": _half(whole, axis, telling.bench),
        "half": _half(telling.size(located.placed), axis, telling.bench),
    }
    if base is None:
        on_page = {
            Axis.COLUMNS: _(
                "Across: in the middle of the page. With the ruler’s middle zero there, both side edges of the page "
                "are at {whole}; lay those of the piece at {half}."
            ),
            Axis.ROWS: _(
                "Up and down: in the middle of the page. With the ruler’s middle zero there, top and bottom edge of "
                "the page are at {whole}; lay those of the piece at {half}."
            ),
        }
        return on_page[axis].format(**halves)
    on_piece = {
        Axis.COLUMNS: _(
            "Across: in the middle of “{base}” ({mark}). With the ruler’s middle zero there, both side edges of "
            "“{base}” are at {whole}; lay those of the piece at {half}."
        ),
        Axis.ROWS: _(
            "Up and down: in the middle of “{base}” ({mark}). With the ruler’s middle zero there, top and bottom edge "
            "of “{base}” are at {whole}; lay those of the piece at {half}."
        ),
    }
    return on_piece[axis].format(base=base.piece.id, mark=base.piece.mark, **halves)


def rounding(furthest: int, bench: Bench) -> str:
    """What the marks of the ruler do to the places of a layout, in words; empty where they show every distance.

    Args:
        furthest: How far any edge lies from its designed place by the readings, ticks.
        bench: Whose marks count.
    """
    if not furthest:
        return ""
    said = _(
        "Your ruler does not show all distances of this recipe: its nearest marks are told, and by them no piece lies "
        "more than {off} from its designed place."
    )
    return said.format(off=told_up(furthest, bench.unit))
