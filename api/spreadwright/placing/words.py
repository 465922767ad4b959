"""The steps with the ruler in words: first what is glued where, then a sentence for each move."""

from collections.abc import Mapping, Sequence

from spreadwright.lengths import on_scale, size_text, with_unit
from spreadwright.model import Axis, Bench, Side
from spreadwright.placing.layers import PlacedPiece
from spreadwright.placing.locate import Located
from spreadwright.placing.moves import PAGE, End, Move, MoveKind
from spreadwright.words import gettext as _


def cautions() -> tuple[str, ...]:
    """What is said before anything is glued."""
    return (
        _("Lay all pieces out before you glue anything."),
        _("Air the room while you glue, and keep adhesives away from the eyes and out of the reach of small children."),
        _("Children glue only with an adult beside them."),
        _("Follow the instructions of your adhesive’s maker and your local rules; they come before these."),
    )


def head(located: Located, bench: Bench) -> str:
    """What is glued where, how it is turned, and what it carries."""
    placed = located.placed
    turned = [_("Turn it a quarter to the right from how it was cut.")] if placed.is_turned else []
    face = [_("Its other face is up.")] if placed.side is Side.BACK else []
    return " ".join([_glued(located, bench), *turned, *face])


def _glued(located: Located, bench: Bench) -> str:
    placed, base = located.placed, located.base
    named = {
        "piece": placed.piece.id,
        "mark": placed.piece.mark,
        "size": size_text(placed.rect.width, placed.rect.height, bench.unit),
    }
    if base is not None:
        told = _("Join “{piece}” ({mark}), {size}, to “{base}” ({base_mark}) before that is glued down.")
        return told.format(**named, base=base.piece.id, base_mark=base.piece.mark)
    if placed.rect == located.board and placed.layer == 1:
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
    return _("It carries {pieces} already.").format(pieces=", ".join(marks))


def sentence(move: Move, located: Located, bench: Bench, pieces: Mapping[str, PlacedPiece]) -> str:
    """One move in words."""
    if move.kind is MoveKind.COVER:
        return _("Its edges meet those of what lies beneath all round.")
    if move.kind is MoveKind.FRAME:
        return _framed(move, located, bench)
    if move.kind is MoveKind.CENTRE:
        return _centred(move, located, bench)
    at_page, at_piece = _templates(move)
    other, third = (pieces.get(line.piece) for line in (move.lines[0], move.lines[-1]))
    return (at_piece if other else at_page).format(
        edge=edge_name(move),
        distance=distance(move, bench),
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
    """The distance as the ruler shows it, and as it is designed where that differs."""
    if move.kind in (MoveKind.SPACER, MoveKind.EQUAL_GAP) or move.reading == move.exact:
        return with_unit(move.exact, bench.unit)
    told = _("{mark} (for {length})")
    return told.format(mark=with_unit(move.reading, bench.unit), length=with_unit(move.exact, bench.unit))


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


def _framed(move: Move, located: Located, bench: Bench) -> str:
    on_base = all(line.piece == (located.base.piece.id if located.base else PAGE) for line in move.lines)
    border = with_unit(move.exact, bench.unit)
    if not move.exact:
        return _("It fits into the space that is left, without a gap.")
    if not on_base:
        return _("Into the middle of the space that is left, by eye: the same gap of {border} on all sides.").format(
            border=border
        )
    if located.base is None:
        told = _("In the middle of the page, by eye: the same border of {border} all round.")
        return told.format(border=border)
    told = _("In the middle of “{base}” ({mark}), by eye: the same border of {border} all round.")
    return told.format(base=located.base.piece.id, mark=located.base.piece.mark, border=border)


def _centred(move: Move, located: Located, bench: Bench) -> str:
    """By a ruler with a zero in the middle: both edges at the same mark."""
    rect, base = located.placed.rect, located.base
    half = on_scale((rect.width if move.axis is Axis.COLUMNS else rect.height) // 2, bench.ruler.graduation, bench.unit)
    if base is None:
        told = {
            Axis.COLUMNS: _(
                "Across: in the middle of the page; the ruler’s middle zero there, left and right edge at {half}."
            ),
            Axis.ROWS: _(
                "Up and down: in the middle of the page; the ruler’s middle zero there, top and bottom edge at {half}."
            ),
        }
        return told[move.axis or Axis.COLUMNS].format(half=half)
    told = {
        Axis.COLUMNS: _(
            "Across: in the middle of “{base}” ({mark}); the ruler’s middle zero there, left and right edge at {half}."
        ),
        Axis.ROWS: _(
            "Up and down: in the middle of “{base}” ({mark}); the ruler’s middle zero there, "
            "top and bottom edge at {half}."
        ),
    }
    return told[move.axis or Axis.COLUMNS].format(base=base.piece.id, mark=base.piece.mark, half=half)
